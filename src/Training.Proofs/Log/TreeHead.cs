using System.Numerics;

namespace Training.Proofs.Log;

/// <summary>
/// The head of a growing Merkle tree, kept as the roots of its whole subtrees, so that an entry is added, and the
/// root told, in time and room by the logarithm of the size.
/// </summary>
public sealed class TreeHead
{
    private readonly Sha256Digest[] peaks;

    private TreeHead(long size, Sha256Digest[] peaks) => (Size, this.peaks) = (size, peaks);

    /// <summary>The head of a log without entries.</summary>
    public static TreeHead Empty { get; } = new(0, []);

    /// <summary>How many entries there are.</summary>
    public long Size { get; }

    /// <summary>
    /// The roots of the whole subtrees from left to right: one for each bit that is set in <see cref="Size"/>, the
    /// largest first. Store them with the size to go on later.
    /// </summary>
    public IReadOnlyList<Sha256Digest> Peaks => peaks;

    /// <summary>The root hash (RFC 9162, section 2.1.1).</summary>
    public Sha256Digest Root
    {
        get
        {
            if (peaks.Length == 0)
                return MerkleHash.Empty;
            Sha256Digest root = peaks[^1];
            for (int i = peaks.Length - 2; i >= 0; i--)
                root = MerkleHash.Node(peaks[i], root);
            return root;
        }
    }

    /// <summary>Takes up a stored head.</summary>
    /// <exception cref="ArgumentException">The number of peaks does not belong to the size.</exception>
    public static TreeHead FromPeaks(long size, IEnumerable<Sha256Digest> peaks)
    {
        Sha256Digest[] stored = [.. peaks];
        ArgumentOutOfRangeException.ThrowIfNegative(size);
        return BitOperations.PopCount((ulong)size) == stored.Length
            ? new(size, stored)
            : throw new ArgumentException($"A tree of size {size} does not have {stored.Length} peaks.", nameof(peaks));
    }

    /// <summary>The head of a whole tree.</summary>
    /// <param name="leafHashes">The hashes of all entries, in order.</param>
    public static TreeHead Of(IEnumerable<Sha256Digest> leafHashes)
    {
        ArgumentNullException.ThrowIfNull(leafHashes);
        return leafHashes.Aggregate(Empty, (head, leaf) => head.Append(leaf));
    }

    /// <summary>The head after one more entry.</summary>
    /// <param name="leafHash">The hash of the entry, from <see cref="MerkleHash.Leaf"/>.</param>
    public TreeHead Append(Sha256Digest leafHash)
    {
        ArgumentNullException.ThrowIfNull(leafHash);
        // Each set bit at the low end is a whole subtree as large as the one that the new leaf has grown into.
        int merges = BitOperations.TrailingZeroCount(~Size);
        Sha256Digest grown = leafHash;
        for (int i = 1; i <= merges; i++)
            grown = MerkleHash.Node(peaks[^i], grown);
        return new(Size + 1, [.. peaks[..^merges], grown]);
    }
}
