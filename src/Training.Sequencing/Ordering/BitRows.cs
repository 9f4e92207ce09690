using System.Numerics;

namespace Training.Sequencing.Ordering;

/// <summary>A table of bits, each row a run of 64-bit words: relations between steps or entries.</summary>
internal sealed class BitRows(int rows, int columns)
{
    private readonly int words = (columns + 63) >> 6;
    private readonly ulong[] bits = new ulong[rows * ((columns + 63) >> 6)];

    public int Rows => rows;

    public int Words => words;

    public bool this[int row, int column] => (bits[(row * words) + (column >> 6)] >> column & 1) != 0;

    public void Set(int row, int column) => bits[(row * words) + (column >> 6)] |= 1UL << column;

    public Span<ulong> Row(int row) => bits.AsSpan(row * words, words);

    /// <summary>Adds every bit of one row to another; says whether that changed it.</summary>
    public bool Join(int into, int from)
    {
        var target = Row(into);
        var source = Row(from);
        var changed = 0UL;
        for (var w = 0; w < target.Length; w++)
        {
            changed |= source[w] & ~target[w];
            target[w] |= source[w];
        }

        return changed != 0;
    }

    public int CountIn(int row)
    {
        var count = 0;
        foreach (var word in Row(row)) count += BitOperations.PopCount(word);
        return count;
    }
}
