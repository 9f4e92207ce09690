using System.Numerics;

namespace Training.Sequencing.Analysis.Counting;

/// <summary>A poset whose orders are counted, or of which one can only draw and estimate.</summary>
internal abstract class OrderCount
{
    /// <summary>The number of orders; nothing where the room did not do.</summary>
    public abstract BigInteger? Exact { get; }

    /// <summary>A random order: where the number is known each as likely as the others, otherwise only nearly so.</summary>
    /// <returns>The order, and the logarithm of its inverse chance.</returns>
    public abstract (List<int> Order, double LogWeight) Draw(Drawing.SeededDraw lots);

    /// <summary>
    /// Counts within a room. Which way round a poset is easier to count cannot be seen from outside: both are tried with
    /// more and more room, so that little is lost over the better one.
    /// </summary>
    /// <param name="poset">The poset.</param>
    /// <param name="room">How many parts may be looked at in all; what is left of it comes back.</param>
    public static OrderCount Of(Poset poset, ref long room) =>
        poset.Size <= 64 ? OrderCount<FewBits>.Of(poset, ref room) : OrderCount<ManyBits>.Of(poset, ref room);
}

/// <inheritdoc/>
internal sealed class OrderCount<T> : OrderCount
    where T : struct, IStepBits<T>
{
    private const long FirstRoom = 4096;
    private const int Growth = 16;
    private readonly CountingTable<T> table;
    private readonly bool isTurned;

    private OrderCount(CountingTable<T> table, bool isTurned, BigInteger? exact) =>
        (this.table, this.isTurned, Exact) = (table, isTurned, exact);

    public override BigInteger? Exact { get; }

    public static new OrderCount<T> Of(Poset poset, ref long room)
    {
        var (upright, turned) = (new PosetBits<T>(poset), new PosetBits<T>(poset.Turned()));
        for (var share = FirstRoom; ; share *= Growth)
        {
            var last = share * 2 >= room;
            var (table, exact) = Try(upright, last ? room / 2 : share, ref room);
            if (exact is not null) return new(table, isTurned: false, exact);
            var (other, otherExact) = Try(turned, last ? room : share, ref room);
            if (otherExact is not null) return new(other, isTurned: true, otherExact);
            if (last) return new(table, isTurned: false, null);
        }
    }

    public override (List<int> Order, double LogWeight) Draw(Drawing.SeededDraw lots)
    {
        var order = new List<int>(table.Poset.Size);
        var weight = 0.0;
        if (Exact is { } exact)
        {
            table.Draw(table.Poset.All, lots, order);
            weight = BigInteger.Log(exact);
        }
        else
        {
            weight = new OrderSample<T>(table, lots).Draw(table.Poset.All, order);
        }

        for (var at = 0; at < order.Count; at++) order[at] = table.Poset.NameOf(order[at]);
        if (isTurned) order.Reverse();
        return (order, weight);
    }

    private static (CountingTable<T> Table, BigInteger? Exact) Try(PosetBits<T> poset, long share, ref long room)
    {
        var table = new CountingTable<T>(poset);
        var left = share;
        var exact = table.TryCount(poset.All, ref left);
        room -= share - left;
        return (table, exact);
    }
}
