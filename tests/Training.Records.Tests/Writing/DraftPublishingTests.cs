using Training.Records.Accounts;
using Training.Records.Publishing;
using Training.Records.Writing;
using Training.Sequencing;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Writing;

public sealed class DraftPublishingTests
{
    private const string Path = "procedures/change-tray.yaml";

    private static string Served(TestWorld world) => world.One<Library>().Current.Content.FindProcedure(ChangeTray)!.Procedure.Title;

    [Fact]
    public async Task The_only_trainer_publishes_alone_and_the_log_says_so()
    {
        await using var world = await Create();
        var (id, version) = await Written(world, "Change the relay tray", "Change a relay tray");
        Assert.Equal(2, Ok(await Publish(world, world.Trainer, id, version)));
        Assert.Equal("Change a relay tray", Served(world));
        var entry = Assert.Single((await Desk(world)).Log);
        Assert.Equal((DeskAct.PublishedAlone, Path, 2), (entry.Act, entry.Path, entry.Publication));
    }

    [Fact]
    public async Task Somebody_other_than_the_writer_approves()
    {
        await using var world = await Create();
        var other = await world.Add("Noor Haddad", "noor", null, Roles.Trainer);
        var (id, version) = await Written(world, "Change the relay tray", "Change a relay tray");
        Assert.False((await Publish(world, world.Trainer, id, version)).IsOk);
        Assert.False((await Publish(world, other, id, version)).IsOk);
        Ok(await Ask(world, publishing => publishing.Offer(world.Trainer, id, version)));
        Assert.False((await Publish(world, world.Trainer, id, version)).IsOk);
        Assert.Equal("Change the relay tray", Served(world));
        Ok(await Publish(world, other, id, version));
        Assert.Equal("Change a relay tray", Served(world));
        var entry = Assert.Single((await Desk(world)).Log);
        Assert.Equal((DeskAct.Published, "Tomasz Zielinski", "Noor Haddad"), (entry.Act, entry.WrittenBy, entry.ApprovedBy));
    }

    [Fact]
    public async Task Whoever_changes_an_offered_draft_does_not_approve_it()
    {
        await using var world = await Create();
        var other = await world.Add("Noor Haddad", "noor", null, Roles.Trainer);
        var (id, version) = await Written(world, "Change the relay tray", "Change a relay tray");
        Ok(await Ask(world, publishing => publishing.Offer(world.Trainer, id, version)));
        var saved = Ok(await world.With<Drafts, Outcome<DraftSaved, Refusal>>(drafts => drafts.Save(other, id, version, FilesWith(Path, "Change the relay tray", "Change one").Single(file => file.Path == Path).Text)));
        Assert.False((await Publish(world, other, id, saved.Version)).IsOk);
        Ok(await Ask(world, publishing => publishing.Offer(other, id, saved.Version)));
        Assert.False((await Publish(world, other, id, saved.Version)).IsOk);
        Ok(await Publish(world, world.Trainer, id, saved.Version));
        Assert.Equal("Change one", Served(world));
    }

    [Fact]
    public async Task A_draft_with_an_error_is_not_published()
    {
        await using var world = await Create();
        var (id, version) = await Written(world, "first: [key-off]", "first: [no-such-step]");
        Assert.False((await Publish(world, world.Trainer, id, version)).IsOk);
        Assert.False((await Ask(world, publishing => publishing.Offer(world.Trainer, id, version))).IsOk);
        Assert.Equal(1, world.One<Library>().Current.Number);
        Assert.Empty((await Desk(world)).Log);
    }

    [Fact]
    public async Task What_was_published_from_the_desk_is_served_over_the_folder_after_a_restart()
    {
        await using var world = await Create();
        var (id, version) = await Written(world, "Change the relay tray", "Change a relay tray");
        Ok(await Publish(world, world.Trainer, id, version));
        await world.Restart();
        var state = await world.One<Publisher>().Publish(Files);
        Assert.Equal("Change a relay tray", Served(world));
        Assert.Equal(2, state.Served);
        Assert.Empty(state.Changes);
    }

    [Fact]
    public async Task A_later_change_of_the_folders_file_is_told_and_overwrites_nothing()
    {
        await using var world = await Create();
        var (id, version) = await Written(world, "Change the relay tray", "Change a relay tray");
        Ok(await Publish(world, world.Trainer, id, version));
        var change = Assert.Single((await world.One<Publisher>().Publish(FilesWith(Path, "Change the relay tray", "Swap the tray"))).Changes);
        Assert.Equal("Change a relay tray", Served(world));
        Assert.Contains("Swap the tray", change.Folder, StringComparison.Ordinal);

        Assert.Empty(Ok(await Ask(world, publishing => publishing.KeepDesk(world.Trainer, Path))).Changes);
        Assert.Equal("Change a relay tray", Served(world));
        Assert.Empty((await world.One<Publisher>().Publish(FilesWith(Path, "Change the relay tray", "Swap the tray"))).Changes);
    }

    [Fact]
    public async Task The_folders_file_can_be_taken_in_place_of_the_desks()
    {
        await using var world = await Create();
        await world.One<Publisher>().Publish(Files);
        var (id, version) = await Written(world, "Change the relay tray", "Change a relay tray");
        Ok(await Publish(world, world.Trainer, id, version));
        await world.One<Publisher>().Publish(FilesWith(Path, "Change the relay tray", "Swap the tray"));
        Ok(await Ask(world, publishing => publishing.TakeFolder(world.Trainer, Path)));
        Assert.Equal("Swap the tray", Served(world));
        Assert.Empty((await Desk(world)).Laid);
        Assert.Equal(DeskAct.TookFolder, (await Desk(world)).Log[0].Act);
    }

