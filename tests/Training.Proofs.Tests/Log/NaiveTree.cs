using System.Security.Cryptography;

namespace Training.Proofs.Tests.Log;

/// <summary>The definitions of RFC 9162, section 2.1, written down as they stand, slowly and by recursion: the oracle.</summary>
internal static class NaiveTree
{
    public static byte[] Root(IReadOnlyList<byte[]> entries) => entries.Count switch
    {
        0 => SHA256.HashData([]),
        1 => SHA256.HashData([0, .. entries[0]]),
        _ => Node(Root([.. entries.Take(Split(entries.Count))]), Root([.. entries.Skip(Split(entries.Count))])),
    };

    public static IEnumerable<byte[]> Path(int index, IReadOnlyList<byte[]> entries)
    {
        if (entries.Count == 1)
            return [];
        int k = Split(entries.Count);
        byte[][] left = [.. entries.Take(k)];
        byte[][] right = [.. entries.Skip(k)];
        return index < k ? [.. Path(index, left), Root(right)] : [.. Path(index - k, right), Root(left)];
    }

    public static IEnumerable<byte[]> Proof(int first, IReadOnlyList<byte[]> entries) => SubProof(first, entries, true);

    /// <summary>The root that a path leads to, going down from the size instead of up from the entry.</summary>
    public static byte[] RootFromPath(int index, int size, byte[] leaf, ReadOnlySpan<byte[]> path)
    {
        if (size == 1)
            return path.Length == 0 ? leaf : throw new InvalidOperationException("The path is too long.");
        int k = Split(size);
        return index < k
            ? Node(RootFromPath(index, k, leaf, path[..^1]), path[^1])
            : Node(path[^1], RootFromPath(index - k, size - k, leaf, path[..^1]));
    }

    private static IEnumerable<byte[]> SubProof(int first, IReadOnlyList<byte[]> entries, bool whole)
    {
        if (first == entries.Count)
            return whole ? [] : [Root(entries)];
        int k = Split(entries.Count);
        byte[][] left = [.. entries.Take(k)];
        byte[][] right = [.. entries.Skip(k)];
        return first <= k
            ? [.. SubProof(first, left, whole), Root(right)]
            : [.. SubProof(first - k, right, false), Root(left)];
    }

    private static int Split(int count)
    {
        int k = 1;
        while (k * 2 < count)
            k *= 2;
        return k;
    }

    private static byte[] Node(byte[] left, byte[] right) => SHA256.HashData([1, .. left, .. right]);
}
