using Microsoft.EntityFrameworkCore;
using Training.Records.Accounts;
using Training.Records.Observing;
using Training.Records.Results;
using Training.Sequencing;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Observing;

/// <summary>A second examiner observes beside the first.</summary>
public sealed class BesideRunsTests
{
    [Fact]
    public async Task What_is_tapped_beside_never_changes_the_run_its_verdict_or_a_record()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician);
        var run = await world.StartRun(world.Technician, StowTray);
        Ok(await world.With<BesideRuns, Outcome<RunId, Refusal>>(besides => besides.Begin(world.OtherExaminer, run)));
        await world.Beside(run, "box");
        foreach (var (step, at) in new[] { ("wipe", 20m), ("box", 40m), ("label", 60m) }) await world.Tap(run, step, at);
        Ok(await world.With<BesideRuns, Outcome<RunId, Refusal>>(besides => besides.End(world.OtherExaminer, run)));
        Ok(await world.Runs(runs => runs.End(world.Examiner, run)));
        Assert.True(Ok(await world.Runs(runs => runs.Sign(world.Examiner, run, ""))).Passed);
        Assert.Equal(["wipe", "box", "label"], Ok(await world.Runs(runs => runs.Look(world.Examiner, run))).Taps.Select(tap => tap.Step.Value));
        var beside = Ok(await world.With<BesideRuns, Outcome<BesideView, Refusal>>(besides => besides.Look(world.OtherExaminer, run)));
        Assert.False(beside.Judged!.Verdict.Accepted);
    }

    [Fact]
    public async Task Nobody_observes_beside_themselves_or_their_own_work_or_another_shops()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician);
        await world.PassedPaper(world.ShopExaminer);
        var run = await world.StartRun(world.Technician, StowTray);
        var own = await world.StartRun(world.ShopExaminer, StowTray);
        Refused(await Begin(world, world.Examiner, run), "You observe this run already; beside you stands somebody else.");
        NotFound(await Begin(world, world.ShopExaminer, own));
        NotFound(await Begin(world, world.ForeignExaminer, run));
        NotAllowed(await Begin(world, world.Trainer, run));
        Ok(await Begin(world, world.ShopExaminer, run));
        NotFound(await world.With<BesideRuns, Outcome<BesideView, Refusal>>(besides => besides.Look(world.OtherExaminer, run)));
    }

    [Fact]
    public async Task A_tap_that_is_sent_twice_counts_once_and_one_that_is_taken_back_is_marked()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician);
        var run = await world.StartRun(world.Technician, StowTray);
        Ok(await Begin(world, world.OtherExaminer, run));
        var tap = new NewTap(Guid.NewGuid(), new("wipe"), 1);
        for (var times = 0; times < 2; times++) Ok(await world.With<BesideRuns, Outcome<StepId, Refusal>>(besides => besides.Tap(world.OtherExaminer, run, tap)));
        Ok(await world.With<BesideRuns, Outcome<StepId, Refusal>>(besides => besides.Undo(world.OtherExaminer, run, tap.Id)));
        var view = Ok(await world.With<BesideRuns, Outcome<BesideView, Refusal>>(besides => besides.Look(world.OtherExaminer, run)));
        Assert.True(Assert.Single(view.Taps).IsUndone);
        Assert.Equal(0, await world.Db(db => db.Set<Tap>().CountAsync()));
    }

    [Fact]
    public async Task Two_examiners_of_five_technicians_are_compared_judgement_by_judgement()
    {
        await using var world = await Create();
        var people = new List<Actor>();
        foreach (var person in await Technicians(world, 5))
        {
            await world.PassedPaper(person);
            await world.SeenByTwo(person, endsFirst: people.Count % 2 == 0);
            people.Add(person);
            var looked = Ok(await world.With<ExaminerAgreement, Outcome<AgreementView, Refusal>>(agreement => agreement.Look(world.Trainer)));
            Assert.Equal((people.Count, people.Count < 5), (looked.Runs, looked.Agreement is null));
        }

        var view = Ok(await world.With<ExaminerAgreement, Outcome<AgreementView, Refusal>>(agreement => agreement.Look(world.Trainer)));
        Assert.Equal(5, view.Runs);
        Assert.True(view.Agreement!.Observed is { Part: > 0 } observed && observed.Part < observed.Whole);
        Assert.All(view.Disputed, disputed => Assert.Equal(5, disputed.Times));
        Assert.Contains(view.Disputed, disputed => disputed.What == new Chance(ChanceKind.LeftOut, "label"));
        NotAllowed(await world.With<ExaminerAgreement, Outcome<AgreementView, Refusal>>(agreement => agreement.Look(world.Owner)));
    }

    private static Task<Outcome<RunId, Refusal>> Begin(TestWorld world, Actor actor, RunId run) =>
        world.With<BesideRuns, Outcome<RunId, Refusal>>(besides => besides.Begin(actor, run));

    private static async Task<List<Actor>> Technicians(TestWorld world, int count)
    {
        var people = new List<Actor>();
        for (var number = 0; number < count; number++) people.Add(await world.Add($"Hand {(char)('A' + number)}", $"hand-{number}", world.Quillmoor, Roles.Technician));
        return people;
    }
}

internal static class Besides
{
    /// <summary>A signed run of which the second examiner did not see the last step, and ended before or after the signing.</summary>
    public static async Task SeenByTwo(this TestWorld world, Actor person, bool endsFirst)
    {
        var run = await world.StartRun(person, StowTray);
        Ok(await world.With<BesideRuns, Outcome<RunId, Refusal>>(besides => besides.Begin(world.OtherExaminer, run)));
        foreach (var (step, at) in new[] { ("wipe", 20m), ("box", 40m), ("label", 60m) }) await world.Tap(run, step, at);
        await world.Beside(run, "wipe", "box");
        if (endsFirst) await EndBeside(world, run);
        Ok(await world.Runs(runs => runs.End(world.Examiner, run)));
        Ok(await world.Runs(runs => runs.Sign(world.Examiner, run, "")));
        // Ending again changes nothing.
        await EndBeside(world, run);
        await EndBeside(world, run);
    }

    private static async Task EndBeside(TestWorld world, RunId run) =>
        Ok(await world.With<BesideRuns, Outcome<RunId, Refusal>>(besides => besides.End(world.OtherExaminer, run)));

    /// <summary>Taps of the second examiner, each at the moment that the clock shows.</summary>
    public static async Task Beside(this TestWorld world, RunId run, params string[] steps)
    {
        foreach (var step in steps)
        {
            var at = Ok(await world.With<BesideRuns, Outcome<BesideView, Refusal>>(besides => besides.Look(world.OtherExaminer, run))).ElapsedSeconds;
            Ok(await world.With<BesideRuns, Outcome<StepId, Refusal>>(besides => besides.Tap(world.OtherExaminer, run, new(Guid.NewGuid(), new(step), at))));
        }
    }
}
