using Microsoft.EntityFrameworkCore;
using Training.Content;
using Training.Records.Accounts;
using Training.Records.Publishing;
using Training.Records.Writing;
using Training.Sequencing;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Writing;

public sealed class DraftsTests
{
    private const string Path = "procedures/change-tray.yaml";

    [Fact]
    public async Task A_draft_begins_with_the_text_that_is_served()
    {
        await using var world = await Create();
        var view = Ok(await Look(world, await Begin(world)));
        Assert.Equal(Files.Single(file => file.Path == Path).Text, view.Text);
        Assert.False(view.ServedMoved);
    }

    [Fact]
    public async Task Whoever_begins_a_second_draft_of_a_file_finds_the_first()
    {
        await using var world = await Create();
        var other = await world.Add("Noor Haddad", "noor", null, Roles.Trainer);
        Assert.Equal(await Begin(world), Ok(await Ask(world, drafts => drafts.Begin(other, Path))));
    }

    [Fact]
    public async Task Every_text_that_was_saved_is_kept()
    {
        await using var world = await Create();
        var id = await Begin(world);
        Ok(await Ask(world, drafts => drafts.Save(world.Trainer, id, 1, "one: 1\n")));
        Ok(await Ask(world, drafts => drafts.Save(world.Trainer, id, 2, "two: 2\r\n")));
        await world.Restart();
        Assert.Equal("two: 2\n", Ok(await Look(world, id)).Text);
        Assert.Equal([3, 2, 1], Ok(await Ask(world, drafts => drafts.Texts(world.Trainer, id))).Select(text => text.Number));
        Assert.Equal("one: 1\n", Ok(await Ask(world, drafts => drafts.Text(world.Trainer, id, 2))).Text);
    }

    [Fact]
    public async Task A_text_that_says_the_same_makes_no_version()
    {
        await using var world = await Create();
        var id = await Begin(world);
        var same = Ok(await Ask(world, async drafts => await drafts.Save(world.Trainer, id, 1, Ok(await drafts.Look(world.Trainer, id)).Text)));
        Assert.Equal((1, 1, false), (same.Number, same.Version, same.IsBeside));
    }

    [Fact]
    public async Task A_text_that_was_written_on_an_old_version_is_kept_beside_the_draft()
    {
        await using var world = await Create();
        var other = await world.Add("Noor Haddad", "noor", null, Roles.Trainer);
        var id = await Begin(world);
        Ok(await Ask(world, drafts => drafts.Save(world.Trainer, id, 1, "mine: 1\n")));
        var late = Ok(await Ask(world, drafts => drafts.Save(other, id, 1, "theirs: 1\n")));
        Assert.True(late.IsBeside);
        var view = Ok(await Look(world, id));
        Assert.Equal("mine: 1\n", view.Text);
        Assert.Equal("theirs: 1\n", Ok(await Ask(world, drafts => drafts.Text(world.Trainer, id, Assert.Single(view.Beside).Number))).Text);
        Ok(await Ask(world, drafts => drafts.Settle(other, id, late.Number)));
        Assert.Empty(Ok(await Look(world, id)).Beside);
        Assert.Equal(3, Ok(await Ask(world, drafts => drafts.Texts(other, id))).Count);
    }

    [Fact]
    public async Task A_late_text_that_is_sent_again_is_kept_once()
    {
        await using var world = await Create();
        var id = await Begin(world);
        Ok(await Ask(world, drafts => drafts.Save(world.Trainer, id, 1, "mine: 1\n")));
        var first = Ok(await Ask(world, drafts => drafts.Save(world.Trainer, id, 1, "late: 1\n")));
        Assert.Equal(first, Ok(await Ask(world, drafts => drafts.Save(world.Trainer, id, 1, "late: 1\n"))));
        Assert.Single(Ok(await Look(world, id)).Beside);
    }

    [Fact]
    public async Task Two_people_in_one_draft_see_each_other_for_a_while()
    {
        await using var world = await Create();
        var other = await world.Add("Noor Haddad", "noor", null, Roles.Trainer);
        var id = await Begin(world);
        Assert.Empty(Ok(await Look(world, id)).Others);
        Assert.Equal(["Tomasz Zielinski"], Ok(await Ask(world, drafts => drafts.Look(other, id))).Others);
        world.Clock.Advance(TimeSpan.FromMinutes(1));
        Assert.Empty(Ok(await Ask(world, drafts => drafts.Look(other, id))).Others);
    }

    [Fact]
    public async Task A_draft_that_was_put_away_is_taken_up_by_saving()
    {
        await using var world = await Create();
        var id = await Begin(world);
        Ok(await Ask(world, drafts => drafts.PutAway(world.Trainer, id)));
        Assert.Empty(Ok(await Ask(world, drafts => drafts.Desk(world.Trainer))).Drafts);
        Ok(await Ask(world, drafts => drafts.Save(world.Trainer, id, 1, "again: 1\n")));
        Assert.Equal(id, Assert.Single(Ok(await Ask(world, drafts => drafts.Desk(world.Trainer))).Drafts).Id);
    }

