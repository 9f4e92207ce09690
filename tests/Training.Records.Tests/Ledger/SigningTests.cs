using System.Text;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Training.Proofs.Credentials;
using Training.Proofs.Log;
using Training.Proofs.Signing;
using Training.Records.Issuers;
using Training.Records.Ledger;
using Training.Records.Proving;
using Training.Sequencing;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Ledger;

public sealed class SigningTests
{
    [Fact]
    public async Task A_checkpoint_is_signed_where_there_is_something_new_and_else_not()
    {
        await using var world = await Create();
        Assert.True(Ok(await Sign(world)));
        Assert.False(Ok(await Sign(world)));
        await world.EarnedRecord(world.Technician);
        Assert.True(Ok(await Sign(world)));
        var newest = SignedCheckpoint.Read(Ok(await world.With<PublicLog, Outcome<byte[], Refusal>>(log => log.NewestCheckpoint()))).Value;
        var entries = await LogWriterTests.Stored(world);
        var keys = DidDocument.Read(Ok(await Document(world)), DidWeb.Parse("did:web:eastvale.example").Value).Value;
        Assert.Equal(entries.Count, newest.Verify(keys, world.Clock.GetUtcNow()).Value.Size);
        Assert.Equal(TreeHead.Of(entries.Select(entry => entry.LeafHash)).Root, newest.Checkpoint.RootHash);
    }

    [Fact]
    public async Task Anybody_can_have_it_proved_that_an_entry_stands_in_the_log_and_that_the_log_was_only_added_to()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        Ok(await Sign(world));
        var before = SignedCheckpoint.Read(Ok(await world.With<PublicLog, Outcome<byte[], Refusal>>(log => log.NewestCheckpoint()))).Value.Checkpoint;
        await world.EarnedRecord(world.Colleague);
        Ok(await Sign(world));
        var after = SignedCheckpoint.Read(Ok(await world.With<PublicLog, Outcome<byte[], Refusal>>(log => log.NewestCheckpoint()))).Value.Checkpoint;
        for (var index = 0; index < after.Size; index++)
        {
            var place = LogInclusion.Read(Ok(await world.With<PublicLog, Outcome<byte[], Refusal>>(log => log.Entry(index)))).Value;
            Assert.True(place.Proof.Verify(place.Entry.LeafHash, after.RootHash));
        }

