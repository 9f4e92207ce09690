using Microsoft.EntityFrameworkCore;
using Training.Records.Observing;
using Training.Records.Publishing;
using Training.Sequencing.Json;
using Training.Sequencing.Verdicts;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Observing;

public sealed class RunsTests
{
    [Fact]
    public async Task The_paper_comes_before_the_run()
    {
        await using var world = await Create();
        const string Sentence = "Amara Okafor has no passed paper for this that still waits for a run; the paper comes first.";
        Refused(await Start(world, world.Examiner), Sentence);
        await world.FailedPaper(world.Technician);
        Refused(await Start(world, world.Examiner), Sentence);
    }

    [Fact]
    public async Task A_run_is_started_by_the_last_day_after_the_paper_and_not_later()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician);
        // Passed on 2 March, within P30D: until 1 April, when London is an hour ahead of UTC.
        Assert.Equal(new(2026, 4, 1), Ok(await world.Runs(runs => runs.ToDo(world.Examiner)))[0].Until);
        world.Clock.Set(new(2026, 4, 1, 23, 0, 0, TimeSpan.Zero));
        Assert.Empty(Ok(await world.Runs(runs => runs.ToDo(world.Examiner))));
        Assert.False((await Start(world, world.Examiner)).IsOk);
        world.Clock.Set(new(2026, 4, 1, 22, 59, 0, TimeSpan.Zero));
        Ok(await Start(world, world.Examiner));
    }

    [Fact]
    public async Task Nobody_observes_themself()
    {
        await using var world = await Create();
        await world.PassedPaper(world.ShopExaminer);
        Refused(
            await world.Runs(runs => runs.Start(world.ShopExaminer, Ways.Run(world.ShopExaminer, ChangeTray))), "Nobody examines themself.");
        Assert.DoesNotContain(Ok(await world.Runs(runs => runs.ToDo(world.ShopExaminer))), run => run.Technician == world.ShopExaminer.Person);
    }

    [Fact]
    public async Task The_database_itself_lets_nobody_observe_themself()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician);
        var run = await world.StartRun(world.Technician, ChangeTray);
        await Assert.ThrowsAsync<Microsoft.Data.Sqlite.SqliteException>(() => world.Db(db => db.Database.ExecuteSqlAsync(
            $"UPDATE Runs SET ExaminerId = TechnicianId WHERE Id = {run.Value}")));
    }

    [Fact]
    public async Task A_run_that_makes_no_sense_is_refused_with_the_reason()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician);
        var right = Ways.Run(world.Technician, ChangeTray);
        Refused(await Start(right with { Chassis = " " }), "Say in up to 80 characters which vehicle it is.");
        Refused(await Start(right with { Variant = null }), "Choose one of the kinds of vehicle that this job tells apart: crane, tipper.");
        Refused(await Start(right with { Variant = new("bus") }), "Choose one of the kinds of vehicle that this job tells apart: crane, tipper.");
        NotFound(await Start(right with { Procedure = new("no-such-job") }));
        NotFound(await Start(right with { Technician = world.Owner.Person }));
        Refused(
            await Start(right with { Competency = TrayTheory }),
            "Amara Okafor has no passed paper for this that still waits for a run; the paper comes first.");
        NotAllowed(await world.Runs(runs => runs.Start(world.Owner, right)));

        Task<Sequencing.Outcome<RunId, Sequencing.Refusal>> Start(NewRun run) => world.Runs(runs => runs.Start(world.Examiner, run));
    }

    [Fact]
    public async Task One_run_at_a_time_and_no_second_one_before_the_first_is_signed()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician);
        var both = await Task.WhenAll(
            Task.Run(() => Start(world, world.Examiner)), Task.Run(() => Start(world, world.OtherExaminer)));
        Refused(
            Assert.Single(both, outcome => !outcome.IsOk), "Amara Okafor has a run under way; end or abandon that one first.");
        var run = Ok(Assert.Single(both, outcome => outcome.IsOk));
        var examiner = both[0].IsOk ? world.Examiner : world.OtherExaminer;
        Ok(await world.Runs(runs => runs.End(examiner, run)));
        Refused(
            await Start(world, world.Examiner),
            "A run of this job by Amara Okafor waits for the signature; sign or abandon that one first.");
        Assert.Equal(run, Ok(await world.Runs(runs => runs.ToDo(examiner))).Single(todo => todo.Procedure == ChangeTray).OpenRun);
        Ok(await world.Runs(runs => runs.Abandon(examiner, run, "The vehicle was needed.")));
        Ok(await Start(world, world.Examiner));
    }

    [Fact]
    public async Task A_job_that_was_passed_is_not_observed_again_for_the_same_paper()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician);
        Assert.True((await world.SignedRun(world.Technician, ChangeTray)).Passed);
        Refused(await Start(world, world.Examiner), "Amara Okafor has passed a run of this job already.");
    }

    [Fact]
    public async Task A_tap_that_is_sent_again_counts_once()
    {
        await using var world = await Create();
        var run = await Started(world);
        world.Clock.Advance(TimeSpan.FromSeconds(10));
        var tap = new NewTap(Guid.NewGuid(), new("key-off"), 9.5m);
        var taps = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() =>
            world.Runs(runs => runs.Tap(world.Examiner, run, tap)))));
        Assert.Single(taps.Select(Ok).Distinct());
        Assert.Single(Ok(await world.Runs(runs => runs.Look(world.Examiner, run))).Taps);
    }

    [Fact]
    public async Task A_tap_stands_neither_before_the_one_before_it_nor_ahead_of_the_clock()
    {
        await using var world = await Create();
        var run = await Started(world);
        world.Clock.Advance(TimeSpan.FromSeconds(60));
        Ok(await Tap(20));
        Refused(await Tap(19.999m), "A step cannot be done before the one that was tapped before it.");
        Ok(await Tap(20));
        Refused(await Tap(65.001m), "The tap's time lies ahead of the server's clock; check the device's clock.");
        Ok(await Tap(65));
        Refused(await Tap(-1), "A step cannot be done before the one that was tapped before it.");

        Task<Sequencing.Outcome<TapView, Sequencing.Refusal>> Tap(decimal at) =>
            world.Runs(runs => runs.Tap(world.Examiner, run, new(Guid.NewGuid(), new("key-off"), at)));
    }

    [Fact]
    public async Task Only_what_can_be_done_on_this_kind_of_vehicle_is_tapped()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician);
        var run = Ok(await world.Runs(runs => runs.Start(
            world.Examiner, Ways.Run(world.Technician, ChangeTray) with { Variant = new("tipper") })));
        Refused(
            await world.Runs(runs => runs.Tap(world.Examiner, run, new(Guid.NewGuid(), new("stow-boom"), 0))),
            "“stow-boom” is nothing that can be done in this job on this kind of vehicle.");
        Refused(
            await world.Runs(runs => runs.Tap(world.Examiner, run, new(Guid.Empty, new("hose"), 0))),
            "A tap needs an id of its own; load the page again.");
        Ok(await world.Runs(runs => runs.Tap(world.Examiner, run, new(Guid.NewGuid(), new("hose"), 0))));
    }

    [Fact]
    public async Task Taking_back_marks_the_last_tap_and_deletes_nothing()
    {
        await using var world = await Create();
        var run = await Started(world);
        var first = await world.Tap(run, "key-off", 10);
        var second = await world.Tap(run, "hose", 20);
        Refused(
            await world.Runs(runs => runs.Undo(world.Examiner, run, first.Id)),
            "Only the last tap can be taken back; take back the later ones first.");
        Assert.True(Ok(await world.Runs(runs => runs.Undo(world.Examiner, run, second.Id))).IsUndone);
        Ok(await world.Runs(runs => runs.Undo(world.Examiner, run, second.Id)));
        // A tap that stands before the one that was taken back, yet after the last that counts.
        await world.Tap(run, "rest", 15);
        var view = Ok(await world.Runs(runs => runs.Look(world.Examiner, run)));
        Assert.Equal([("key-off", false), ("hose", true), ("rest", false)], view.Taps.Select(tap => (tap.Step.Value, tap.IsUndone)));
        NotFound(await world.Runs(runs => runs.Undo(world.Examiner, run, Guid.NewGuid())));
    }

    [Fact]
    public async Task Before_a_run_is_ended_its_examiner_is_told_what_is_not_tapped_and_a_choice_once_with_its_ways()
    {
        await using var world = await Create();
        var run = await Started(world);
        Ok(await world.Runs(runs => runs.Tap(world.Examiner, run, new(Guid.NewGuid(), new("key-off"), 0))));
        var steps = (await world.Runs(runs => runs.Look(world.Examiner, run))).Value.Offered.ToDictionary(offer => offer.Id.Value, offer => offer.Do);
        var lacking = Ok(await world.Runs(runs => runs.NotTapped(world.Examiner, run)));
        Assert.Contains(steps["rest"], lacking);
        Assert.Contains($"{steps["hook"]} / {steps["bench"]}", lacking);
        Assert.DoesNotContain(steps["key-off"], lacking);
        Ok(await world.Runs(runs => runs.End(world.Examiner, run)));
        Assert.False((await world.Runs(runs => runs.NotTapped(world.Examiner, run))).IsOk);
    }

    [Fact]
    public async Task A_run_is_its_examiners_alone()
    {
        await using var world = await Create();
        var run = await Started(world);
        foreach (var actor in new[] { world.OtherExaminer, world.Technician, world.Owner, world.Administrator })
        {
            NotFound(await world.Runs(runs => runs.Tap(actor, run, new(Guid.NewGuid(), new("hose"), 0))));
            NotFound(await world.Runs(runs => runs.Undo(actor, run, Guid.NewGuid())));
            NotFound(await world.Runs(runs => runs.NotTapped(actor, run)));
            NotFound(await world.Runs(runs => runs.End(actor, run)));
            NotFound(await world.Runs(runs => runs.Sign(actor, run, "")));
            NotFound(await world.Runs(runs => runs.Abandon(actor, run, "No.")));
        }
    }

    [Fact]
    public async Task An_ended_run_takes_no_tap_and_shows_its_examiner_the_verdict()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician);
        var run = await world.EndedRun(world.Technician, ChangeTray);
        const string Sentence = "The run has ended; no step is added or taken back any more.";
        Refused(await world.Runs(runs => runs.Tap(world.Examiner, run, new(Guid.NewGuid(), new("hose"), 140))), Sentence);
        var view = Ok(await world.Runs(runs => runs.Look(world.Examiner, run)));
        Refused(await world.Runs(runs => runs.Undo(world.Examiner, run, view.Taps[^1].Id)), Sentence);
        Assert.True(view.Judged!.Verdict.Accepted);
        Assert.Equal(RunState.Ended, view.Run.State);
        Assert.Null(view.Run.Passed);
        NotFound(await world.Runs(runs => runs.Look(world.Technician, run)));
        Ok(await world.Runs(runs => runs.Sign(world.Examiner, run, "Seen.")));
        Assert.True(Ok(await world.Runs(runs => runs.Look(world.Technician, run))).Run.Passed);
    }

    [Fact]
    public async Task Real_times_are_judged()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician);
        // The key is off at 10 s; lifting takes 10 s and ends at 79.9 s, so it began 59.9 s after the key.
        var run = await world.EndedRun(world.Technician, ChangeTray, null,
            ("key-off", 10), ("rest", 69), ("lift-tray", 79.9m), ("hook", 100), ("stow-boom", 120));
        var verdict = Ok(await world.Runs(runs => runs.Look(world.Examiner, run))).Judged!.Verdict;
        Assert.Equal(FindingKind.TooSoon, Assert.Single(verdict.Findings).Kind);
        var signed = Ok(await world.Runs(runs => runs.Sign(world.Examiner, run, "")));
        Assert.False(signed.Passed);
        Assert.Null(signed.Record);
        Ok(await Start(world, world.Examiner));
    }

    [Fact]
    public async Task A_run_is_ended_before_it_is_signed_and_neither_signed_nor_abandoned_after_the_other()
    {
        await using var world = await Create();
        var run = await Started(world);
        Refused(await world.Runs(runs => runs.Sign(world.Examiner, run, "")), "End the run before signing it.");
        Refused(await world.Runs(runs => runs.Abandon(world.Examiner, run, " ")), "Say in up to 500 characters why the run is abandoned.");
        var abandoned = Ok(await world.Runs(runs => runs.Abandon(world.Examiner, run, "Rain.")));
        Assert.Equal((RunState.Abandoned, "Rain."), (abandoned.Run.State, abandoned.Reason));
        Assert.Equal("Rain.", Ok(await world.Runs(runs => runs.Abandon(world.Examiner, run, "Snow."))).Reason);
        Refused(await world.Runs(runs => runs.Sign(world.Examiner, run, "")), "The run was abandoned; it cannot be signed.");
        var signed = (await world.SignedRun(world.Technician, ChangeTray)).Run;
        Refused(await world.Runs(runs => runs.Abandon(world.Examiner, signed, "Rain.")), "The run is signed; it cannot be abandoned.");
        Refused(await world.Runs(runs => runs.Sign(world.Examiner, run, new string('x', 2001))), "A note has at most 1000 characters.");
    }

    [Fact]
    public async Task A_run_goes_on_by_the_procedure_that_it_was_started_by()
    {
        await using var world = await Create();
        var run = await Started(world);
        await world.Republish("procedures/change-tray.yaml", "revision: 1", "revision: 2");
        var view = Ok(await world.Runs(runs => runs.Look(world.Examiner, run)));
        Assert.Equal(1, view.Revision);
        Assert.NotEqual(world.One<Library>().Current.Content.FindProcedure(ChangeTray)!.File.Hash, view.ProcedureHash);
    }

    [Fact]
    public async Task A_run_graded_again_gives_the_verdict_that_was_kept()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician);
        var run = (await world.SignedRun(world.Technician, ChangeTray)).Run;
        await world.Republish("procedures/change-tray.yaml", "at-least: 60 s", "at-least: 61 s");
        await world.Restart();
        var kept = await world.Db(db => db.Runs.Where(known => known.Id == run).Select(known => known.VerdictJson).SingleAsync());
        Assert.Equal(kept, VerdictJson.Write(Ok(await world.Runs(runs => runs.Look(world.Examiner, run))).Judged!.Verdict));
    }

    private static Task<Sequencing.Outcome<RunId, Sequencing.Refusal>> Start(TestWorld world, Records.Accounts.Actor examiner) =>
        world.Runs(runs => runs.Start(examiner, Ways.Run(world.Technician, ChangeTray)));

    private static async Task<RunId> Started(TestWorld world)
    {
        await world.PassedPaper(world.Technician);
        return await world.StartRun(world.Technician, ChangeTray);
    }
}
