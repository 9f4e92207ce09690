using System.Numerics;

namespace Training.Sequencing.Analysis.Counting;

/// <summary>Numbers of arrangements.</summary>
internal static class Factorials
{
    private const int MostKept = 64;
    private static readonly BigInteger[][] Kept = Pascal();
    private static BigInteger[] table = [BigInteger.One];

    /// <summary>In how many orders so many things can stand.</summary>
    public static BigInteger Of(int things)
    {
        var known = Volatile.Read(ref table);
        if (things < known.Length) return known[things];
        var longer = new BigInteger[Math.Max(things + 1, Math.Max(64, Math.Min(known.Length * 2, 1024)))];
        known.CopyTo(longer, 0);
        for (var t = known.Length; t < longer.Length; t++) longer[t] = longer[t - 1] * t;
        Volatile.Write(ref table, longer);
        return longer[things];
    }

    /// <summary>How many ways there are to choose some places of all: the binomial coefficient.</summary>
    public static BigInteger Ways(int all, int some) =>
        all <= MostKept ? Kept[all][some]
        : some == 0 || some == all ? BigInteger.One
        : some == 1 || some == all - 1 ? all
        : Of(all) / (Of(some) * Of(all - some));

    private static BigInteger[][] Pascal()
    {
        var rows = new BigInteger[MostKept + 1][];
        for (var all = 0; all < rows.Length; all++)
        {
            rows[all] = new BigInteger[all + 1];
            rows[all][0] = rows[all][all] = BigInteger.One;
            for (var some = 1; some < all; some++) rows[all][some] = rows[all - 1][some - 1] + rows[all - 1][some];
        }

        return rows;
    }
}
