namespace Training.Web.Drawings;

/// <summary>Where every step of one set comes before every step of another: one bar says what many lines would.</summary>
/// <param name="Before">The earlier steps, as places in the list of stations.</param>
/// <param name="After">The later steps.</param>
internal sealed record JunctionBar(IReadOnlyList<int> Before, IReadOnlyList<int> After);

/// <summary>Finds the waits of a plan that are worth a bar.</summary>
internal static class JunctionBars
{
    /// <summary>
    /// Takes the largest complete sets one after the other. A step enters at most one bar and leaves at most one: where a
    /// line touched two, the eye would run on from the one to the other and read waits that do not hold.
    /// </summary>
    /// <param name="waits">The waits, no pair that others imply.</param>
    /// <param name="left">The waits that stay lines of their own.</param>
    public static IReadOnlyList<JunctionBar> Of(IReadOnlyList<LinePlanWait> waits, out IReadOnlyList<LinePlanWait> left)
    {
        List<JunctionBar> bars = [];
        var open = waits.ToList();
        HashSet<int> entered = [];
        HashSet<int> leftFrom = [];
        while (Largest(open.Where(wait => !entered.Contains(wait.Before) && !leftFrom.Contains(wait.After)).ToLookup(wait => wait.After, wait => wait.Before)) is { } bar)
        {
            bars.Add(bar);
            entered.UnionWith(bar.Before);
            leftFrom.UnionWith(bar.After);
            open.RemoveAll(wait => bar.Before.Contains(wait.Before) && bar.After.Contains(wait.After));
        }

        left = open;
        return bars;
    }

    private static JunctionBar? Largest(ILookup<int, int> before)
    {
        var sets = before.ToDictionary(group => group.Key, group => group.ToHashSet());
        var candidates = from one in sets.Values
                         from other in sets.Values
                         let shared = one.Intersect(other).Order().ToArray()
                         where shared.Length > 0
                         let after = sets.Where(set => set.Value.IsSupersetOf(shared)).Select(set => set.Key).Order().ToArray()
                         where IsWorthIt(shared.Length, after.Length)
                         orderby shared.Length * after.Length descending, shared[0], after[0]
                         select new JunctionBar(shared, after);
        return candidates.FirstOrDefault();
    }

    // Two lines that meet, or part, are as clear without a bar.
    private static bool IsWorthIt(int before, int after) => (before >= 2 && after >= 2) || before >= 3 || after >= 3;
}
