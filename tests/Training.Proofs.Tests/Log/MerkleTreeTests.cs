using System.Text;
using Training.Proofs.Log;

namespace Training.Proofs.Tests.Log;

public class MerkleTreeTests
{
    private const int MostEntries = 130;

    // The entries and roots that implementations of RFC 6962 and RFC 9162 share as test data.
    private static readonly string[] PublishedEntries =
        ["", "00", "10", "2021", "3031", "40414243", "5051525354555657", "606162636465666768696a6b6c6d6e6f"];

    private static readonly byte[][] Entries =
        [.. Enumerable.Range(0, MostEntries).Select(i => Encoding.UTF8.GetBytes($"entry {i}"))];

    private static readonly Sha256Digest[] Leaves = [.. Entries.Select(entry => MerkleHash.Leaf(entry))];

    [Theory]
    [InlineData(0, "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855")]
    [InlineData(1, "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d")]
    [InlineData(2, "fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125")]
    [InlineData(3, "aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77")]
    [InlineData(4, "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7")]
    [InlineData(5, "4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4")]
    [InlineData(6, "76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef")]
    [InlineData(7, "ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c")]
    [InlineData(8, "5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328")]
    public void The_published_entries_give_the_published_roots(int size, string root) =>
        Assert.Equal(root, TreeHead.Of(PublishedLeaves().Take(size)).Root.ToString());

    [Fact]
    public void The_published_leaf_and_node_have_the_published_hashes()
    {
        Assert.Equal("395aa064aa4c29f7010acfe3f25db9485bbd4b91897b6ad7ad547639252b4d56", MerkleHash.Leaf("L123456"u8).ToString());
        // That node's two children are four letters each, not digests: the formula is checked on the bytes.
        Assert.Equal(
            "aa217fe888e47007fa15edab33c2b492a722cb106c64667fc2b044444de66bbb",
            Sha256Digest.Of([1, .. "N123"u8, .. "N456"u8]).ToString());
        Assert.Equal(
            Sha256Digest.Of([1, .. Leaves[0].Bytes, .. Leaves[1].Bytes]),
            MerkleHash.Node(Leaves[0], Leaves[1]));
    }

    [Fact]
    public void The_published_inclusion_of_entry_five_in_eight_is_made_and_holds()
    {
        InclusionProof proof = InclusionProof.Of(PublishedLeaves(), 5, 8);
        Assert.Equal(
            [
                "bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b",
                "ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0",
                "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
            ],
            proof.Path.Select(hash => hash.ToString()));
        Assert.True(proof.Verify(PublishedLeaves()[5], TreeHead.Of(PublishedLeaves()).Root));
    }

    [Fact]
    public void The_published_consistency_of_six_with_eight_is_made_and_holds()
    {
        ConsistencyProof proof = ConsistencyProof.Of(PublishedLeaves(), 6, 8);
        Assert.Equal(
            [
                "0ebc5d3437fbe2db158b9f126a1d118e308181031d0a949f8dededebc558ef6a",
                "ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0",
                "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
            ],
            proof.Path.Select(hash => hash.ToString()));
        Assert.True(proof.Verify(TreeHead.Of(PublishedLeaves().Take(6)).Root, TreeHead.Of(PublishedLeaves()).Root));
    }

    [Fact]
    public void The_root_of_every_size_is_that_of_the_definition()
    {
        TreeHead head = TreeHead.Empty;
        for (int size = 0; size <= MostEntries; size++)
        {
            Assert.Equal(size, head.Size);
            Assert.Equal(Hex(NaiveTree.Root(Entries[..size])), head.Root.ToString());
            if (size < MostEntries)
                head = head.Append(Leaves[size]);
        }
    }

