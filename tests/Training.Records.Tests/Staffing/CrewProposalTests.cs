using CsCheck;
using Training.Records.Staffing;

namespace Training.Records.Tests.Staffing;

public sealed class CrewProposalTests
{
    private static readonly PersonId[] People = [.. Enumerable.Range(1, 6).Select(number => new PersonId(new Guid(number, 0, 0, new byte[8])))];

    private static readonly Gen<CrewNeed[]> Needs = Gen.Select(Gen.Int[0, 3], Gen.Int[0, 5].HashSet[0, 6])
        .Select((people, may) => new CrewNeed(people, [.. may.Order().Select(index => People[index])])).Array[1, 4];

    [Fact]
    public void Nobody_is_proposed_who_may_not_or_twice_for_the_same_competency() => Gen.Select(Needs, Gen.Bool).Sample((needs, separate) =>
    {
        var crew = CrewProposal.Propose(needs, separate);
        Assert.Equal(needs.Length, crew.Count);
        foreach (var (need, chosen) in needs.Zip(crew))
        {
            Assert.Empty(chosen.Except(need.May));
            Assert.Equal(chosen.Count, chosen.Distinct().Count());
            Assert.InRange(chosen.Count, 0, need.People);
        }

        if (separate) Assert.Equal(crew.Sum(chosen => chosen.Count), crew.SelectMany(chosen => chosen).Distinct().Count());
    }, iter: 2_000);

    [Fact]
    public void Where_one_may_stand_for_several_every_place_is_filled_that_anybody_can_fill() => Needs.Sample(needs =>
        Assert.Equal(needs.Select(need => Math.Min(need.People, need.May.Count)), CrewProposal.Propose(needs, false).Select(chosen => chosen.Count)), iter: 2_000);

    // Every way of giving the places to different people is tried.
    [Fact]
    public void Where_each_place_wants_its_own_no_crew_fills_more_places() => Needs.Sample(needs =>
    {
        int[] places = [.. needs.SelectMany((need, index) => Enumerable.Repeat(index, need.People))];
        Assert.Equal(Most(0, []), CrewProposal.Propose(needs, true).Sum(chosen => chosen.Count));

        int Most(int place, List<PersonId> taken)
        {
            if (place == places.Length) return 0;
            return needs[places[place]].May.Except(taken).Select(person => 1 + Most(place + 1, [.. taken, person]))
                .Append(Most(place + 1, taken)).Max();
        }
    }, iter: 300);

    [Fact]
    public void Somebody_gives_up_a_place_that_another_can_take()
    {
        var crew = CrewProposal.Propose([new(1, [People[0], People[1]]), new(1, [People[0]])], separatePeople: true);
        Assert.Equal([[People[1]], [People[0]]], crew);
    }

    [Fact]
    public void One_who_may_do_everything_makes_the_crew_small() =>
        Assert.Equal([[People[2]], [People[2]]], CrewProposal.Propose([new(1, [People[0], People[2]]), new(1, [People[1], People[2]])], separatePeople: false));
}
