using System.Text.Json.Nodes;
using CsCheck;
using Training.Proofs.Log;
using Training.Proofs.Signing;
using static Training.Proofs.Tests.TestKeys;

namespace Training.Proofs.Tests.Log;

public sealed class LogWalkTests : IDisposable
{
    private const string Origin = "did:web:eastvale.example";

    private readonly SigningKey key = Key("first");
    private readonly SigningKey newer = Key("second");

    public void Dispose()
    {
        key.Dispose();
        newer.Dispose();
    }

    [Fact]
    public void A_log_as_it_was_written_is_whole()
    {
        LogWalkReport report = Check(Stored(20), At(0), At(7), At(20));
        Assert.True(report.IsWhole);
        Assert.Equal(20, report.Head.Size);
        Assert.Equal(20, report.CoveredBy!.Size);
    }

    [Fact]
    public void Entries_after_the_last_checkpoint_are_allowed_and_the_report_says_how_far_the_checkpoints_reach()
    {
        LogWalkReport report = Check(Stored(20), At(7));
        Assert.True(report.IsWhole);
        Assert.Equal(7, report.CoveredBy!.Size);
        Assert.Null(Check(Stored(20)).CoveredBy);
    }

    [Fact]
    public void An_altered_entry_is_named()
    {
        StoredEntry[] stored = Stored(20);
        stored[11] = stored[11] with { Text = stored[4].Text };
        Is(LogFaultKind.EntryAltered, 11, 11, Check(stored, At(20)));
    }

    [Fact]
    public void Every_flipped_bit_of_every_entry_and_of_every_stored_hash_is_named() =>
        Gen.Select(Gen.Int[0, 19], Gen.Int[0, 10_000], Gen.Bool).Sample((index, place, inText) =>
        {
            StoredEntry[] stored = Stored(20);
            stored[index] = inText
                ? stored[index] with { Text = Flip(stored[index].Text.ToArray(), place) }
                : stored[index] with { LeafHash = Sha256Digest.FromBytes(Flip(stored[index].LeafHash.Bytes.ToArray(), place)) };
            LogFault fault = Check(stored, At(20)).FirstFault!;
            Assert.Equal((index, index), (fault.FirstIndex, fault.LastIndex));
            Assert.True(fault.Kind is LogFaultKind.EntryAltered or LogFaultKind.EntryUnreadable);
        });

    [Fact]
    public void An_entry_altered_together_with_its_hash_is_found_between_two_checkpoints()
    {
        StoredEntry[] stored = Stored(20);
        stored[11] = Store(11, "somebody else");
        Is(LogFaultKind.RootDiffers, 7, 14, Check(stored, At(7), At(15), At(20)));
    }

    [Fact]
    public void Every_alteration_together_with_the_hash_is_found_once_a_checkpoint_covers_it()
    {
        for (int index = 0; index < 20; index++)
        {
            StoredEntry[] stored = Stored(20);
            stored[index] = Store(index, "somebody else");
            LogFault fault = Check(stored, At(7), At(15), At(20)).FirstFault!;
            Assert.Equal(LogFaultKind.RootDiffers, fault.Kind);
            Assert.InRange(index, (int)fault.FirstIndex, (int)fault.LastIndex);
        }
    }

    [Fact]
    public void Two_entries_that_changed_places_are_found()
    {
        StoredEntry[] stored = Stored(20);
        (stored[3], stored[4]) = (stored[4], stored[3]);
        Is(LogFaultKind.IndexOutOfTurn, 3, 3, Check(stored, At(20)));
        stored[3] = stored[3] with { Index = 3 };
        stored[4] = stored[4] with { Index = 4 };
        Is(LogFaultKind.RootDiffers, 0, 19, Check(stored, At(20)));
    }

    [Fact]
    public void An_entry_that_is_missing_or_comes_twice_is_named()
    {
        StoredEntry[] stored = Stored(20);
        Is(LogFaultKind.IndexOutOfTurn, 5, 5, Check([.. stored[..5], .. stored[6..]], At(20)));
        Is(LogFaultKind.IndexOutOfTurn, 6, 6, Check([.. stored[..6], .. stored[5..]], At(20)));
    }

    [Fact]
    public void Entries_cut_off_at_the_end_are_named() =>
        Is(LogFaultKind.EntriesMissing, 15, 19, Check(Stored(15), At(7), At(20)));

