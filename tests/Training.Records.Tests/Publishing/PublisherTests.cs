using Microsoft.EntityFrameworkCore;
using Training.Records.Publishing;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Publishing;

public sealed class PublisherTests
{
    private const string Path = "procedures/change-tray.yaml";

    [Fact]
    public async Task Nothing_is_served_before_something_is_published()
    {
        await using var world = await Empty();
        Assert.Equal(0, world.One<Library>().Current.Number);
        Assert.Empty(world.One<Library>().Current.Content.Competencies);
    }

    [Fact]
    public async Task Publishing_the_same_again_makes_no_publication()
    {
        await using var world = await Create();
        Assert.Equal(1, (await world.One<Publisher>().Publish(Files)).Served);
        Assert.Equal(1, await world.Db(db => db.Publications.CountAsync()));
    }

    [Fact]
    public async Task A_change_makes_a_new_publication_and_keeps_each_text_once()
    {
        await using var world = await Create();
        var before = await world.Db(db => db.PublishedTexts.CountAsync());
        var state = await world.One<Publisher>().Publish(FilesWith(Path, "Change the relay tray", "Change a relay tray"));
        Assert.Equal(2, state.Served);
        Assert.False(state.IsHeldBack);
        Assert.Equal("Change a relay tray", world.One<Library>().Current.Content.FindProcedure(ChangeTray)!.Procedure.Title);
        Assert.Equal(before + 1, await world.Db(db => db.PublishedTexts.CountAsync()));
    }

    [Fact]
    public async Task A_file_that_goes_makes_a_new_publication_too()
    {
        await using var world = await Create();
        var state = await world.One<Publisher>().Publish([.. Files.Where(file => !file.Path.Contains("theory", StringComparison.Ordinal))]);
        Assert.Equal(2, state.Served);
        Assert.Null(world.One<Library>().Current.Content.FindCompetency(TrayTheory));
    }

    [Fact]
    public async Task A_broken_folder_keeps_the_last_good_publication_and_tells_the_trainer()
    {
        await using var world = await Create();
        var state = await world.One<Publisher>().Publish(FilesWith(Path, "first: [key-off]", "first: [no-such-step]"));
        Assert.True(state.IsHeldBack);
        Assert.Equal(1, state.Served);
        Assert.Contains(state.Problems, problem => problem.File == Path);
        Assert.Equal(1, world.One<Library>().Current.Number);
        Assert.Equal(state, Ok(await Task.FromResult(world.One<Publisher>().State(world.Trainer))));
        NotAllowed(world.One<Publisher>().State(world.Owner));
    }

    [Fact]
    public async Task A_broken_folder_keeps_the_last_good_publication_after_a_restart()
    {
        await using var world = await Create();
        var broken = FilesWith(Path, "first: [key-off]", "first: [no-such-step]");
        await world.One<Publisher>().Publish(broken);
        await world.Restart();
        Assert.Equal(1, world.One<Library>().Current.Number);
        var state = await world.One<Publisher>().Publish(broken);
        Assert.Equal(1, state.Served);
        Assert.NotNull(world.One<Library>().Current.Content.FindCompetency(RelayTrays));
    }

    [Fact]
    public async Task What_was_published_before_more_was_asked_of_content_is_served_on()
    {
        await using var world = await Create();
        const string lesson = "modules/01-trays/lesson.md";
        var wall = string.Concat(Enumerable.Repeat("Word word. ", 60));
        var tooLong = Files.Select(file => file.Path == lesson ? file with { Text = file.Text + "\n" + wall + "\n" } : file).ToList();
        Assert.NotEqual(Files, tooLong);
        await world.Db(async db =>
        {
            foreach (var file in tooLong.Where(file => file.Path == lesson))
                db.Add(new PublishedText { Hash = file.Hash, Text = file.Text, FirstPublishedAt = default });
            await db.SaveChangesAsync();
            db.Add(new Publication
            {
                Number = 2,
                At = default,
                Files = [.. tooLong.Select(file => new PublishedFile { Path = file.Path, Hash = file.Hash })],
            });
            return await db.SaveChangesAsync();
        });
        await world.Restart();
        Assert.Equal(2, world.One<Library>().Current.Number);
        Assert.NotNull(world.One<Library>().Current.Content.FindCompetency(RelayTrays));
        var state = await world.One<Publisher>().Publish(tooLong);
        Assert.True(state.IsHeldBack);
        Assert.Equal(2, state.Served);
    }

    [Fact]
    public async Task Two_who_publish_at_once_make_one_publication()
    {
        await using var world = await Create();
        var changed = FilesWith(Path, "Change the relay tray", "Change a relay tray");
        await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => world.One<Publisher>().Publish(changed))));
        Assert.Equal(2, await world.Db(db => db.Publications.CountAsync()));
    }

    [Fact]
    public async Task An_old_procedure_is_graded_by_its_own_text()
    {
        await using var world = await Create();
        var old = world.One<Library>().Current.Content.FindProcedure(ChangeTray)!.File.Hash;
        await world.Republish(Path, "at-least: 60 s", "at-least: 120 s");
        await world.Restart();
        var graders = world.One<Graders>();
        var answer = Sequencing.Json.AnswerJson.Parse(Ways.RightOrder).Value;
        Assert.True((await graders.For(old, Crane)).Grade(answer).Value.Accepted);
        var now = world.One<Library>().Current.Content.FindProcedure(ChangeTray)!.File.Hash;
        Assert.False((await graders.For(now, Crane)).Grade(answer).Value.Accepted);
    }
}