    [Fact]
    public async Task A_folder_that_says_what_the_desk_said_is_no_change()
    {
        await using var world = await Create();
        var (id, version) = await Written(world, "Change the relay tray", "Change a relay tray");
        Ok(await Publish(world, world.Trainer, id, version));
        Assert.Empty((await world.One<Publisher>().Publish(FilesWith(Path, "Change the relay tray", "Change a relay tray"))).Changes);
    }

    [Fact]
    public async Task A_broken_folder_is_mended_from_the_desk()
    {
        await using var world = await Create();
        const string other = "procedures/stow-tray.yaml";
        var broken = Files.Select(file => file.Path == other ? file with { Text = file.Text + "\nnonsense: 1\n" } : file).ToList();
        Assert.True((await world.One<Publisher>().Publish(broken)).IsHeldBack);
        var (id, version) = await Written(world, "Change the relay tray", "Change a relay tray");
        Ok(await Publish(world, world.Trainer, id, version));
        Assert.Equal("Change a relay tray", Served(world));

        var mending = Ok(await world.With<Drafts, Outcome<DraftId, Refusal>>(drafts => drafts.Begin(world.Trainer, other)));
        Ok(await Publish(world, world.Trainer, mending, 1));
        Assert.False(Ok(await Task.FromResult(world.One<Publisher>().State(world.Trainer))).IsHeldBack);
    }

    [Fact]
    public async Task A_draft_is_not_published_over_what_was_published_after_it_began()
    {
        await using var world = await Create();
        var (id, version) = await Written(world, "Change the relay tray", "Change a relay tray");
        await world.One<Publisher>().Publish(FilesWith(Path, "Change the relay tray", "Swap the tray"));
        Assert.False((await Publish(world, world.Trainer, id, version)).IsOk);
        Assert.True(Ok(await world.With<Drafts, Outcome<DraftView, Refusal>>(drafts => drafts.Look(world.Trainer, id))).ServedMoved);
        Ok(await Ask(world, publishing => publishing.GoOn(world.Trainer, id)));
        Ok(await Publish(world, world.Trainer, id, version));
        Assert.Equal("Change a relay tray", Served(world));
    }

    [Fact]
    public async Task A_version_that_nobody_looked_at_is_not_published()
    {
        await using var world = await Create();
        var (id, version) = await Written(world, "Change the relay tray", "Change a relay tray");
        Assert.False((await Publish(world, world.Trainer, id, version - 1)).IsOk);
    }

    [Fact]
    public async Task Drafts_that_need_each_other_are_published_together()
    {
        await using var world = await Create();
        const string lesson = "modules/01-trays/lesson.md";
        var procedure = Ok(await world.With<Drafts, Outcome<DraftId, Refusal>>(drafts => drafts.BeginFile(world.Trainer, NewFileSort.Procedure, "fit-lift", "Fit a lift")));
        Assert.False((await Publish(world, world.Trainer, procedure, 1)).IsOk);
        var teaching = Ok(await world.With<Drafts, Outcome<DraftId, Refusal>>(drafts => drafts.Begin(world.Trainer, lesson)));
        var text = Files.Single(file => file.Path == lesson).Text.Replace("procedures: [", "procedures: [fit-lift, ", StringComparison.Ordinal);
        Assert.Contains("[fit-lift, ", text, StringComparison.Ordinal);
        Ok(await world.With<Drafts, Outcome<DraftSaved, Refusal>>(drafts => drafts.Save(world.Trainer, teaching, 1, text)));
        Assert.False((await Publish(world, world.Trainer, teaching, 2)).IsOk);
        Assert.Equal(1, world.One<Library>().Current.Number);
        Ok(await Ask(world, publishing => publishing.Publish(world.Trainer, [new(procedure, 1), new(teaching, 2)])));
        Assert.NotNull(world.One<Library>().Current.Content.FindProcedure(new("fit-lift")));
        Assert.Equal(2, (await Desk(world)).Log.Count);
    }

    private static async Task<(DraftId Id, int Version)> Written(TestWorld world, string from, string to)
    {
        var id = Ok(await world.With<Drafts, Outcome<DraftId, Refusal>>(drafts => drafts.Begin(world.Trainer, Path)));
        var text = FilesWith(Path, from, to).Single(file => file.Path == Path).Text;
        return (id, Ok(await world.With<Drafts, Outcome<DraftSaved, Refusal>>(drafts => drafts.Save(world.Trainer, id, 1, text))).Version);
    }

    private static Task<Outcome<int, Refusal>> Publish(TestWorld world, Actor actor, DraftId id, int version) =>
        Ask(world, publishing => publishing.Publish(actor, [new(id, version)]));

    private static async Task<DeskView> Desk(TestWorld world) =>
        Ok(await world.With<Drafts, Outcome<DeskView, Refusal>>(drafts => drafts.Desk(world.Trainer)));

    private static Task<T> Ask<T>(TestWorld world, Func<DraftPublishing, Task<T>> ask) => world.With(ask);
}
