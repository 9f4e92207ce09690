namespace Training.Measures.Batteries;

/// <summary>Reads a table of pairs, by a straight line between two rows.</summary>
/// <remarks>The straight line is common practice; the tables print rows alone.</remarks>
internal static class TableLine
{
    /// <summary>The value that belongs to <paramref name="at"/>; beyond the ends, the last row's.</summary>
    /// <param name="rows">Pairs with rising first numbers.</param>
    /// <param name="at">Where to read.</param>
    public static double Read(IReadOnlyList<(double At, double Value)> rows, double at)
    {
        if (at <= rows[0].At)
            return rows[0].Value;
        for (var row = 1; row < rows.Count; row++)
        {
            var (low, high) = (rows[row - 1], rows[row]);
            if (at == high.At)
                return high.Value;
            if (at < high.At)
                return low.Value + (high.Value - low.Value) * (at - low.At) / (high.At - low.At);
        }
        return rows[^1].Value;
    }

    /// <summary>The same table read the other way; the second numbers must rise or fall throughout.</summary>
    public static IReadOnlyList<(double At, double Value)> Turned(IReadOnlyList<(double At, double Value)> rows) =>
        [.. rows.Select(row => (row.Value, row.At)).OrderBy(row => row.Item1)];
}
