using System.Numerics;
using Training.Sequencing.Drawing;

namespace Training.Sequencing.Analysis.Counting;

/// <summary>
/// One random order of a set that is too large to count, with the logarithm of a number whose mean over all draws is the
/// number of orders: the inverse of the chance with which the order was drawn (D. E. Knuth, "Estimating the efficiency of
/// backtrack programs", Mathematics of Computation 29, 1975). What falls apart is taken apart and what the table knows
/// is exact, so that chance has a say only in what is left.
/// </summary>
/// <remarks>
/// A first step is drawn with a weight of what must follow it, shared with the other first steps that it must follow,
/// too. Where no step has two forerunners this is the true chance, and every draw gives the exact number (the hook
/// formula for forests: D. E. Knuth, The Art of Computer Programming 3, section 5.1.4, exercise 20).
/// </remarks>
internal sealed class OrderSample<T>(CountingTable<T> table, SeededDraw lots)
    where T : struct, IStepBits<T>
{
    private readonly PosetBits<T> poset = table.Poset;

    /// <summary>Draws the order of a set behind what an order already holds; gives the logarithm of its inverse chance.</summary>
    public double Draw(T set, List<int> order)
    {
        var log = 0.0;
        while (set.Count > 1)
        {
            if (table.Known(set) is { } known)
            {
                table.Draw(set, lots, order);
                return log + BigInteger.Log(known);
            }

            var part = poset.Joined(set);
            if (!part.Equals(set)) return log + Interleaved(set, order);
            part = poset.Mingled(set);
            if (!part.Equals(set)) return log + OneBehindTheOther(set, order);
            var (step, chance) = First(set);
            order.Add(step);
            log -= Math.Log(chance);
            set = set.Without(step);
        }

        if (!set.IsEmpty) order.Add(set.Lowest);
        return log;
    }

    private (int Step, double Chance) First(T set)
    {
        var minimal = poset.Minimal(set);
        var (steps, weights, all) = (new List<int>(), new List<double>(), 0.0);
        for (var open = minimal; !open.IsEmpty; open = open.Without(open.Lowest))
        {
            var weight = 1.0;
            for (var later = poset.After(open.Lowest).And(set); !later.IsEmpty; later = later.Without(later.Lowest))
                weight += 1.0 / poset.Before(later.Lowest).And(minimal).Count;
            steps.Add(open.Lowest);
            weights.Add(weight);
            all += weight;
        }

        // 53 random bits make a fraction of one.
        var at = (lots.Next() >> 11) * (1.0 / (1UL << 53)) * all;
        var chosen = 0;
        while (chosen < steps.Count - 1 && at >= weights[chosen]) at -= weights[chosen++];
        return (steps[chosen], weights[chosen] / all);
    }

    private double Interleaved(T set, List<int> order)
    {
        var log = 0.0;
        var size = set.Count;
        var places = new List<int>();
        var drawn = new List<int>(size);
        var part = 0;
        for (var rest = set; !rest.IsEmpty; part++)
        {
            var joined = poset.Joined(rest);
            rest = rest.AndNot(joined);
            log += BigInteger.Log(Factorials.Ways(size, joined.Count));
            size -= joined.Count;
            for (var one = 0; one < joined.Count; one++) places.Add(part);
            log += Draw(joined, drawn);
        }

        Merge(lots.Shuffle(places), places, drawn, order);
        return log;
    }

    /// <summary>Deals the parts' orders out to the places that were shuffled for them.</summary>
    private static void Merge(IReadOnlyList<int> dealt, List<int> places, List<int> drawn, List<int> order)
    {
        var next = new Dictionary<int, int>();
        for (var at = places.Count - 1; at >= 0; at--) next[places[at]] = at;
        foreach (var part in dealt) order.Add(drawn[next[part]++]);
    }

    private double OneBehindTheOther(T set, List<int> order)
    {
        var parts = new List<T>();
        for (var rest = set; !rest.IsEmpty; rest = rest.AndNot(parts[^1])) parts.Add(poset.Mingled(rest));
        parts.Sort((a, b) => a.Equals(b) ? 0 : poset.After(a.Lowest).Has(b.Lowest) ? -1 : 1);
        var log = 0.0;
        foreach (var part in parts) log += Draw(part, order);
        return log;
    }
}