    [Fact]
    public void An_entry_that_is_not_canonical_is_named_even_where_its_hash_fits()
    {
        byte[] spaced = "{ \"n\":5}"u8.ToArray();
        StoredEntry[] stored = Stored(20);
        stored[5] = new StoredEntry(5, spaced, MerkleHash.Leaf(spaced));
        Is(LogFaultKind.EntryUnreadable, 5, 5, Check(stored));
    }

    [Fact]
    public void A_checkpoint_that_nobody_known_signed_is_named()
    {
        using SigningKey stranger = Key("stranger");
        Is(LogFaultKind.CheckpointNotSigned, 7, 14, Check(Stored(20), At(7), Sign(15, stranger)));
        SignedCheckpoint forged = SignedCheckpoint.Sign(At(15).Checkpoint, stranger, KeyId.For(Eastvale, key.PublicKey));
        Is(LogFaultKind.CheckpointNotSigned, 7, 14, Check(Stored(20), At(7), forged));
        Is(LogFaultKind.CheckpointNotSigned, 7, 19, Check(Stored(20), At(7), Sign(30, stranger)));
    }

    [Fact]
    public void A_checkpoint_of_another_log_or_of_an_earlier_time_is_named()
    {
        SignedCheckpoint elsewhere = Sign(At(15).Checkpoint with { Origin = "did:web:other.example" }, key);
        Is(LogFaultKind.CheckpointOfAnotherLog, 7, 14, Check(Stored(20), At(7), elsewhere));
        SignedCheckpoint early = Sign(At(15).Checkpoint with { Time = Now.AddDays(-100) }, key);
        Is(LogFaultKind.CheckpointOutOfTime, 7, 14, Check(Stored(20), At(7), early));
    }

    [Fact]
    public void The_checkpoints_of_an_expired_key_still_count_but_cover_nothing_by_themselves()
    {
        IssuerKey old = new(KeyId.For(Eastvale, key.PublicKey), key.PublicKey, Expires: Now.AddDays(-1));
        KeyRing keys = Ring(newer).With(new KeyRing([old]));
        LogWalkReport later = LogWalk.Check(Stored(20), [At(7), Sign(15, newer)], keys, Now);
        Assert.True(later.IsWhole);
        Assert.Equal(15, later.CoveredBy!.Size);
        Assert.Null(LogWalk.Check(Stored(20), [At(7)], keys, Now).CoveredBy);
        StoredEntry[] stored = Stored(20);
        stored[2] = Store(2, "somebody else");
        Is(LogFaultKind.RootDiffers, 0, 6, LogWalk.Check(stored, [At(7)], keys, Now));
    }

    [Fact]
    public void An_entry_that_is_no_object_is_refused()
    {
        Assert.False(LogEntry.Read("[1]"u8).IsOk);
        Assert.False(LogEntry.Read("{\"b\":1,\"a\":1}"u8).IsOk);
        Assert.True(LogEntry.Read("{\"a\":1,\"b\":1}"u8).IsOk);
    }

    private static void Is(LogFaultKind kind, long first, long last, LogWalkReport report)
    {
        Assert.False(report.IsWhole);
        Assert.Equal((kind, first, last), (report.FirstFault!.Kind, report.FirstFault.FirstIndex, report.FirstFault.LastIndex));
    }

    private LogWalkReport Check(StoredEntry[] stored, params SignedCheckpoint[] checkpoints) =>
        LogWalk.Check(stored, checkpoints, Ring(key), Now);

    private SignedCheckpoint At(int size) => Sign(size, key);

    private static SignedCheckpoint Sign(int size, SigningKey by) => Sign(
        new Checkpoint(Origin, size, TreeHead.Of(Stored(size).Select(entry => entry.LeafHash)).Root, Now.AddDays(size - 50)), by);

    private static SignedCheckpoint Sign(Checkpoint checkpoint, SigningKey by) =>
        SignedCheckpoint.Sign(checkpoint, by, KeyId.For(Eastvale, by.PublicKey));

    private static StoredEntry[] Stored(int size) => [.. Enumerable.Range(0, size).Select(i => Store(i, $"person {i}"))];

    private static StoredEntry Store(int index, string who)
    {
        LogEntry entry = LogEntry.Of(new JsonObject { ["n"] = index, ["who"] = who }).Value;
        return new StoredEntry(index, entry.Text.Utf8.ToArray(), entry.LeafHash);
    }

    private static byte[] Flip(byte[] bytes, int place)
    {
        int bit = place % (bytes.Length * 8);
        bytes[bit / 8] ^= (byte)(1 << (bit % 8));
        return bytes;
    }
}