    [Theory]
    [InlineData(NewFileSort.Procedure, "fit-lift", "procedures/fit-lift.yaml")]
    [InlineData(NewFileSort.Scenario, "fit-lift", "scenarios/fit-lift.md")]
    [InlineData(NewFileSort.Module, "12-fit-lift", "modules/12-fit-lift/lesson.md")]
    [InlineData(NewFileSort.Competency, "fit-lift", "competencies/fit-lift.yaml")]
    public async Task A_new_file_begins_with_a_template_at_its_place(NewFileSort sort, string name, string path)
    {
        await using var world = await Create();
        var id = Ok(await Ask(world, drafts => drafts.BeginFile(world.Trainer, sort, name, "Fit a \"lift\": the tail")));
        var view = Ok(await Look(world, id));
        Assert.Equal(path, view.Line.Path);
        Assert.Contains("Fit a \\\"lift\\\": the tail", view.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_template_of_a_procedure_lacks_nothing_but_a_lesson_that_teaches_it()
    {
        var problem = Assert.Single(ContentReader.Read([NewFile.Of(NewFileSort.Procedure, "fit-lift", "Fit a lift").Value]).Problems);
        Assert.StartsWith("No module teaches", problem.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Fit")]
    [InlineData("../fit")]
    [InlineData("")]
    [InlineData("fit lift")]
    public async Task A_new_file_needs_a_name_that_can_stand_in_an_address(string name)
    {
        await using var world = await Create();
        Assert.False((await Ask(world, drafts => drafts.BeginFile(world.Trainer, NewFileSort.Procedure, name, "Fit a lift"))).IsOk);
        Assert.Empty(Ok(await Ask(world, drafts => drafts.Desk(world.Trainer))).Drafts);
    }

    [Fact]
    public async Task A_translation_is_begun_beside_the_file_and_whoever_begins_it_again_is_told_by_whom()
    {
        await using var world = await Create();
        var other = await world.Add("Noor Haddad", "noor", null, Roles.Trainer);
        var first = Ok(await Ask(world, drafts => drafts.BeginTranslation(world.Trainer, Path, "fr")));
        Assert.Null(first.BegunBy);
        var view = Ok(await Look(world, first.Draft));
        Assert.Equal("procedures/change-tray.fr.yaml", view.Line.Path);
        Assert.Null(view.Served);
        var second = Ok(await Ask(world, drafts => drafts.BeginTranslation(other, Path, "fr")));
        Assert.Equal((first.Draft, "Tomasz Zielinski"), (second.Draft, second.BegunBy));
        Assert.Single(Ok(await Ask(world, drafts => drafts.Texts(other, first.Draft))));
    }

    [Fact]
    public async Task Two_who_begin_a_translation_at_once_write_on_one_draft()
    {
        await using var world = await Create();
        var other = await world.Add("Noor Haddad", "noor", null, Roles.Trainer);
        var begun = await Task.WhenAll(new[] { world.Trainer, other }.Select(actor =>
            Task.Run(() => Ask(world, drafts => drafts.BeginTranslation(actor, Path, "fr")))));
        Assert.Single(begun.Select(one => Ok(one).Draft).Distinct());
        Assert.Single(begun, one => Ok(one).BegunBy is null);
    }

    [Fact]
    public async Task A_translation_is_begun_with_the_text_that_lies_on_the_desk()
    {
        await using var world = await Create();
        var id = await Begin(world);
        Ok(await Ask(world, drafts => drafts.Save(world.Trainer, id, 1, FilesWith(Path, "Change the relay tray", "Swap the relay tray").Single(file => file.Path == Path).Text)));
        var begun = Ok(await Ask(world, drafts => drafts.BeginTranslation(world.Trainer, Path, "fr")));
        Assert.Contains("Swap the relay tray", Ok(await Look(world, begun.Draft)).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_translation_that_is_published_or_of_a_broken_text_or_of_nothing_is_not_begun()
    {
        await using var world = await Create();
        await world.One<Publisher>().Publish([.. Files, new("competencies/relay-trays.es.yaml", "title: Bandejas de relés\n")]);
        Assert.False((await Ask(world, drafts => drafts.BeginTranslation(world.Trainer, "competencies/relay-trays.yaml", "es"))).IsOk);
        Assert.False((await Ask(world, drafts => drafts.BeginTranslation(world.Trainer, "procedures/nothing.yaml", "fr"))).IsOk);
        Assert.False((await Ask(world, drafts => drafts.BeginTranslation(world.Trainer, Path, "../x"))).IsOk);
        Assert.False((await Ask(world, drafts => drafts.BeginTranslation(world.Trainer, Path, "en"))).IsOk);
        var broken = await Begin(world);
        Ok(await Ask(world, drafts => drafts.Save(world.Trainer, broken, 1, "id: [")));
        Assert.False((await Ask(world, drafts => drafts.BeginTranslation(world.Trainer, Path, "fr"))).IsOk);
        Assert.Single(Ok(await Ask(world, drafts => drafts.Desk(world.Trainer))).Drafts);
    }

    [Fact]
    public async Task A_text_from_elsewhere_never_overwrites_a_draft()
    {
        await using var world = await Create();
        var id = await Begin(world);
        Ok(await Ask(world, drafts => drafts.Save(world.Trainer, id, 1, "mine: 1\n")));
        var brought = Ok(await Ask(world, drafts => drafts.Bring(world.Trainer, [new(Path, "packed: 1\n")])));
        Assert.Equal((id, 1), (Assert.Single(brought.Drafts), brought.Beside));
        var view = Ok(await Look(world, id));
        Assert.Equal("mine: 1\n", view.Text);
        Assert.Single(view.Beside);
    }

    [Fact]
    public async Task Files_from_elsewhere_become_a_draft_each_and_a_second_time_they_change_nothing()
    {
        await using var world = await Create();
        ContentFile[] files = [new(Path, "one: 1\n"), new("scenarios/new-one.md", "two\n")];
        var first = Ok(await Ask(world, drafts => drafts.Bring(world.Trainer, files)));
        var again = Ok(await Ask(world, drafts => drafts.Bring(world.Trainer, files)));
        Assert.Equal(first.Drafts, again.Drafts);
        Assert.Equal((0, 0), (first.Beside, again.Beside));
        var desk = Ok(await Ask(world, drafts => drafts.Desk(world.Trainer)));
        Assert.Equal([1, 1], desk.Drafts.Select(draft => draft.Version));
    }

    [Theory]
    [InlineData("../training.db")]
    [InlineData("procedures/x.exe")]
    public async Task A_file_that_stands_where_no_content_stands_brings_nothing_of_the_others_in(string path)
    {
        await using var world = await Create();
        Assert.False((await Ask(world, drafts => drafts.Bring(world.Trainer, [new(Path, "one: 1\n"), new(path, "x")]))).IsOk);
        Assert.Empty(Ok(await Ask(world, drafts => drafts.Desk(world.Trainer))).Drafts);
    }

    [Fact]
    public async Task A_fault_at_the_last_file_brings_nothing_of_the_others_in()
    {
        await using var world = await Create();
        var begun = await Begin(world);
        await world.Db(db => db.Database.ExecuteSqlRawAsync(
            """CREATE TRIGGER "Fault" BEFORE INSERT ON "Drafts" WHEN NEW."Path" = 'scenarios/last.md' BEGIN SELECT RAISE(ABORT, 'a fault'); END"""));
        await Assert.ThrowsAsync<DbUpdateException>(() => Ask(world, drafts => drafts.Bring(
            world.Trainer, [new(Path, "packed: 1\n"), new("scenarios/first.md", "one\n"), new("scenarios/last.md", "two\n")])));
        await world.Restart();
        var desk = Ok(await Ask(world, drafts => drafts.Desk(world.Trainer)));
        Assert.Equal(begun, Assert.Single(desk.Drafts).Id);
        Assert.Empty(Ok(await Look(world, begun)).Beside);
    }

    [Fact]
    public async Task Only_trainers_have_a_desk()
    {
        await using var world = await Create();
        var id = await Begin(world);
        foreach (var actor in new[] { world.Technician, world.Examiner, world.Owner, world.Administrator, world.ForeignExaminer })
        {
            NotAllowed(await Ask(world, drafts => drafts.Desk(actor)));
            NotAllowed(await Ask(world, drafts => drafts.Begin(actor, Path)));
            NotAllowed(await Ask(world, drafts => drafts.BeginTranslation(actor, Path, "fr")));
            NotAllowed(await Ask(world, drafts => drafts.Look(actor, id)));
            NotAllowed(await Ask(world, drafts => drafts.Save(actor, id, 1, "x")));
            NotAllowed(await Ask(world, drafts => drafts.Bring(actor, [new(Path, "x")])));
            NotAllowed(await Ask(world, drafts => drafts.Texts(actor, id)));
            NotAllowed(await Ask(world, drafts => drafts.Text(actor, id, 1)));
            NotAllowed(await Ask(world, drafts => drafts.Settle(actor, id, 1)));
            NotAllowed(await Ask(world, drafts => drafts.PutAway(actor, id)));
            NotAllowed(await world.With<DraftPublishing, Outcome<int, Refusal>>(publishing => publishing.Publish(actor, [new(id, 1)])));
        }
    }

    private static async Task<DraftId> Begin(TestWorld world) => Ok(await Ask(world, drafts => drafts.Begin(world.Trainer, Path)));

    private static Task<Outcome<DraftView, Refusal>> Look(TestWorld world, DraftId id) => Ask(world, drafts => drafts.Look(world.Trainer, id));

    private static Task<T> Ask<T>(TestWorld world, Func<Drafts, Task<T>> ask) => world.With(ask);
}
