using Training.Records.Accounts;
using Training.Records.Overviews;
using Training.Sequencing;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Overviews;

public sealed class RunsAheadTests
{
    [Fact]
    public async Task An_examiner_is_told_what_waits_at_vehicles()
    {
        await using var world = await Create();
        Assert.True(Ok(await Ahead(world)).IsNothing);
        await world.PassedPaper(world.Technician);
        Assert.Equal(new(0, 0, 1), Ok(await Ahead(world)));
        var run = await world.StartRun(world.Technician, StowTray);
        // The other job of the same paper still waits.
        Assert.Equal(new(1, 0, 1), Ok(await Ahead(world)));
        Ok(await world.Runs(runs => runs.End(world.Examiner, run)));
        Assert.Equal(new(0, 1, 1), Ok(await Ahead(world)));
        Ok(await world.Runs(runs => runs.Abandon(world.Examiner, run, "Rain.")));
        Assert.Equal(new(0, 0, 1), Ok(await Ahead(world)));
    }

    [Fact]
    public async Task An_administrator_observes_nobody_and_others_are_told_nothing()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician);
        await world.StartRun(world.Technician, StowTray);
        Assert.Equal(new(1, 0, 0), Ok(await Ahead(world, world.Administrator)));
        foreach (var actor in new[] { world.Owner, world.Technician, world.Trainer })
            NotAllowed(await Ahead(world, actor));
    }

    private static Task<Outcome<RunCounts, Refusal>> Ahead(TestWorld world, Actor? actor = null) =>
        world.With<RunsAhead, Outcome<RunCounts, Refusal>>(ahead => ahead.Of(actor ?? world.Examiner));
}
