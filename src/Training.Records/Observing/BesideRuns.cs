using Microsoft.EntityFrameworkCore;
using Training.Content;
using Training.Records.Accounts;
using Training.Records.Asking;
using Training.Records.Publishing;
using Training.Records.Results;
using Training.Records.Storage;
using Training.Sequencing;
using Training.Sequencing.Procedures;

namespace Training.Records.Observing;

/// <summary>
/// Observing beside: a second examiner watches a run that is under way and taps on their own. The run's own examiner does
/// not see it, and it changes neither the run nor a record; it is compared with it afterwards.
/// </summary>
public sealed class BesideRuns
{
    private readonly TrainingDbContext db;
    private readonly Archive archive;
    private readonly RunLines lines;
    private readonly RunJudging judging;
    private readonly ExaminerPairs pairs;
    private readonly TimeProvider clock;

    internal BesideRuns(TrainingDbContext db, Archive archive, RunLines lines, RunJudging judging, ExaminerPairs pairs, TimeProvider clock) =>
        (this.db, this.archive, this.lines, this.judging, this.pairs, this.clock) = (db, archive, lines, judging, pairs, clock);

    /// <summary>Begins to observe beside. Beginning again changes nothing.</summary>
    /// <param name="actor">An examiner within reach, neither the run's own nor the technician.</param>
    /// <param name="run">A run that is under way.</param>
    public async Task<Outcome<RunId, Refusal>> Begin(Actor actor, RunId run)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Examiner)) return Refused.NotAllowed;
        await using var change = await db.BeginChange();
        var found = await db.Runs.AsNoTracking().SingleOrDefaultAsync(known => known.Id == run);
        if (found is null || !actor.Reaches(found.ShopId) || found.TechnicianId == actor.Person) return Refused.NotFound;
        if (found.ExaminerId == actor.Person) return new Refusal("You observe this run already; beside you stands somebody else.");
        if (await db.BesideRuns.AnyAsync(known => known.RunId == run && known.ExaminerId == actor.Person)) return run;
        if (found.State != RunState.UnderWay) return new Refusal("The run is not under way any more.");
        db.Add(new BesideRun { RunId = run, ExaminerId = actor.Person, BegunAt = clock.Instant() });
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return run;
    }

    /// <summary>What the actor tapped beside a run; with the verdict by these taps once it has ended.</summary>
    /// <param name="actor">The second examiner.</param>
    /// <param name="run">The run.</param>
    /// <param name="language">The language of the texts.</param>
    public async Task<Outcome<BesideView, Refusal>> Look(Actor actor, RunId run, string language = ContentLibrary.DefaultLanguage)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return await Own(actor, run) is { } beside ? await View(beside, language) : Refused.NotFound;
    }

    /// <summary>Notes that a step was just done. A tap that was sent before, by its id, changes nothing.</summary>
    /// <param name="actor">The second examiner.</param>
    /// <param name="run">The run.</param>
    /// <param name="tap">What was tapped.</param>
    public async Task<Outcome<StepId, Refusal>> Tap(Actor actor, RunId run, NewTap tap)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(tap);
        await using var change = await db.BeginChange();
        if (await Own(actor, run) is not { } beside) return Refused.NotFound;
        if (beside.Taps.Any(known => known.Id == tap.Id)) return tap.Step;
        if (beside.EndedAt is not null) return Tapping.HasEnded;
        var found = await db.Runs.AsNoTracking().SingleAsync(known => known.Id == run);
        var procedure = await archive.Procedure(found.ProcedureHash);
        if (Tapping.WhyNot(tap, beside.LiveTaps.LastOrDefault(), clock.Instant() - found.StartedAt, procedure, found.Variant) is { } wrong) return wrong;
        beside.Taps.Add(new() { Number = beside.Taps.Count + 1, Id = tap.Id, Step = tap.Step, Seconds = decimal.Round(tap.Seconds, 3) });
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return tap.Step;
    }

    /// <summary>Takes the last tap that stands back; it is marked, not deleted.</summary>
    /// <param name="actor">The second examiner.</param>
    /// <param name="run">The run.</param>
    /// <param name="tap">The tap.</param>
    public async Task<Outcome<StepId, Refusal>> Undo(Actor actor, RunId run, Guid tap)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var change = await db.BeginChange();
        if ((await Own(actor, run)) is not { } beside || beside.Taps.SingleOrDefault(known => known.Id == tap) is not { } noted) return Refused.NotFound;
        if (noted.UndoneAt is not null) return noted.Step;
        if (beside.EndedAt is not null) return Tapping.HasEnded;
        if (Tapping.WhyNotBack(noted, beside.LiveTaps.Last()) is { } wrong) return wrong;
        noted.UndoneAt = clock.Instant();
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return noted.Step;
    }

    /// <summary>Ends observing beside: from now on the second examiner sees the verdict by their own taps. Again changes nothing.</summary>
    /// <param name="actor">The second examiner.</param>
    /// <param name="run">The run.</param>
    public async Task<Outcome<RunId, Refusal>> End(Actor actor, RunId run)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var change = await db.BeginChange();
        if (await Own(actor, run) is not { } beside) return Refused.NotFound;
        if (beside.EndedAt is null)
        {
            beside.EndedAt = clock.Instant();
            var found = await db.Runs.AsNoTracking().Include(known => known.Taps).SingleAsync(known => known.Id == run);
            if (found.State == RunState.Signed) await pairs.Count(found, beside);
            await db.SaveChangesAsync();
            await change.CommitAsync();
        }

        return run;
    }

    private Task<BesideRun?> Own(Actor actor, RunId run) => db.BesideRuns.Include(known => known.Taps)
        .SingleOrDefaultAsync(known => known.RunId == run && known.ExaminerId == actor.Person);

    private async Task<BesideView> View(BesideRun beside, string language)
    {
        var run = await db.Runs.AsNoTracking().SingleAsync(known => known.Id == beside.RunId);
        var texts = (await archive.Of(run.PublicationNumber)).Content.FindProcedure(run.Procedure)!.In(language);
        return new(
            (await lines.Of(db.Runs.Where(known => known.Id == run.Id)))[0],
            run.ProcedureHash,
            [.. Tapping.Offered(texts, run.Variant)],
            [.. beside.Taps.OrderBy(tap => tap.Number).Select(tap =>
                new TapView(tap.Id, tap.Number, tap.Step, Words.Of(texts, tap.Step).Do, tap.Seconds, tap.UndoneAt is not null))],
            Tapping.Seconds((beside.EndedAt ?? clock.Instant()) - run.StartedAt),
            beside.EndedAt is null ? null : await judging.Judge(run, beside.LiveTaps, language));
    }
}

/// <summary>What a second examiner tapped beside a run.</summary>
/// <param name="Run">The run.</param>
/// <param name="ProcedureHash">The hash of the procedure's text.</param>
/// <param name="Offered">What can be tapped.</param>
/// <param name="Taps">What was tapped, with what was taken back.</param>
/// <param name="ElapsedSeconds">Seconds since the start of the run, by the server's clock.</param>
/// <param name="Judged">The verdict by these taps; null while it has not ended.</param>
public sealed record BesideView(
    RunLine Run,
    ContentHash ProcedureHash,
    IReadOnlyList<OfferedView> Offered,
    IReadOnlyList<TapView> Taps,
    decimal ElapsedSeconds,
    JudgedRunView? Judged);
