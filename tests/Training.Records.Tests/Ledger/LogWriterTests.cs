using System.Text;
using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Training.Proofs;
using Training.Proofs.Log;
using Training.Records.Certifying;
using Training.Records.Ledger;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Ledger;

public sealed class LogWriterTests
{
    [Fact]
    public async Task Everything_that_changes_a_record_is_an_entry_of_its_own_in_order()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        Ok(await world.Records(records => records.Suspend(world.Owner, record, "Sick leave.")));
        Ok(await world.Records(records => records.Reinstate(world.Owner, record, "Back.")));
        Ok(await world.Records(records => records.Withdraw(world.Examiner, record, "The paper was copied.")));
        var entries = await Entries(world);
        Assert.Equal("log-begun", (string?)entries[0]["kind"]);
        Assert.Equal(
            ["record-issued", "record-suspended", "record-reinstated", "record-withdrawn"],
            entries.Where(entry => (string?)entry["record"] == $"urn:uuid:{record}").Select(entry => (string?)entry["kind"]));
        var walk = LogWalk.Check(await Stored(world), [], Proofs.Signing.KeyRing.Empty, world.Clock.GetUtcNow());
        Assert.True(walk.IsWhole);
        Assert.Equal(entries.Count, walk.Head.Size);
    }

    [Fact]
    public async Task No_name_no_reason_and_nobodys_id_stands_in_the_log()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        Ok(await world.Records(records => records.Suspend(world.Owner, record, "Sick leave.")));
        var log = string.Join('\n', (await Stored(world)).Select(entry => Encoding.UTF8.GetString(entry.Text.Span)));
        Assert.Contains(record.ToString(), log, StringComparison.Ordinal);
        foreach (var hidden in new[]
        {
            "Amara", "Okafor", "amara", "Hollis", "Sick", "Quillmoor", world.Technician.Person.ToString(), world.Owner.Person.ToString(),
            world.Quillmoor.ToString(),
        })
            Assert.DoesNotContain(hidden, log, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_hashes_are_those_of_the_name_the_shop_and_what_was_said_with_salts_that_stand_beside_the_log()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        Ok(await world.Records(records => records.Suspend(world.Owner, record, "Sick leave.")));
        var salt = await world.Db(db => db.CompetencyRecords.Select(known => known.Salt).SingleAsync());
        var note = await world.Db(db => db.LogNotes.SingleAsync(known => known.Salt != null));
        var entries = await Entries(world);
        var issued = entries.Single(entry => (string?)entry["kind"] == "record-issued");
        Assert.Equal(Salted.Name("Amara Okafor", salt!).ToString(), (string?)issued["person"]);
        Assert.Equal(Salted.Shop(world.Quillmoor, salt!).ToString(), (string?)issued["shop"]);
        Assert.Equal(
            Salted.Said(world.Owner.Person, "Sick leave.", note.Salt!).ToString(), (string?)entries[(int)note.EntryIndex]["said"]);
        Assert.NotEqual(salt, note.Salt);
    }

    [Fact]
    public async Task Where_the_log_cannot_be_kept_what_it_speaks_of_is_not_kept_either()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        await world.Db(db => db.Database.ExecuteSqlRawAsync(
            "CREATE TRIGGER DiskIsFull BEFORE INSERT ON LogEntries BEGIN SELECT RAISE(ABORT, 'disk is full'); END"));
        await Assert.ThrowsAsync<DbUpdateException>(() => world.Records(records => records.Suspend(world.Owner, record, "No.")));
        Assert.Equal(RecordState.Current, (await world.Look(record)).Record.Standing!.State);
        Assert.Single((await world.Look(record)).Events);
        await world.PassedPaper(world.Colleague);
        await world.SignedRun(world.Colleague, ChangeTray);
        var last = await world.EndedRun(world.Colleague, StowTray);
        await Assert.ThrowsAsync<DbUpdateException>(() => world.Runs(runs => runs.Sign(world.Examiner, last, "Seen.")));
        Assert.Equal(1, await world.Db(db => db.CompetencyRecords.CountAsync()));
    }

    [Fact]
    public async Task An_entry_outside_a_change_is_a_fault_of_ours()
    {
        await using var world = await Create();
        await Assert.ThrowsAsync<InvalidOperationException>(() =>
            world.With<LogWriter, (long, NodaTime.Instant)>(writer => writer.Add(new LogEvent.Begun("x"))));
    }

    [Fact]
    public async Task A_clock_that_was_put_back_does_not_date_anything_back()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        world.Clock.Advance(-TimeSpan.FromDays(3));
        Refused(
            await world.Records(records => records.Suspend(world.Owner, record, "No.")),
            "By the clock of this server the record is not issued yet; have the clock set right first.");
        world.Clock.Advance(TimeSpan.FromDays(3) - TimeSpan.FromMinutes(2));
        Ok(await world.Records(records => records.Suspend(world.Owner, record, "No.")));
        var events = (await world.Look(record)).Events;
        Assert.Equal(events[0].At, events[1].At);
        Assert.Null((await world.Db(db => world.One<LogBook>().Read(db))).Fault);
    }

    [Fact]
    public async Task Changes_that_come_at_once_stand_one_after_the_other()
    {
        await using var world = await Create();
        var (amara, bao) = (await world.EarnedRecord(world.Technician), await world.EarnedRecord(world.Colleague));
        var before = (await Stored(world)).Count;
        await Task.WhenAll(new[] { amara, bao }.Select(record => Task.Run(() =>
            world.Records(records => records.Suspend(world.Owner, record, "At once.")))));
        Assert.Equal(before + 2, (await Stored(world)).Count);
        Assert.Null((await world.Db(db => world.One<LogBook>().Read(db))).Fault);
    }

    [Fact]
    public async Task A_record_stands_the_same_after_a_restart()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        Ok(await world.Records(records => records.Suspend(world.Owner, record, "Sick leave.")));
        var before = await world.Look(record);
        await world.Restart();
        Assert.Equal(before.Record, (await world.Look(record)).Record);
        Assert.Equal(before.Events, (await world.Look(record)).Events);
    }

    internal static Task<List<StoredEntry>> Stored(TestWorld world) => world.Db(async db =>
        (await db.LogEntries.AsNoTracking().OrderBy(entry => entry.Index).ToListAsync())
            .Select(row => new StoredEntry(row.Index, row.Text, Sha256Digest.FromBytes(row.LeafHash))).ToList());

    private static async Task<List<JsonObject>> Entries(TestWorld world) =>
        [.. (await Stored(world)).Select(entry => LogEntry.Read(entry.Text.Span).Value.Content())];
}