    [Fact]
    public void A_head_is_as_long_as_the_size_has_bits_set_and_goes_on_after_it_was_stored()
    {
        TreeHead head = TreeHead.Empty;
        foreach (Sha256Digest leaf in Leaves)
        {
            head = TreeHead.FromPeaks(head.Size, head.Peaks).Append(leaf);
            Assert.Equal(long.PopCount(head.Size), head.Peaks.Count);
        }
        Assert.Equal(TreeHead.Of(Leaves).Root, head.Root);
        Assert.Throws<ArgumentException>(() => TreeHead.FromPeaks(3, Leaves.Take(1)));
    }

    [Fact]
    public void Every_inclusion_proof_is_that_of_the_definition_and_holds()
    {
        foreach (int size in Sizes)
        {
            Sha256Digest root = TreeHead.Of(Leaves.Take(size)).Root;
            for (int index = 0; index < size; index++)
            {
                InclusionProof proof = InclusionProof.Of(Leaves, index, size);
                byte[][] path = [.. proof.Path.Select(hash => hash.Bytes.ToArray())];
                Assert.Equal(root.ToString(), Hex(NaiveTree.RootFromPath(index, size, Leaves[index].Bytes.ToArray(), path)));
                Assert.True(proof.Verify(Leaves[index], root));
            }
        }
    }

    [Fact]
    public void Inclusion_paths_are_those_of_the_definition_hash_for_hash()
    {
        foreach (int size in SmallSizes)
        {
            for (int index = 0; index < size; index++)
            {
                Assert.Equal(
                    NaiveTree.Path(index, Entries[..size]).Select(Hex),
                    InclusionProof.Of(Leaves, index, size).Path.Select(hash => hash.ToString()));
            }
        }
    }

    [Fact]
    public void Every_consistency_proof_is_that_of_the_definition_and_holds()
    {
        Sha256Digest[] roots = [.. Enumerable.Range(0, MostEntries + 1).Select(size => TreeHead.Of(Leaves.Take(size)).Root)];
        for (int second = 1; second <= MostEntries; second++)
        {
            for (int first = 1; first <= second; first++)
            {
                ConsistencyProof proof = ConsistencyProof.Of(Leaves, first, second);
                Assert.True(proof.Verify(roots[first], roots[second]), $"{first} to {second}");
                if (second <= 24)
                    Assert.Equal(NaiveTree.Proof(first, Entries[..second]).Select(Hex), proof.Path.Select(hash => hash.ToString()));
            }
        }
    }

    [Fact]
    public void An_inclusion_proof_holds_for_no_other_entry_place_size_root_or_path()
    {
        foreach (int size in SmallSizes)
        {
            Sha256Digest root = TreeHead.Of(Leaves.Take(size)).Root;
            for (int index = 0; index < size; index++)
            {
                InclusionProof proof = InclusionProof.Of(Leaves, index, size);
                Sha256Digest leaf = Leaves[index];
                Assert.False(proof.Verify(Leaves[(index + 1) % MostEntries], root));
                Assert.False(proof.Verify(leaf, Leaves[^1]));
                for (int elsewhere = -1; elsewhere <= size; elsewhere++)
                    Assert.True(elsewhere == index || !(proof with { LeafIndex = elsewhere }).Verify(leaf, root));
                Assert.False((proof with { Path = [.. proof.Path, Leaves[0]] }).Verify(leaf, root));
                foreach (IReadOnlyList<Sha256Digest> altered in Altered(proof.Path))
                    Assert.False((proof with { Path = altered }).Verify(leaf, root));
            }
        }
    }

    [Fact]
    public void A_consistency_proof_holds_for_no_other_roots_or_path()
    {
        for (int second = 2; second <= 20; second++)
        {
            Sha256Digest secondRoot = TreeHead.Of(Leaves.Take(second)).Root;
            for (int first = 1; first < second; first++)
            {
                Sha256Digest firstRoot = TreeHead.Of(Leaves.Take(first)).Root;
                ConsistencyProof proof = ConsistencyProof.Of(Leaves, first, second);
                Assert.False(proof.Verify(secondRoot, secondRoot));
                Assert.False(proof.Verify(firstRoot, firstRoot));
                Assert.False(proof.Verify(secondRoot, firstRoot));
                Assert.False((proof with { Path = [.. proof.Path, Leaves[0]] }).Verify(firstRoot, secondRoot));
                foreach (IReadOnlyList<Sha256Digest> altered in Altered(proof.Path))
                    Assert.False((proof with { Path = altered }).Verify(firstRoot, secondRoot));
            }
        }
    }

