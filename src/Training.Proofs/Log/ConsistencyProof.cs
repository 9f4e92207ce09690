using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;

namespace Training.Proofs.Log;

/// <summary>
/// Shows that a log of one size is the beginning of the log at a later size: that entries were only added (RFC 9162,
/// section 2.1.4).
/// </summary>
/// <param name="FirstSize">The earlier size.</param>
/// <param name="SecondSize">The later size.</param>
/// <param name="Path">The hashes from which both roots can be worked out.</param>
public sealed record ConsistencyProof(long FirstSize, long SecondSize, IReadOnlyList<Sha256Digest> Path)
{
    /// <summary>Makes the proof.</summary>
    /// <param name="leafHashes">The hashes of the log's entries, at least <paramref name="secondSize"/>.</param>
    /// <param name="firstSize">The earlier size, from 1.</param>
    /// <param name="secondSize">The later size.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are no such sizes.</exception>
    public static ConsistencyProof Of(IReadOnlyList<Sha256Digest> leafHashes, int firstSize, int secondSize)
    {
        ArgumentNullException.ThrowIfNull(leafHashes);
        ArgumentOutOfRangeException.ThrowIfLessThan(firstSize, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(firstSize, secondSize);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(secondSize, leafHashes.Count);
        List<Sha256Digest> path = [];
        Subtree tree = new(leafHashes, 0, secondSize);
        // SUBPROOF of RFC 9162, 2.1.4.1, from the top down; the path is then told from the bottom up.
        bool wholeBeginning = true;
        while (tree.Start + tree.Count != firstSize)
        {
            (Subtree left, Subtree right) = tree.Split();
            bool goesLeft = firstSize <= right.Start;
            path.Add((goesLeft ? right : left).Root());
            tree = goesLeft ? left : right;
            wholeBeginning &= goesLeft;
        }
        if (!wholeBeginning)
            path.Add(tree.Root());
        path.Reverse();
        return new(firstSize, secondSize, path);
    }

    // Two trees of 2^53 entries, more than JSON can count, are joined by fewer.
    private const int LongestPath = 128;

    /// <summary>Writes the proof as it is handed out.</summary>
    public CanonicalText Write() => Jcs.Must(new JsonObject
    {
        ["firstSize"] = FirstSize,
        ["secondSize"] = SecondSize,
        ["path"] = new JsonArray([.. Path.Select(hash => JsonValue.Create(hash.ToString()))]),
    });

    /// <summary>Reads what <see cref="Write"/> wrote.</summary>
    public static Outcome<ConsistencyProof> Read(ReadOnlySpan<byte> utf8)
    {
        Outcome<JsonObject> read = StrictJson.ReadObject(utf8);
        if (!read.IsOk)
            return new Refused(read.Sentence);
        if (read.Value.Count != 3 || read.Value.CountOf("firstSize") is not { } first || read.Value.CountOf("secondSize") is not { } second
            || read.Value["path"] is not JsonArray { Count: <= LongestPath } hashes)
            return new Refused("The document does not show that one log is the beginning of another.");
        Outcome<List<Sha256Digest>> path = hashes.Digests();
        return path.IsOk ? new ConsistencyProof(first, second, path.Value) : new Refused(path.Sentence);
    }

    /// <summary>Whether the proof leads to both roots; the algorithm is that of RFC 9162, 2.1.4.2.</summary>
    /// <param name="firstRoot">The root hash at <see cref="FirstSize"/>.</param>
    /// <param name="secondRoot">The root hash at <see cref="SecondSize"/>.</param>
    public bool Verify(Sha256Digest firstRoot, Sha256Digest secondRoot)
    {
        ArgumentNullException.ThrowIfNull(firstRoot);
        ArgumentNullException.ThrowIfNull(secondRoot);
        if (FirstSize < 1 || FirstSize > SecondSize)
            return false;
        if (FirstSize == SecondSize)
            return Path.Count == 0 && firstRoot == secondRoot;
        bool firstIsWhole = (FirstSize & (FirstSize - 1)) == 0;
        List<Sha256Digest> path = firstIsWhole ? [firstRoot, .. Path] : [.. Path];
        if (path.Count == 0)
            return false;
        long node = FirstSize - 1;
        long last = SecondSize - 1;
        while ((node & 1) == 1)
            (node, last) = (node >> 1, last >> 1);
        (Sha256Digest first, Sha256Digest second) = (path[0], path[0]);
        foreach (Sha256Digest beside in path.Skip(1))
        {
            if (last == 0)
                return false;
            if ((node & 1) == 1 || node == last)
            {
                first = MerkleHash.Node(beside, first);
                second = MerkleHash.Node(beside, second);
                while ((node & 1) == 0 && node != 0)
                    (node, last) = (node >> 1, last >> 1);
            }
            else
            {
                second = MerkleHash.Node(second, beside);
            }
            (node, last) = (node >> 1, last >> 1);
        }
        return last == 0 && first == firstRoot && second == secondRoot;
    }
}
