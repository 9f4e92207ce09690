using Training.Content;
using Training.Records.Publishing;
using static Training.Records.Tests.TestWorld;
using Changed = Training.Sequencing.Outcome<System.Collections.Generic.IReadOnlyList<Training.Records.Publishing.RevisedFile>, Training.Sequencing.Refusal>;
using Found = Training.Sequencing.Outcome<System.Collections.Generic.IReadOnlyList<Training.Records.Publishing.Revision>, Training.Sequencing.Refusal>;

namespace Training.Records.Tests.Publishing;

/// <summary>What was published stays, and is known by what was judged by it.</summary>
public sealed class RevisionsTests
{
    private const string Path = "procedures/change-tray.yaml";

    [Fact]
    public async Task A_file_that_was_published_twice_has_two_revisions_the_newest_first()
    {
        await using var world = await Create();
        Assert.Empty(Ok(await world.With<Revisions, Changed>(revisions => revisions.Changed(world.Trainer))));
        world.Clock.Advance(TimeSpan.FromDays(1));
        await world.Republish(Path, "Change the relay tray", "Change a relay tray");
        var changed = Assert.Single(Ok(await world.With<Revisions, Changed>(revisions => revisions.Changed(world.Trainer))));
        Assert.Equal((Path, 2, true), (changed.Path, changed.Revisions, changed.IsServed));
        var revisions = Ok(await Of(world));
        Assert.Equal([2, 1], revisions.Select(revision => revision.Publication));
        Assert.Equal(revisions[0].At, revisions[1].Until);
        Assert.Null(revisions[0].Until);
    }

    [Fact]
    public async Task A_text_that_came_back_is_a_revision_again()
    {
        await using var world = await Create();
        await world.Republish(Path, "Change the relay tray", "Change a relay tray");
        await world.One<Publisher>().Publish(Files);
        var revisions = Ok(await Of(world));
        Assert.Equal([3, 2, 1], revisions.Select(revision => revision.Publication));
        Assert.Equal(revisions[0].Text, revisions[2].Text);
    }

    [Fact]
    public async Task A_file_that_went_is_told_as_no_longer_served()
    {
        await using var world = await Create();
        await world.One<Publisher>().Publish([.. Files.Where(file => !file.Path.Contains("theory", StringComparison.Ordinal))]);
        var gone = Assert.Single(Ok(await world.With<Revisions, Changed>(revisions => revisions.Changed(world.Trainer))));
        Assert.False(gone.IsServed);
        Assert.NotNull(Assert.Single(Ok(await world.With<Revisions, Found>(revisions => revisions.Of(world.Trainer, gone.Path)))).Until);
    }

    [Fact]
    public async Task What_was_judged_by_the_older_text_is_counted_and_what_comes_later_is_not()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        await world.Republish(Path, "Change the relay tray", "Change a relay tray");
        await world.EarnedRecord(world.Colleague);
        var revisions = Ok(await Of(world));
        foreach (var revision in revisions)
        {
            var judged = Ok(await world.With<Revisions, Sequencing.Outcome<JudgedCounts, Sequencing.Refusal>>(ask => ask.JudgedBy(world.Examiner, revision.Text)));
            Assert.Equal((1, 1, 1), (judged.Records, judged.Papers, judged.Runs));
        }
    }

    [Fact]
    public async Task What_was_judged_by_a_competency_is_counted_too()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        var text = Files.Single(file => file.Path == "competencies/relay-trays.yaml").Hash;
        var judged = Ok(await world.With<Revisions, Sequencing.Outcome<JudgedCounts, Sequencing.Refusal>>(ask => ask.JudgedBy(world.Trainer, text)));
        Assert.Equal((1, 1, 2), (judged.Records, judged.Papers, judged.Runs));
    }

    [Fact]
    public async Task Two_revisions_are_held_against_each_other()
    {
        await using var world = await Create();
        await world.Republish(Path, "Change the relay tray", "Change a relay tray");
        var revisions = Ok(await Of(world));
        var compared = Ok(await world.With<Revisions, Sequencing.Outcome<ComparedRevisions, Sequencing.Refusal>>(
            ask => ask.Compare(world.Trainer, Path, revisions[1].Text, revisions[0].Text)));
        Assert.Equal("Change a relay tray", Assert.Single(compared.Comparison.Procedure!.Changes).Words!.After);
    }

    [Fact]
    public async Task Only_trainers_and_examiners_read_them()
    {
        await using var world = await Create();
        NotAllowed(await world.With<Revisions, Found>(revisions => revisions.Of(world.Owner, Path)));
        NotAllowed(await world.With<Revisions, Changed>(revisions => revisions.Changed(world.Technician)));
        NotFound(await world.With<Revisions, Found>(revisions => revisions.Of(world.Trainer, "procedures/no-such.yaml")));
        NotFound(await world.With<Revisions, Sequencing.Outcome<ComparedRevisions, Sequencing.Refusal>>(
            ask => ask.Compare(world.Trainer, Path, ContentHash.Of("never"), ContentHash.Of("published"))));
    }

    private static Task<Found> Of(TestWorld world) => world.With<Revisions, Found>(revisions => revisions.Of(world.Trainer, Path));
}
