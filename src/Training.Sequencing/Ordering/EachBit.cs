using System.Numerics;

namespace Training.Sequencing.Ordering;

/// <summary>Walks the set bits of a row in rising order.</summary>
internal ref struct EachBit(ReadOnlySpan<ulong> row)
{
    private readonly ReadOnlySpan<ulong> row = row;
    private int word = -1;
    private ulong left;

    public int Current { get; private set; }

    public readonly EachBit GetEnumerator() => this;

    public bool MoveNext()
    {
        while (left == 0)
        {
            if (++word >= row.Length) return false;
            left = row[word];
        }

        Current = (word << 6) + BitOperations.TrailingZeroCount(left);
        left &= left - 1;
        return true;
    }
}
