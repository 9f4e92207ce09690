using System.Numerics;
using System.Runtime.CompilerServices;
using Training.Sequencing.Drawing;

namespace Training.Sequencing.Analysis.Counting;

/// <summary>
/// How many orders every part of a poset has: its linear extensions. What falls apart is taken apart (parts that nothing
/// joins: the multinomial of their sizes times their numbers; parts one behind the other: the product), and what does not
/// is counted by its first step, each part but once. The parts met are the complements of the ideals of the poset
/// (G. Brightwell and P. Winkler, "Counting linear extensions", Order 8, 1991; the taking apart: K. Kangas, T. Hankala,
/// T. Niinimäki and M. Koivisto, "Counting linear extensions of sparse posets", IJCAI 2016).
/// </summary>
internal sealed class CountingTable<T>(PosetBits<T> poset)
    where T : struct, IStepBits<T>
{
    private readonly Dictionary<T, BigInteger> counts = [];
    private readonly int cost = 1 + (poset.Size * ((poset.Size + 63) >> 6) / 64);
    private long left;

    /// <summary>The whole poset.</summary>
    public PosetBits<T> Poset => poset;

    /// <summary>Counts the orders of a set within a room, or nothing where the room does not do.</summary>
    /// <param name="set">The set.</param>
    /// <param name="room">How many parts may be added to the table; those of more than 64 steps count for more.</param>
    public BigInteger? TryCount(T set, ref long room)
    {
        left = room;
        var count = Count(set);
        room = Math.Max(0, left);
        return count;
    }

    /// <summary>The number of a set, if it is known without counting on.</summary>
    public BigInteger? Known(T set)
    {
        left = 0;
        return Count(set);
    }

    /// <summary>A random order of a counted set, each as likely as the others. It adds nothing to the table.</summary>
    public void Draw(T set, SeededDraw lots, List<int> order)
    {
        while (true)
        {
            if (set.IsEmpty) return;
            var joined = poset.Joined(set);
            if (!joined.Equals(set))
            {
                order.AddRange(Interleaved(set, lots));
                return;
            }

            var mingled = poset.Mingled(set);
            if (!mingled.Equals(set))
            {
                foreach (var part in InOrder(set)) Draw(part, lots, order);
                return;
            }

            if (set.Count == 1)
            {
                order.Add(set.Lowest);
                return;
            }

            var (step, twin) = First(set, lots);
            if (step != twin)
            {
                // The rest is drawn as if the other twin had been taken, and the two are told apart again.
                var rest = new List<int> { twin };
                Draw(set.Without(step), lots, rest);
                rest[rest.LastIndexOf(twin)] = step;
                rest[0] = twin;
                order.AddRange(rest);
                return;
            }

            order.Add(step);
            set = set.Without(step);
        }
    }

    private (int Step, int Twin) First(T set, SeededDraw lots)
    {
        var drawn = lots.Below(Needed(set));
        for (var minimal = poset.Minimal(set); ;)
        {
            var step = minimal.Lowest;
            var twins = poset.Twins(step).And(minimal);
            var weight = twins.Count * Needed(set.Without(step));
            if (drawn < weight) return (step, Some(twins, lots));
            drawn -= weight;
            minimal = minimal.AndNot(twins);
        }
    }

    private static int Some(T twins, SeededDraw lots)
    {
        for (var skip = twins.Count > 1 ? lots.Below(twins.Count) : 0; skip > 0; skip--) twins = twins.Without(twins.Lowest);
        return twins.Lowest;
    }

    private List<int> Interleaved(T set, SeededDraw lots)
    {
        var parts = new List<Queue<int>>();
        for (var rest = set; !rest.IsEmpty;)
        {
            var part = poset.Joined(rest);
            rest = rest.AndNot(part);
            var drawn = new List<int>();
            Draw(part, lots, drawn);
            parts.Add(new(drawn));
        }

        var merged = new List<int>(set.Count);
        for (var waiting = set.Count; waiting > 0; waiting--)
        {
            var at = lots.Below(waiting);
            var part = 0;
            while (at >= parts[part].Count) at -= parts[part++].Count;
            merged.Add(parts[part].Dequeue());
        }

        return merged;
    }

    private List<T> InOrder(T set)
    {
        var parts = new List<T>();
        for (var rest = set; !rest.IsEmpty; rest = rest.AndNot(parts[^1])) parts.Add(poset.Mingled(rest));
        parts.Sort((a, b) => a.Equals(b) ? 0 : poset.After(a.Lowest).Has(b.Lowest) ? -1 : 1);
        return parts;
    }

    private BigInteger Needed(T set) => Known(set)
        ?? throw new InvalidOperationException("A part of a counted poset was not counted.");

    private BigInteger? Count(T set)
    {
        var size = set.Count;
        if (size <= 1) return BigInteger.One;
        if (counts.TryGetValue(set, out var known)) return known;
        if (!RuntimeHelpers.TryEnsureSufficientExecutionStack()) return null;
        var part = poset.Joined(set);
        if (!part.Equals(set)) return CountJoined(set, part, size);
        part = poset.Mingled(set);
        if (!part.Equals(set)) return CountMingled(set, part);
        if ((left -= cost) < 0) return null;
        var sum = BigInteger.Zero;
        for (var minimal = poset.Minimal(set); !minimal.IsEmpty;)
        {
            var step = minimal.Lowest;
            var twins = poset.Twins(step).And(minimal);
            minimal = minimal.AndNot(twins);
            if (Count(set.Without(step)) is not { } rest) return null;
            sum += twins.Count == 1 ? rest : rest * twins.Count;
        }

        counts.Add(set, sum);
        return sum;
    }

    private BigInteger? CountJoined(T set, T part, int size)
    {
        var product = BigInteger.One;
        while (true)
        {
            if (Count(part) is not { } one) return null;
            product *= one * Factorials.Ways(size, part.Count);
            size -= part.Count;
            set = set.AndNot(part);
            if (set.IsEmpty) return product;
            part = poset.Joined(set);
        }
    }

    private BigInteger? CountMingled(T set, T part)
    {
        var product = BigInteger.One;
        while (true)
        {
            if (Count(part) is not { } one) return null;
            product *= one;
            set = set.AndNot(part);
            if (set.IsEmpty) return product;
            part = poset.Mingled(set);
        }
    }
}
