namespace Training.Records.Staffing;

/// <summary>What a crew needs for one competency.</summary>
/// <param name="People">How many people.</param>
/// <param name="May">Who may do it on all the days, the preferred first, nobody twice.</param>
public sealed record CrewNeed(int People, IReadOnlyList<PersonId> May);

/// <summary>
/// Proposes a crew that fills as many places as can be filled. Pure.
/// <para>
/// A shop expects the one who isolates a chassis to take its batteries off as well: a person may stand for several
/// competencies, though never twice for the same one. Then each competency gets as many people as it needs or there are,
/// and who fills the most open places is taken first, so that the crew stays small (the greedy set cover; V. Chvátal,
/// Mathematics of Operations Research 4, 1979; not always the very smallest crew). Where each place wants a person of its
/// own, a largest matching is found by augmenting paths: it is largest when there is no such path left (C. Berge,
/// Proceedings of the National Academy of Sciences 43, 1957).
/// </para>
/// </summary>
public static class CrewProposal
{
    /// <summary>Who is proposed for each need.</summary>
    /// <param name="needs">The needs.</param>
    /// <param name="separatePeople">Whether each place wants a person of its own.</param>
    /// <returns>For each need the proposed people, at most as many as it needs.</returns>
    public static IReadOnlyList<IReadOnlyList<PersonId>> Propose(IReadOnlyList<CrewNeed> needs, bool separatePeople)
    {
        ArgumentNullException.ThrowIfNull(needs);
        return separatePeople ? OneEach(needs) : Few(needs);
    }

    private static List<PersonId>[] Few(IReadOnlyList<CrewNeed> needs)
    {
        var crew = needs.Select(_ => new List<PersonId>()).ToArray();
        var people = needs.SelectMany(need => need.May).Distinct().ToList();
        while (true)
        {
            var next = people.Select(person => (person, fills: Open(person).Count())).DefaultIfEmpty().MaxBy(candidate => candidate.fills);
            if (next.fills == 0) return crew;
            foreach (var index in Open(next.person).ToList()) crew[index].Add(next.person);
            people.Remove(next.person);
        }

        IEnumerable<int> Open(PersonId person) => Enumerable.Range(0, needs.Count)
            .Where(index => crew[index].Count < needs[index].People && needs[index].May.Contains(person));
    }

    private static List<PersonId>[] OneEach(IReadOnlyList<CrewNeed> needs)
    {
        int[] places = [.. needs.SelectMany((need, index) => Enumerable.Repeat(index, Math.Min(need.People, need.May.Count)))];
        var placeOf = new Dictionary<PersonId, int>();
        for (var place = 0; place < places.Length; place++) Augment(place, []);
        var crew = needs.Select(_ => new List<PersonId>()).ToArray();
        foreach (var (person, place) in placeOf.OrderBy(taken => taken.Value)) crew[places[place]].Add(person);
        return crew;

        // Gives the place to somebody who is free, or to somebody whose place another can take.
        bool Augment(int place, HashSet<PersonId> asked)
        {
            foreach (var person in needs[places[place]].May)
            {
                if (!asked.Add(person)) continue;
                if (placeOf.TryGetValue(person, out var other) && !Augment(other, asked)) continue;
                placeOf[person] = place;
                return true;
            }

            return false;
        }
    }
}
