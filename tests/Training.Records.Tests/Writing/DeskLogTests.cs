using System.Text;
using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Training.Content;
using Training.Proofs.Log;
using Training.Records.Accounts;
using Training.Records.Ledger;
using Training.Records.Publishing;
using Training.Records.Tests.Ledger;
using Training.Records.Writing;
using Training.Sequencing;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Writing;

/// <summary>What is published from the desk stands in the public log, without a name.</summary>
public sealed class DeskLogTests
{
    private const string Path = "procedures/change-tray.yaml";
    private const string Lesson = "modules/01-trays/lesson.md";

    [Fact]
    public async Task What_the_only_trainer_publishes_is_alone_in_the_public_log()
    {
        await using var world = await Create();
        await PublishedAlone(world);
        var entry = await Entry(world, "desk-published");
        var text = Assert.Single(entry["texts"]!.AsArray())!.AsObject();
        var row = await world.Db(db => db.Set<DeskEntry>().SingleAsync());
        Assert.Equal((2, Path, true), ((int)entry["publication"]!.GetValue<double>(), (string?)text["path"], (bool?)text["alone"]));
        Assert.Equal(row.Text!.Value.Hex, (string?)text["text"]);
        Assert.Equal(Salted.Name("Tomasz Zielinski", row.WriterSalt!).ToString(), (string?)text["writer"]);
        Assert.False(text.ContainsKey("approver"));
        Assert.Equal(row.LogIndex, (await Line(world)).LogEntry);
        Assert.True((await Line(world)).FitsLog);
    }

    [Fact]
    public async Task What_somebody_else_approved_bears_both_names_as_hashes_with_salts_of_their_own()
    {
        await using var world = await Create();
        await Approved(world);
        var text = Assert.Single((await Entry(world, "desk-published"))["texts"]!.AsArray())!.AsObject();
        var row = await world.Db(db => db.Set<DeskEntry>().SingleAsync());
        Assert.Equal(Salted.Name("Tomasz Zielinski", row.WriterSalt!).ToString(), (string?)text["writer"]);
        Assert.Equal(Salted.Name("Noor Haddad", row.ApproverSalt!).ToString(), (string?)text["approver"]);
        Assert.False(text.ContainsKey("alone"));
        Assert.NotEqual(row.WriterSalt, row.ApproverSalt);
        Assert.True((await Line(world)).FitsLog);
    }

    [Fact]
    public async Task What_is_published_together_is_one_entry_that_names_everything_that_is_served_since()
    {
        await using var world = await Create();
        var lesson = await Written(world, Lesson, "procedures: [", "procedures: [ ");
        var procedure = await Written(world, Path, "Change the relay tray", "Change a relay tray");
        Ok(await Ask(world, publishing => publishing.Publish(world.Trainer, [lesson, procedure])));
        var entry = await Entry(world, "desk-published");
        Assert.Equal([Lesson, Path], entry["texts"]!.AsArray().Select(text => (string?)text!["path"]));
        // The oracle makes the canonical JSON by hand: ids of files need no escapes.
        var served = world.One<Publisher>().Served.OrderBy(file => file.Path, StringComparer.Ordinal).Select(file => $"\"{file.Path}\":\"{file.Hash.Hex}\"");
        Assert.Equal(ContentHash.Of($"{{{string.Join(',', served)}}}").Hex, (string?)entry["files"]);
    }

    [Fact]
    public async Task What_somebody_wrote_who_is_no_trainer_any_more_was_seen_by_two()
    {
        await using var world = await Create();
        var other = await world.Add("Noor Haddad", "noor", null, Roles.Trainer);
        var id = Ok(await world.With<Drafts, Outcome<DraftId, Refusal>>(drafts => drafts.Begin(other, Path)));
        await world.Db(db => db.UserRoles.Where(held => held.UserId == other.Person).ExecuteDeleteAsync());
        Ok(await Ask(world, publishing => publishing.Publish(world.Trainer, [new(id, 1)])));
        Assert.Equal((DeskAct.Published, "Noor Haddad", "Tomasz Zielinski"), ((await Line(world)).Act, (await Line(world)).WrittenBy, (await Line(world)).ApprovedBy));
        Assert.True(Assert.Single((await Entry(world, "desk-published"))["texts"]!.AsArray())!.AsObject().ContainsKey("approver"));
    }

    [Fact]
    public async Task Taking_the_folders_file_again_is_an_entry_too()
    {
        await using var world = await Create();
        await world.One<Publisher>().Publish(Files);
        await PublishedAlone(world);
        Ok(await Ask(world, publishing => publishing.TakeFolder(world.Trainer, Path)));
        var entry = await Entry(world, "folder-taken");
        Assert.Equal((Path, Files.Single(file => file.Path == Path).Hash.Hex), ((string?)entry["path"], (string?)entry["text"]));
        Assert.All((await Desk(world)).Log, line => Assert.True(line.FitsLog));
    }

    [Fact]
    public async Task What_is_refused_is_no_entry()
    {
        await using var world = await Create();
        var before = (await LogWriterTests.Stored(world)).Count;
        var draft = await Written(world, Path, "first: [key-off]", "first: [no-such-step]");
        Assert.False((await Ask(world, publishing => publishing.Publish(world.Trainer, [draft]))).IsOk);
        Assert.Equal(before, (await LogWriterTests.Stored(world)).Count);
    }