    [Fact]
    public void A_log_whose_past_was_rewritten_is_consistent_by_no_proof()
    {
        for (int changed = 0; changed < 10; changed++)
        {
            Sha256Digest[] rewritten = [.. Leaves];
            rewritten[changed] = Leaves[^1];
            Sha256Digest old = TreeHead.Of(Leaves.Take(10)).Root;
            Sha256Digest now = TreeHead.Of(rewritten.Take(20)).Root;
            Assert.False(ConsistencyProof.Of(rewritten, 10, 20).Verify(old, now));
            Assert.False(ConsistencyProof.Of(Leaves, 10, 20).Verify(old, now));
        }
    }

    [Fact]
    public void A_log_is_consistent_with_itself_by_the_empty_proof_alone()
    {
        Sha256Digest root = TreeHead.Of(Leaves.Take(5)).Root;
        Assert.True(new ConsistencyProof(5, 5, []).Verify(root, root));
        Assert.False(new ConsistencyProof(5, 5, [root]).Verify(root, root));
        Assert.False(new ConsistencyProof(5, 5, []).Verify(root, Leaves[0]));
    }

    [Theory]
    [InlineData(0, 5)]
    [InlineData(-1, 5)]
    [InlineData(6, 5)]
    public void Sizes_that_cannot_be_prove_nothing(long first, long second) =>
        Assert.False(new ConsistencyProof(first, second, [Leaves[0]]).Verify(Leaves[0], Leaves[0]));

    [Fact]
    public void Asking_for_a_proof_that_cannot_be_is_a_fault_of_the_calling_code()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => InclusionProof.Of(Leaves, 5, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => InclusionProof.Of(Leaves, 0, MostEntries + 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ConsistencyProof.Of(Leaves, 0, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => ConsistencyProof.Of(Leaves, 6, 5));
    }

    [Fact]
    public void A_proof_for_a_tree_larger_than_any_memory_is_checked_without_trouble()
    {
        InclusionProof proof = new(long.MaxValue - 1, long.MaxValue, []);
        Assert.False(proof.Verify(Leaves[0], Leaves[0]));
        Assert.False(new ConsistencyProof(long.MaxValue - 1, long.MaxValue, [Leaves[0]]).Verify(Leaves[0], Leaves[0]));
    }

    private static IEnumerable<int> Sizes => Enumerable.Range(1, MostEntries);

    private static IEnumerable<int> SmallSizes => Enumerable.Range(1, 20);

    /// <summary>Every path with one byte flipped, one hash left out, or two hashes exchanged.</summary>
    private static IEnumerable<IReadOnlyList<Sha256Digest>> Altered(IReadOnlyList<Sha256Digest> path)
    {
        for (int i = 0; i < path.Count; i++)
        {
            yield return [.. path.Where((_, at) => at != i)];
            if (i > 0)
                yield return [.. path.Select((hash, at) => at == i ? path[i - 1] : at == i - 1 ? path[i] : hash)];
            for (int b = 0; b < Sha256Digest.Length; b++)
            {
                byte[] bytes = path[i].Bytes.ToArray();
                bytes[b] ^= 0x10;
                yield return [.. path.Select((hash, at) => at == i ? Sha256Digest.FromBytes(bytes) : hash)];
            }
        }
    }

    private static Sha256Digest[] PublishedLeaves() =>
        [.. PublishedEntries.Select(hex => MerkleHash.Leaf(Convert.FromHexString(hex)))];

    private static string Hex(byte[] bytes) => Convert.ToHexStringLower(bytes);
}
