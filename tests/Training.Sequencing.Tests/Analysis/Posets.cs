using System.Numerics;
using Training.Sequencing.Analysis;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Tests.Analysis;

/// <summary>Posets as procedures, and well-known families of them.</summary>
internal static class Posets
{
    /// <summary>A procedure whose right orders are those of the poset; step <c>i</c> is named <c>p{i}</c>.</summary>
    public static Procedure Procedure(int size, IReadOnlyCollection<(int First, int Then)> pairs) =>
        new(new("poset"), "Poset", 1)
        {
            Steps = [.. Sorted(size, pairs).Select(i => new Step(new($"p{i}"), $"Do {i}"))],
            Rules = [.. pairs.Select((pair, r) => Sample.Order($"r{r}", $"p{pair.First}", $"p{pair.Then}"))],
        };

    public static BigInteger Count(int size, IReadOnlyCollection<(int First, int Then)> pairs)
    {
        var accepted = RightOrderDraw.Of(Procedure(size, pairs).Grader()).Accepted;
        Assert.True(accepted.IsExact);
        Assert.Equal((accepted.Count, accepted.Count), (accepted.Low, accepted.High));
        return accepted.Count;
    }

    /// <summary>The subsets of a set, by inclusion.</summary>
    public static (int, (int, int)[]) Subsets(int of) => Order(1 << of, (a, b) => a != b && (a & b) == a);

    public static (int, (int, int)[]) Grid(int rows, int columns) => Order(rows * columns, (a, b) =>
        a != b && a / columns <= b / columns && a % columns <= b % columns);

    /// <summary>Up and down by turns: 0 &lt; 1 &gt; 2 &lt; 3 …</summary>
    public static (int, (int, int)[]) Fence(int size) => Order(size, (a, b) => a % 2 == 0 && Math.Abs(a - b) == 1);

    /// <summary>Everything below is before everything above but its own partner.</summary>
    public static (int, (int, int)[]) Crown(int half) => Order(2 * half, (a, b) => a < half && b >= half && b - half != a);

    /// <summary>A tree in which step i comes before 2i + 1 and 2i + 2.</summary>
    public static (int, (int, int)[]) Tree(int size) => Order(size, (a, b) => a == (b - 1) / 2 && b > 0);

    public static (int, (int, int)[]) Chains(params int[] lengths)
    {
        var chain = lengths.SelectMany((length, c) => Enumerable.Repeat(c, length)).ToArray();
        return Order(chain.Length, (a, b) => a < b && chain[a] == chain[b]);
    }

    public static (int, (int, int)[]) Order(int size, Func<int, int, bool> isBefore) =>
        (size, [.. from a in Enumerable.Range(0, size) from b in Enumerable.Range(0, size) where isBefore(a, b) select (a, b)]);

    /// <summary>Every partial order of a few named things.</summary>
    public static IEnumerable<(int, (int, int)[])> All(int size)
    {
        var couples = (from a in Enumerable.Range(0, size) from b in Enumerable.Range(a + 1, size - a - 1) select (a, b)).ToArray();
        var last = (int)Math.Pow(3, couples.Length);
        for (var code = 0; code < last; code++)
        {
            var before = new bool[size, size];
            var rest = code;
            foreach (var (a, b) in couples)
            {
                if (rest % 3 == 1) before[a, b] = true;
                if (rest % 3 == 2) before[b, a] = true;
                rest /= 3;
            }

            if (IsTransitive(before, size)) yield return Order(size, (a, b) => before[a, b]);
        }
    }

    private static bool IsTransitive(bool[,] before, int size)
    {
        for (var a = 0; a < size; a++)
            for (var b = 0; b < size; b++)
                for (var c = 0; c < size; c++)
                    if (before[a, b] && before[b, c] && !before[a, c]) return false;
        return true;
    }

    private static List<int> Sorted(int size, IReadOnlyCollection<(int First, int Then)> pairs)
    {
        var sorted = new List<int>();
        while (sorted.Count < size)
            sorted.Add(Enumerable.Range(0, size).First(i =>
                !sorted.Contains(i) && pairs.All(pair => pair.Then != i || sorted.Contains(pair.First))));
        return sorted;
    }
}
