namespace Training.Proofs.Log;

/// <summary>Shows that an entry stands at a place of a log of a certain size (RFC 9162, section 2.1.3).</summary>
/// <param name="LeafIndex">The entry's place, from 0.</param>
/// <param name="TreeSize">The size of the log that the proof is for.</param>
/// <param name="Path">The hashes beside the way from the entry up to the root.</param>
public sealed record InclusionProof(long LeafIndex, long TreeSize, IReadOnlyList<Sha256Digest> Path)
{
    /// <summary>Makes the proof.</summary>
    /// <param name="leafHashes">The hashes of the log's entries, at least <paramref name="treeSize"/>.</param>
    /// <param name="leafIndex">The entry's place, from 0.</param>
    /// <param name="treeSize">The size of the log that the proof is to be for.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such entry or no such size.</exception>
    public static InclusionProof Of(IReadOnlyList<Sha256Digest> leafHashes, int leafIndex, int treeSize)
    {
        ArgumentNullException.ThrowIfNull(leafHashes);
        ArgumentOutOfRangeException.ThrowIfNegative(leafIndex);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(leafIndex, treeSize);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(treeSize, leafHashes.Count);
        List<Sha256Digest> path = [];
        Subtree tree = new(leafHashes, 0, treeSize);
        while (tree.Count > 1)
        {
            (Subtree left, Subtree right) = tree.Split();
            bool goesLeft = leafIndex < right.Start;
            path.Add((goesLeft ? right : left).Root());
            tree = goesLeft ? left : right;
        }
        path.Reverse();
        return new(leafIndex, treeSize, path);
    }

    /// <summary>Whether the proof leads from the entry to the root.</summary>
    /// <param name="leafHash">The hash of the entry, from <see cref="MerkleHash.Leaf"/>.</param>
    /// <param name="root">The root hash of the log at <see cref="TreeSize"/>.</param>
    public bool Verify(Sha256Digest leafHash, Sha256Digest root)
    {
        ArgumentNullException.ThrowIfNull(root);
        return RootFrom(leafHash) is { } reached && reached == root;
    }

    /// <summary>
    /// The root that the proof leads to from an entry (RFC 9162, section 2.1.3.2), or null where its path has not the
    /// length that its place and size ask for.
    /// </summary>
    /// <param name="leafHash">The hash of the entry, from <see cref="MerkleHash.Leaf"/>.</param>
    public Sha256Digest? RootFrom(Sha256Digest leafHash)
    {
        ArgumentNullException.ThrowIfNull(leafHash);
        if (LeafIndex < 0 || LeafIndex >= TreeSize)
            return null;
        long node = LeafIndex;
        long last = TreeSize - 1;
        Sha256Digest hash = leafHash;
        foreach (Sha256Digest beside in Path)
        {
            if (last == 0)
                return null;
            if ((node & 1) == 1 || node == last)
            {
                hash = MerkleHash.Node(beside, hash);
                while ((node & 1) == 0 && node != 0)
                    (node, last) = (node >> 1, last >> 1);
            }
            else
            {
                hash = MerkleHash.Node(hash, beside);
            }
            (node, last) = (node >> 1, last >> 1);
        }
        return last == 0 ? hash : null;
    }
}
