using System.Numerics;

namespace Training.Proofs.Log;

/// <summary>A run of leaves of a tree, taken apart as RFC 9162, section 2.1.1, does.</summary>
internal readonly record struct Subtree(IReadOnlyList<Sha256Digest> LeafHashes, int Start, int Count)
{
    /// <summary>The left part holds the largest power of two of leaves that is less than all of them.</summary>
    public (Subtree Left, Subtree Right) Split()
    {
        int left = (int)(BitOperations.RoundUpToPowerOf2((uint)Count) / 2);
        return (this with { Count = left }, this with { Start = Start + left, Count = Count - left });
    }

    /// <summary>The root hash of the run.</summary>
    public Sha256Digest Root()
    {
        TreeHead head = TreeHead.Empty;
        for (int i = 0; i < Count; i++)
            head = head.Append(LeafHashes[Start + i]);
        return head.Root;
    }
}
