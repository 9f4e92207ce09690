using System.Numerics;
using Training.Sequencing.Analysis;
using Training.Sequencing.Analysis.Counting;
using Training.Sequencing.Drawing;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Comparing;

/// <summary>Counts the orders that are right under two revisions, or estimates them where the room does not do.</summary>
internal static class OrdersComparing
{
    private const int Seed = 20_261_125;
    private const int MostPairsDrawn = 10_000_000;

    /// <summary>The numbers and the examples; nothing where the two have no order in common to look at.</summary>
    public static OrdersCompared? Of(Grader before, Grader after, VariantId? variant, AnalysisLimits limits)
    {
        if (CommonChoices.Of(before, after) is not { } choices) return null;
        var nowRight = FirstExample(choices, choice => ExampleOrder.Find(choice.Steps, choice.After, after, choice.Before, before));
        var nowWrong = FirstExample(choices, choice => ExampleOrder.Find(choice.Steps, choice.Before, before, choice.After, after));
        var compared = Counted(choices, limits) ?? Estimated(choices, limits);
        return compared with
        {
            Variant = variant,
            NowRight = nowRight,
            NowWrong = nowWrong,
            // Whether there is any such order is known for sure, whatever was counted.
            BecameRight = nowRight is null ? AcceptedOrders.Exactly(BigInteger.Zero) : compared.BecameRight,
            BecameWrong = nowWrong is null ? AcceptedOrders.Exactly(BigInteger.Zero) : compared.BecameWrong,
        };
    }

    private static ChangedOrder? FirstExample(IReadOnlyList<CommonChoice> choices, Func<CommonChoice, ChangedOrder?> find) =>
        choices.Select(find).FirstOrDefault(example => example is not null);

    private static OrdersCompared? Counted(IReadOnlyList<CommonChoice> choices, AnalysisLimits limits)
    {
        var room = limits.Ideals;
        var (before, after, both) = (BigInteger.Zero, BigInteger.Zero, BigInteger.Zero);
        foreach (var choice in choices)
        {
            if (choice.Before.Count(ref room) is not { } old || choice.After.Count(ref room) is not { } now
                || choice.Before.And(choice.After).Count(ref room) is not { } same)
                return null;
            (before, after, both) = (before + old, after + now, both + same);
        }

        return Made(choices, AcceptedOrders.Exactly(before), AcceptedOrders.Exactly(after), AcceptedOrders.Exactly(both),
            AcceptedOrders.Exactly(after - both), AcceptedOrders.Exactly(before - both));
    }

    private static OrdersCompared Estimated(IReadOnlyList<CommonChoice> choices, AnalysisLimits limits)
    {
        var size = choices[0].Steps.Length;
        var samples = Math.Max(2, Math.Min(limits.Samples, MostPairsDrawn / (size * size)));
        var lots = new SeededDraw(Seed);
        var old = Drawn(choices, choice => choice.Before, choice => choice.After, samples, lots.For(0));
        var now = Drawn(choices, choice => choice.After, choice => choice.Before, samples, lots.For(1));
        return Made(choices, Mean(old, _ => true), Mean(now, _ => true), Mean(old, draw => draw.IsInOther),
            Mean(now, draw => !draw.IsInOther), Mean(old, draw => !draw.IsInOther));
    }

    private static (double LogWeight, bool IsInOther)[] Drawn(
        IReadOnlyList<CommonChoice> choices, Func<CommonChoice, OrderUnion> mine, Func<CommonChoice, OrderUnion> other, int samples, SeededDraw lots)
    {
        var none = 0L;
        var counts = choices.Select(choice => mine(choice).Parts.Select(part => OrderCount.Of(part.Poset, ref none)).ToList()).ToList();
        var drawn = new (double, bool)[samples];
        for (var s = 0; s < samples; s++)
        {
            var at = choices.Count == 1 ? 0 : lots.Below(choices.Count);
            var (order, weight) = mine(choices[at]).Draw(counts[at], lots);
            drawn[s] = (weight + Math.Log(choices.Count), other(choices[at]).Has(order));
        }

        return drawn;
    }

    // Where no draw was of the sort, fewer than three in as many as were drawn are, at 95 % (the "rule of three").
    private static AcceptedOrders Mean((double LogWeight, bool IsInOther)[] drawn, Func<(double LogWeight, bool IsInOther), bool> counts)
    {
        if (drawn.Any(counts)) return Estimate.Of([.. drawn.Select(draw => counts(draw) ? draw.LogWeight : double.NegativeInfinity)]);
        var all = Estimate.Of([.. drawn.Select(draw => draw.LogWeight)]);
        return new(BigInteger.One, IsExact: false, BigInteger.One, BigInteger.One + (all.High * 3 / drawn.Length));
    }

    private static OrdersCompared Made(
        IReadOnlyList<CommonChoice> choices, AcceptedOrders before, AcceptedOrders after, AcceptedOrders both, AcceptedOrders right, AcceptedOrders wrong) =>
        new()
        {
            Variant = null,
            Steps = choices[0].Steps.Length,
            Before = before,
            After = after,
            Both = both,
            BecameRight = right,
            BecameWrong = wrong,
        };
}
