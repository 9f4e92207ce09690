using System.Security.Cryptography;

namespace Training.Proofs.Log;

/// <summary>
/// The two hashes of a Merkle tree (RFC 9162, section 2.1.1). The byte in front keeps an entry from being passed off
/// as an inner node.
/// </summary>
public static class MerkleHash
{
    private const byte LeafPrefix = 0;
    private const byte NodePrefix = 1;

    /// <summary>The root of a log without entries: the hash of nothing.</summary>
    public static Sha256Digest Empty { get; } = Sha256Digest.Of([]);

    /// <summary>The hash of an entry: SHA-256(00 || entry).</summary>
    public static Sha256Digest Leaf(ReadOnlySpan<byte> entry)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData([LeafPrefix]);
        hash.AppendData(entry);
        return Sha256Digest.FromBytes(hash.GetHashAndReset());
    }

    /// <summary>The hash of an inner node: SHA-256(01 || left || right).</summary>
    public static Sha256Digest Node(Sha256Digest left, Sha256Digest right)
    {
        ArgumentNullException.ThrowIfNull(left);
        ArgumentNullException.ThrowIfNull(right);
        Span<byte> both = stackalloc byte[1 + 2 * Sha256Digest.Length];
        both[0] = NodePrefix;
        left.Bytes.CopyTo(both[1..]);
        right.Bytes.CopyTo(both[(1 + Sha256Digest.Length)..]);
        return Sha256Digest.Of(both);
    }
}
