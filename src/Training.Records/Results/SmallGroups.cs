namespace Training.Records.Results;

/// <summary>
/// What may be shown of groups of people so that nobody learns what one or a few of them did. A group of fewer than five
/// is not shown, nor can it be found by taking shown groups from each other or from everybody: whoever is not shown is
/// counted together with others until five are together. What is shown is therefore always a division of the same people
/// into parts of at least five, and every sum and every difference of parts is again a number of whole parts.
/// <para>
/// People are told apart by one thing at a time (<see cref="Cut"/>), never by two: a shop's people of one language could
/// be fewer than five although both the shop and the language have many. Five is common practice, no published source.
/// </para>
/// </summary>
public static class SmallGroups
{
    /// <summary>The fewest people that are shown together.</summary>
    public const int Fewest = 5;

    /// <summary>The parts of groups without an order, such as shops. What is too small is put together; where that is too small still, with the smallest of the others.</summary>
    /// <typeparam name="TKey">What names a group.</typeparam>
    /// <param name="groups">The groups with how many of how many people; none twice.</param>
    /// <returns>Each part with its groups, in the order given, those that were put together last; nothing where all together are too few.</returns>
    public static IReadOnlyList<Part<TKey>> Apart<TKey>(IEnumerable<(TKey Key, Share Share)> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        var some = groups.Where(group => group.Share.Whole > 0).ToList();
        var shown = some.Where(group => group.Share.Whole >= Fewest).ToList();
        var together = some.Where(group => group.Share.Whole < Fewest).ToList();
        while (together.Count > 0 && together.Sum(group => group.Share.Whole) < Fewest && shown.Count > 0)
        {
            var smallest = shown.MinBy(group => group.Share.Whole);
            shown.Remove(smallest);
            together.Add(smallest);
        }

        List<Part<TKey>> parts = [.. shown.Select(group => new Part<TKey>([group.Key], group.Share))];
        if (together.Sum(group => group.Share.Whole) >= Fewest) parts.Add(Part<TKey>.Of(together));
        return parts;
    }

    /// <summary>The parts of groups that follow each other, such as months: what is too small is put together with what follows, at the end with what went before.</summary>
    /// <typeparam name="TKey">What names a group.</typeparam>
    /// <param name="groups">The groups in their order.</param>
    /// <returns>The parts in their order; nothing where all together are too few.</returns>
    public static IReadOnlyList<Part<TKey>> InOrder<TKey>(IEnumerable<(TKey Key, Share Share)> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        var parts = new List<Part<TKey>>();
        var together = new List<(TKey Key, Share Share)>();
        foreach (var group in groups.Where(group => group.Share.Whole > 0))
        {
            together.Add(group);
            if (together.Sum(one => one.Share.Whole) < Fewest) continue;
            parts.Add(Part<TKey>.Of(together));
            together.Clear();
        }

        if (together.Count > 0 && parts.Count > 0) parts[^1] = parts[^1].With(together);
        return parts;
    }
}

/// <summary>Groups of people that are shown together.</summary>
/// <typeparam name="TKey">What names a group.</typeparam>
/// <param name="Keys">The groups.</param>
/// <param name="Share">How many of all of them.</param>
public sealed record Part<TKey>(IReadOnlyList<TKey> Keys, Share Share)
{
    internal static Part<TKey> Of(IReadOnlyList<(TKey Key, Share Share)> groups) => new Part<TKey>([], new(0, 0)).With(groups);

    internal Part<TKey> With(IReadOnlyList<(TKey Key, Share Share)> groups) => new(
        [.. Keys, .. groups.Select(group => group.Key)],
        new(Share.Part + groups.Sum(group => group.Share.Part), Share.Whole + groups.Sum(group => group.Share.Whole)));
}

/// <summary>
/// Says for many things at once whether a group stands alone among the parts that <see cref="SmallGroups.Apart"/> makes,
/// without making them: thousands of groups are looked at once, in their order.
/// </summary>
/// <param name="things">How many things are counted.</param>
internal sealed class LoneGroups(int things)
{
    private readonly long[] small = new long[things];
    private readonly int[] least = new int[things];
    private readonly int[] leastGroup = new int[things];

    /// <summary>Looks at the next group.</summary>
    /// <param name="group">Its number; each is looked at once.</param>
    /// <param name="people">For each thing how many people; what is missing at the end is nobody.</param>
    public void Add(int group, int[] people)
    {
        for (var thing = 0; thing < people.Length; thing++)
        {
            var whole = people[thing];
            if (whole < SmallGroups.Fewest) small[thing] += whole;
            else if (least[thing] == 0 || whole < least[thing]) (least[thing], leastGroup[thing]) = (whole, group);
        }
    }

    /// <summary>Whether a group of so many people stands alone: it is large enough, and the small ones do not need it.</summary>
    public bool IsAlone(int group, int thing, long whole) => whole >= SmallGroups.Fewest
        && !(small[thing] is > 0 and < SmallGroups.Fewest && leastGroup[thing] == group);
}
