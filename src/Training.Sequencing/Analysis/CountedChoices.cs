using System.Numerics;
using Training.Sequencing.Analysis.Counting;
using Training.Sequencing.Authoring;
using Training.Sequencing.Drawing;
using Training.Sequencing.Layouts;
using Training.Sequencing.Ordering;

namespace Training.Sequencing.Analysis;

/// <summary>
/// The right orders of the required steps, for every choice in the one-of groups. Choices that make the same order of
/// steps are counted once; more choices than are looked through are drawn from.
/// </summary>
internal sealed class CountedChoices
{
    private const int EstimateSeed = 20_261_125;
    private const int MostPairsDrawn = 20_000_000;
    private readonly Layout layout;
    private readonly PlanShelf shelf;
    private readonly List<Kind> kinds = [];
    private readonly bool areTooMany;
    private long room;

    private CountedChoices(Layout layout, PlanShelf shelf, AnalysisLimits limits)
    {
        (this.layout, this.shelf) = (layout, shelf);
        room = limits.Ideals;
        areTooMany = Choices.AreTooMany(layout);
        if (!areTooMany)
            foreach (var steps in Choices.Of(layout, Choices.Least(layout))) Add(steps);
        Combinations = layout.Groups.Aggregate(BigInteger.One, (product, group) => product * group.Members.Length);
        StepCount = Enumerable.Range(0, layout.StepCount).Count(layout.IsRequired) + layout.Groups.Length;
        Accepted = !areTooMany && kinds.TrueForAll(kind => kind.Count.Exact is not null)
            ? AcceptedOrders.Exactly(kinds.Aggregate(BigInteger.Zero, (sum, kind) => sum + kind.All))
            : Estimated(limits.Samples);
    }

    /// <summary>How many steps each right order has.</summary>
    public int StepCount { get; }

    /// <summary>How many combinations of members there are.</summary>
    public BigInteger Combinations { get; }

    public AcceptedOrders Accepted { get; }

    public static CountedChoices Of(Layout layout, PlanShelf shelf, AnalysisLimits limits) => new(layout, shelf, limits);

    /// <summary>A random right order, by the numbers of the steps.</summary>
    public int[] Draw(SeededDraw lots) => Accepted.IsExact ? DrawExactly(lots) : DrawNearly(lots).Order;

    private int[] DrawExactly(SeededDraw lots)
    {
        var at = lots.Below(Accepted.Count);
        var kind = 0;
        while (at >= kinds[kind].All) at -= kinds[kind++].All;
        var steps = kinds[kind].Choices[kinds[kind].Choices.Count == 1 ? 0 : lots.Below(kinds[kind].Choices.Count)];
        return Named(kinds[kind].Count.Draw(lots).Order, steps);
    }

    private (int[] Order, double LogWeight) DrawNearly(SeededDraw lots)
    {
        if (areTooMany) return DrawAnyChoice(lots);
        var at = lots.Below((int)Combinations);
        var kind = 0;
        while (at >= kinds[kind].Choices.Count) at -= kinds[kind++].Choices.Count;
        var (order, weight) = kinds[kind].Count.Draw(lots);
        return (Named(order, kinds[kind].Choices[at]), weight + BigInteger.Log(Combinations));
    }

    private (int[] Order, double LogWeight) DrawAnyChoice(SeededDraw lots)
    {
        var set = Choices.Least(layout);
        foreach (var group in layout.Groups) set.Add(group.Members[lots.Below(group.Members.Length)]);
        var steps = Slots(set);
        var none = 0L;
        var (order, weight) = OrderCount.Of(Poset.Of(shelf.For(set), steps), ref none).Draw(lots);
        return (Named(order, steps), weight + BigInteger.Log(Combinations));
    }

    private AcceptedOrders Estimated(int samples)
    {
        // A draw looks at every pair of steps some times over; a thousand steps are drawn as often as time allows.
        samples = Math.Max(2, Math.Min(samples, MostPairsDrawn / Math.Max(1, StepCount * StepCount)));
        var lots = new SeededDraw(EstimateSeed);
        var logs = new double[samples];
        for (var s = 0; s < samples; s++) logs[s] = DrawNearly(lots).LogWeight;
        return Estimate.Of(logs);
    }

    private void Add(StepSet set)
    {
        var steps = Slots(set);
        var poset = Poset.Of(shelf.For(set), steps);
        if (kinds.Find(kind => kind.Poset.IsSame(poset)) is { } same) same.Choices.Add(steps);
        else kinds.Add(new(poset, OrderCount.Of(poset, ref room), [steps]));
    }

    /// <summary>The required steps and then each group's member, so that like choices have like numbers.</summary>
    private int[] Slots(StepSet set) =>
    [
        .. Enumerable.Range(0, layout.StepCount).Where(layout.IsRequired),
        .. layout.Groups.Select(group => group.Members.First(set.Has)),
    ];

    private static int[] Named(List<int> order, int[] steps) => [.. order.Select(slot => steps[slot])];

    private sealed record Kind(Poset Poset, OrderCount Count, List<int[]> Choices)
    {
        public BigInteger All => Count.Exact!.Value * Choices.Count;
    }
}