    [Fact]
    public async Task Where_the_log_cannot_be_kept_nothing_is_published()
    {
        await using var world = await Create();
        var draft = await Written(world, Path, "Change the relay tray", "Change a relay tray");
        await world.Db(db => db.Database.ExecuteSqlRawAsync(
            "CREATE TRIGGER DiskIsFull BEFORE INSERT ON LogEntries BEGIN SELECT RAISE(ABORT, 'disk is full'); END"));
        await Assert.ThrowsAsync<DbUpdateException>(() => Ask(world, publishing => publishing.Publish(world.Trainer, [draft])));
        Assert.Equal(1, world.One<Library>().Current.Number);
        Assert.Empty((await Desk(world)).Log);
    }

    [Fact]
    public async Task Nobodys_name_or_id_stands_in_the_log_and_the_log_is_whole()
    {
        await using var world = await Create();
        await Approved(world);
        Ok(await SigningTests.Sign(world));
        Assert.Null((await SigningTests.Walk(world)).Fault);
        var log = string.Join('\n', (await LogWriterTests.Stored(world)).Select(entry => Encoding.UTF8.GetString(entry.Text.Span)));
        Assert.Contains("desk-published", log, StringComparison.Ordinal);
        foreach (var hidden in new[] { "Tomasz", "Zielinski", "tomasz", "Noor", world.Trainer.Person.ToString() })
            Assert.DoesNotContain(hidden, log, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("UPDATE DeskEntries SET Act = 0")]
    [InlineData("UPDATE DeskEntries SET Path = 'procedures/stow-tray.yaml'")]
    [InlineData("UPDATE DeskEntries SET WrittenById = (SELECT Id FROM AspNetUsers WHERE UserName = 'renske')")]
    [InlineData("UPDATE DeskEntries SET LogIndex = 0")]
    [InlineData("UPDATE DeskEntries SET WriterSalt = NULL")]
    public async Task A_line_of_the_desk_that_was_altered_does_not_fit_the_log(string sql)
    {
        await using var world = await Create();
        await PublishedAlone(world);
        Assert.Equal(1, await world.Db(db => db.Database.ExecuteSqlRawAsync(sql)));
        Assert.False((await Line(world)).FitsLog);
    }

    [Fact]
    public async Task Once_a_name_is_removed_nothing_leads_from_the_log_to_it_and_the_line_still_fits()
    {
        await using var world = await Create();
        await Approved(world);
        Ok(await world.With<NameRemovals, Outcome<PersonId, Refusal>>(removals => removals.Remove(world.Administrator, world.Trainer.Person)));
        var row = await world.Db(db => db.Set<DeskEntry>().SingleAsync());
        Assert.Null(row.WriterSalt);
        Assert.NotNull(row.ApproverSalt);
        var other = await world.ActorOf(row.ApprovedById);
        var line = Assert.Single(Ok(await world.With<Drafts, Outcome<DeskView, Refusal>>(drafts => drafts.Desk(other))).Log);
        Assert.Equal((NameRemovals.InItsPlace, true), (line.WrittenBy, line.FitsLog));
    }

    [Fact]
    public async Task What_was_published_before_the_log_took_such_in_stays_as_it_was()
    {
        await using var world = await Create();
        await PublishedAlone(world);
        // Back to what the database was and forward again: the columns are new, as they are to an old one.
        await world.Db(async db =>
        {
            var all = db.Database.GetMigrations().ToList();
            var migrator = db.GetService<IMigrator>();
            await migrator.MigrateAsync(all[all.FindIndex(name => name.EndsWith("_DeskLog", StringComparison.Ordinal)) - 1]);
            await migrator.MigrateAsync();
            return 0;
        });
        var line = await Line(world);
        Assert.Equal((DeskAct.PublishedAlone, "Tomasz Zielinski", null, true), (line.Act, line.WrittenBy, line.LogEntry, line.FitsLog));
    }

    private static async Task PublishedAlone(TestWorld world)
    {
        var draft = await Written(world, Path, "Change the relay tray", "Change a relay tray");
        Ok(await Ask(world, publishing => publishing.Publish(world.Trainer, [draft])));
    }

    private static async Task Approved(TestWorld world)
    {
        var other = await world.Add("Noor Haddad", "noor", null, Roles.Trainer);
        var draft = await Written(world, Path, "Change the relay tray", "Change a relay tray");
        Ok(await Ask(world, publishing => publishing.Offer(world.Trainer, draft.Draft, draft.Version)));
        Ok(await Ask(world, publishing => publishing.Publish(other, [draft])));
    }

    private static async Task<DraftVersion> Written(TestWorld world, string path, string from, string to)
    {
        var id = Ok(await world.With<Drafts, Outcome<DraftId, Refusal>>(drafts => drafts.Begin(world.Trainer, path)));
        var text = FilesWith(path, from, to).Single(file => file.Path == path).Text;
        return new(id, Ok(await world.With<Drafts, Outcome<DraftSaved, Refusal>>(drafts => drafts.Save(world.Trainer, id, 1, text))).Version);
    }

    private static async Task<JsonObject> Entry(TestWorld world, string kind) => Assert.Single(
        (await LogWriterTests.Stored(world)).Select(entry => LogEntry.Read(entry.Text.Span).Value.Content()), entry => (string?)entry["kind"] == kind);

    private static async Task<DeskView> Desk(TestWorld world) =>
        Ok(await world.With<Drafts, Outcome<DeskView, Refusal>>(drafts => drafts.Desk(world.Trainer)));

    private static async Task<DeskLogLine> Line(TestWorld world) => Assert.Single((await Desk(world)).Log);

    private static Task<T> Ask<T>(TestWorld world, Func<DraftPublishing, Task<T>> ask) => world.With(ask);
}