        var extension = Training.Proofs.CanonicalJson.StrictJson.ReadObject(
            Ok(await world.With<PublicLog, Outcome<byte[], Refusal>>(log => log.Extension(before.Size)))).Value;
        var path = extension["path"]!.AsArray().Select(hash => Training.Proofs.Sha256Digest.Parse((string?)hash).Value).ToList();
        Assert.True(new ConsistencyProof(before.Size, after.Size, path).Verify(before.RootHash, after.RootHash));
        Refused(
            await world.With<PublicLog, Outcome<byte[], Refusal>>(log => log.Entry(after.Size)),
            $"Among the first {after.Size} entries there is no entry {after.Size}; they count from 0.");
        Refused(
            await world.With<PublicLog, Outcome<byte[], Refusal>>(log => log.Extension(0)),
            $"The log has {after.Size} entries; ask for sizes from 1 to that.");
    }

    [Fact]
    public async Task An_entry_that_no_checkpoint_holds_yet_is_said_to_come_within_a_minute()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        Ok(await Sign(world));
        var next = SignedCheckpoint.Read(Ok(await world.With<PublicLog, Outcome<byte[], Refusal>>(log => log.NewestCheckpoint()))).Value.Checkpoint.Size;
        await world.EarnedRecord(world.Colleague);
        Refused(
            await world.With<PublicLog, Outcome<byte[], Refusal>>(log => log.Entry(next)),
            $"Entry {next} is in the log. It is shown once a signed checkpoint holds it, which takes a minute at most; load this page again then.");
        Ok(await Sign(world));
        Ok(await world.With<PublicLog, Outcome<byte[], Refusal>>(log => log.Entry(next)));
    }

    [Fact]
    public async Task A_log_that_was_cut_or_rewritten_is_not_signed_again()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        Ok(await Sign(world));
        await world.Db(db => db.Database.ExecuteSqlRawAsync(
            "DELETE FROM LogNotes; DELETE FROM LogEntries WHERE \"Index\" = (SELECT MAX(\"Index\") FROM LogEntries)"));
        Refused(await Sign(world), "No checkpoint is signed: the log is not the one that was signed before with entries added.");
    }

    [Fact]
    public async Task Without_an_address_nothing_is_signed_and_everything_else_goes_on()
    {
        await using var world = await Create();
        world.Address = null;
        var record = await world.EarnedRecord(world.Technician);
        Refused(await Sign(world), "No address is set.");
        Refused(await Document(world), "No address is set.");
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [record])));
        var shown = Assert.IsType<ShownProof.Shown>(Ok(await world.Proofs(proofs => proofs.Show(proof.Token))));
        Assert.True(shown.AllHold);
        Assert.Null(shown.Issuer);
        Refused(await world.With<ProofFiles, Outcome<byte[], Refusal>>(files => files.Pack(proof.Token)), "No address is set.");
    }

    [Fact]
    public async Task A_new_key_signs_from_now_on_and_the_old_one_ends_now()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        Ok(await Sign(world));
        var old = Ok(await Keys(world, keys => keys.Look(world.Administrator))).Present!;
        var changed = Ok(await Keys(world, keys => keys.Replace(world.Administrator)));
        Assert.NotEqual(old, changed.Present);
        var kept = Assert.Single(changed.Old);
        Assert.Equal((old, NodaTime.Instant.FromDateTimeOffset(world.Clock.GetUtcNow())), (kept.Name, kept.ExpiresAt!.Value));
        var ring = DidDocument.Read(Ok(await Document(world)), DidWeb.Parse("did:web:eastvale.example").Value).Value;
        Assert.Equal(2, ring.Keys.Count);
        Assert.True(Ok(await Sign(world)));
        Assert.Null((await Walk(world)).Fault);
        await world.Restart();
        Assert.Equal(changed.Present, Ok(await Keys(world, keys => keys.Look(world.Administrator))).Present);
    }

    [Fact]
    public async Task A_key_that_was_given_up_is_revoked_for_everything_that_it_signed()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        Ok(await Sign(world));
        var checkpoint = SignedCheckpoint.Read(Ok(await world.With<PublicLog, Outcome<byte[], Refusal>>(log => log.NewestCheckpoint()))).Value;
        Ok(await Keys(world, keys => keys.GiveUp(world.Administrator)));
        var ring = DidDocument.Read(Ok(await Document(world)), DidWeb.Parse("did:web:eastvale.example").Value).Value;
        Assert.EndsWith("which is revoked.", checkpoint.Verify(ring, world.Clock.GetUtcNow()).Sentence, StringComparison.Ordinal);
        Assert.True(Ok(await Sign(world)));
    }

    [Fact]
    public async Task Only_administrators_see_and_change_the_keys()
    {
        await using var world = await Create();
        foreach (var actor in new[] { world.Owner, world.Trainer, world.Examiner, world.Technician })
        {
            NotAllowed(await Keys(world, keys => keys.Look(actor)));
            NotAllowed(await Keys(world, keys => keys.Replace(actor)));
            NotAllowed(await Keys(world, keys => keys.GiveUp(actor)));
        }
    }

    [Fact]
    public async Task The_key_lies_in_a_file_that_its_owner_alone_can_read_and_a_published_one_is_refused()
    {
        await using var world = await Create();
        Ok(await Sign(world));
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(world.KeyFile));
        // The secret of RFC 8032, section 7.1, test 1.
        await File.WriteAllTextAsync(
            world.KeyFile, "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60", TestContext.Current.CancellationToken);
        await world.Restart();
        Refused(
            await Document(world),
            "The signing key is refused. This key is printed in public documents, so anyone can sign with it: make a new one.");
        await File.WriteAllTextAsync(world.KeyFile, "nonsense", TestContext.Current.CancellationToken);
        await world.Restart();
        Refused(await Document(world), "The file of the signing key holds no key: put it back from a backup. (signing.key)");
    }

    [Theory]
    [InlineData("https://training.eastvale.example", "did:web:training.eastvale.example")]
    [InlineData("https://EASTVALE.example/", "did:web:eastvale.example")]
    [InlineData("https://eastvale.example:8443/training", "did:web:eastvale.example%3A8443:training")]
    [InlineData("https://localhost:5000", "did:web:localhost%3A5000")]
    public void An_address_gives_the_identifier(string address, string did) => Assert.Equal(did, Ok(ProviderAddress.Read(address)).Did.ToString());

    [Theory]
    [InlineData("http://eastvale.example")]
    [InlineData("https://192.0.2.7")]
    [InlineData("eastvale.example")]
    [InlineData("")]
    public void An_address_that_cannot_be_named_is_refused(string address) => Assert.False(ProviderAddress.Read(address).IsOk);

    /// <summary>Every byte of what the log keeps, turned round one after the other: each time the walk finds it.</summary>
    [Fact]
    public async Task Not_one_byte_of_the_log_can_be_changed_unnoticed()
    {
        await using var world = await Empty();
        await world.Db(async db =>
        {
            await using var change = await db.BeginChange();
            var writer = new LogWriter(db, world.Clock);
            await writer.Add(new LogEvent.Published("procedures/a.yaml", Content.ContentHash.Of("a"), 1));
            await change.CommitAsync();
            return 0;
        });
        Ok(await Sign(world));
        Assert.Null((await Walk(world)).Fault);
        await using var database = new SqliteConnection(world.ConnectionString);
        await database.OpenAsync(TestContext.Current.CancellationToken);
        // A test may lose its file with the power; without this each change would wait for the disk.
        Run(database, "PRAGMA synchronous = OFF");
        var flips = 0;
        foreach (var (table, key, column) in new[] { ("LogEntries", "Index", "Text"), ("LogEntries", "Index", "LeafHash"), ("LogCheckpoints", "Number", "Text") })
        {
            foreach (var (row, bytes) in Cells(database, $"SELECT \"{key}\", \"{column}\" FROM {table}"))
                for (var at = 0; at < bytes.Length; at++)
                {
                    var altered = (byte[])bytes.Clone();
                    altered[at] ^= (byte)(1 << (at % 8));
                    Put(table, key, column, row, altered);
                    Assert.True((await Walk(world)).Fault is not null, $"{table}.{column} of {row}, byte {at}: not found.");
                    Put(table, key, column, row, bytes);
                    flips++;
                }
        }

        foreach (var (table, key) in new[] { ("LogEntries", "Index"), ("LogCheckpoints", "Number") })
        {
            Run(database, $"UPDATE {table} SET \"{key}\" = \"{key}\" + 256");
            Assert.NotNull((await Walk(world)).Fault);
            Run(database, $"UPDATE {table} SET \"{key}\" = \"{key}\" - 256");
        }

        Assert.Null((await Walk(world)).Fault);
        Assert.True(flips > 600, $"Only {flips} bytes were turned.");

        void Put(string table, string key, string column, long row, byte[] bytes) => Run(
            database, $"UPDATE {table} SET \"{column}\" = $bytes WHERE \"{key}\" = $row", ("$bytes", bytes), ("$row", row));
    }

    [Fact]
    public async Task The_export_holds_the_whole_log_and_its_keys_and_names_nobody()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        Ok(await Sign(world));
        var lines = await world.With<PublicLog, IReadOnlyList<byte[]>>(log => log.Export());
        var export = LogExport.Read(lines.Select(line => (ReadOnlyMemory<byte>)line)).Value;
        var walk = LogWalk.Check(export.Entries, export.Checkpoints, export.OwnKeys, world.Clock.GetUtcNow());
        Assert.Null(walk.FirstFault ?? (object?)export.Fault);
        Assert.Equal(export.Entries.Count, walk.CoveredBy!.Size);
        var text = string.Join('\n', lines.Select(Encoding.UTF8.GetString));
        foreach (var hidden in new[] { "Amara", "Okafor", "Quillmoor" }) Assert.DoesNotContain(hidden, text, StringComparison.Ordinal);
    }

    internal static Task<Outcome<bool, Refusal>> Sign(TestWorld world) =>
        world.With<Checkpoints, Outcome<bool, Refusal>>(checkpoints => checkpoints.SignWhatIsNew());

    internal static Task<Outcome<byte[], Refusal>> Document(TestWorld world) =>
        world.With<SigningKeys, Outcome<byte[], Refusal>>(keys => keys.Document());

    internal static Task<LogFinding> Walk(TestWorld world) =>
        world.With<LogAudit, LogFinding>(audit => audit.Walk(NodaTime.Instant.FromDateTimeOffset(world.Clock.GetUtcNow())));

    private static Task<Outcome<SigningKeysView, Refusal>> Keys(
        TestWorld world, Func<SigningKeys, Task<Outcome<SigningKeysView, Refusal>>> ask) => world.With(ask);

    private static List<(long Row, byte[] Bytes)> Cells(SqliteConnection database, string sql)
    {
        using var command = database.CreateCommand();
        command.CommandText = sql;
        using var reader = command.ExecuteReader();
        List<(long, byte[])> cells = [];
        while (reader.Read()) cells.Add((reader.GetInt64(0), reader.GetFieldValue<byte[]>(1)));
        return cells;
    }

    private static void Run(SqliteConnection database, string sql, params (string Name, object Value)[] values)
    {
        using var command = database.CreateCommand();
        command.CommandText = sql;
        foreach (var (name, value) in values) command.Parameters.AddWithValue(name, value);
        command.ExecuteNonQuery();
    }
}
