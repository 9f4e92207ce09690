using System.Numerics;
using Training.Sequencing.Analysis.Counting;
using Training.Sequencing.Drawing;
using Training.Sequencing.Ordering;

namespace Training.Sequencing.Comparing;

/// <summary>
/// All orders that at least one of some posets allows. There is more than one poset only where a procedure leaves a
/// choice among steps that are not looked at, and each choice asks something else of those that are.
/// </summary>
internal sealed class OrderUnion
{
    private const int MostPosets = 6;

    private OrderUnion(IReadOnlyList<PlannedOrder> parts) => Parts = parts;

    /// <summary>The posets; none allows all that another one does.</summary>
    public IReadOnlyList<PlannedOrder> Parts { get; }

    public static OrderUnion Of(IEnumerable<PlannedOrder> parts)
    {
        var all = parts.ToList();
        return new([.. all.Where((part, p) => !all.Where((other, o) => o != p
            && IsWithin(part.Poset, other.Poset) && (o < p || !IsWithin(other.Poset, part.Poset))).Any())]);
    }

    /// <summary>The orders that both allow.</summary>
    public OrderUnion And(OrderUnion other) => Of(
        from mine in Parts
        from theirs in other.Parts
        let joined = Joined(mine.Poset, theirs.Poset)
        where joined is not null
        select new PlannedOrder(joined, mine.Plan));

    /// <summary>How many orders there are, by inclusion and exclusion; nothing where the room does not do.</summary>
    public BigInteger? Count(ref long room)
    {
        if (Parts.Count > MostPosets) return null;
        var sum = BigInteger.Zero;
        for (var some = 1; some < 1 << Parts.Count; some++)
        {
            Poset? joined = null;
            var isPossible = true;
            for (var p = 0; p < Parts.Count && isPossible; p++)
            {
                if ((some >> p & 1) == 0) continue;
                joined = joined is null ? Parts[p].Poset : Joined(joined, Parts[p].Poset);
                isPossible = joined is not null;
            }

            if (!isPossible) continue;
            if (OrderCount.Of(joined!, ref room).Exact is not { } count) return null;
            sum += BitOperations.PopCount((uint)some) % 2 == 1 ? count : -count;
        }

        return sum;
    }

    /// <summary>Whether an order, by the numbers of the steps, is one of them.</summary>
    public bool Has(IReadOnlyList<int> order) => Parts.Any(part => Allows(part.Poset, order));

    /// <summary>
    /// Draws with a known chance: a poset at random, an order of it, weighed by how many of the posets allow that one
    /// (R. Karp and M. Luby, "Monte-Carlo algorithms for enumeration and reliability problems", FOCS 1983).
    /// </summary>
    public (IReadOnlyList<int> Order, double LogWeight) Draw(IReadOnlyList<OrderCount> counts, SeededDraw lots)
    {
        var (order, weight) = counts[counts.Count == 1 ? 0 : lots.Below(counts.Count)].Draw(lots);
        return (order, weight + Math.Log(Parts.Count) - Math.Log(Parts.Count(part => Allows(part.Poset, order))));
    }

    /// <summary>A poset with some more pairs; nothing where they run in a circle.</summary>
    public static Poset? With(Poset poset, IEnumerable<(int First, int Then)> pairs)
    {
        var joined = Poset.Of(poset.Size, Pairs(poset).Concat(pairs));
        for (var a = 0; a < joined.Size; a++)
            if (joined.After[a, a]) return null;
        return joined;
    }

    public static IEnumerable<(int First, int Then)> Pairs(Poset poset)
    {
        for (var a = 0; a < poset.Size; a++)
            for (var b = 0; b < poset.Size; b++)
                if (poset.After[a, b]) yield return (a, b);
    }

    private static Poset? Joined(Poset one, Poset other) => With(one, Pairs(other));

    // Every order that the one allows, the other allows, too: it asks for no pair that the one does not ask for.
    private static bool IsWithin(Poset one, Poset other) => Pairs(other).All(pair => one.After[pair.First, pair.Then]);

    private static bool Allows(Poset poset, IReadOnlyList<int> order)
    {
        for (var early = 0; early < order.Count; early++)
            for (var late = early + 1; late < order.Count; late++)
                if (poset.After[order[late], order[early]]) return false;
        return true;
    }
}

/// <summary>The order of the steps that are looked at, and the plan that it comes from.</summary>
internal sealed record PlannedOrder(Poset Poset, Plan Plan);
