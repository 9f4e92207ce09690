using Microsoft.EntityFrameworkCore;
using Training.Content;
using Training.Records.Accounts;
using Training.Records.Asking;
using Training.Records.Certifying;
using Training.Records.Publishing;
using Training.Records.Results;
using Training.Records.Storage;
using Training.Sequencing;
using Training.Sequencing.Json;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Records.Observing;

/// <summary>
/// Observed runs: real work at a vehicle, tapped step by step by an examiner and graded by the same rules as a paper.
/// <para>
/// The examiner taps a step <em>as it is done</em>, so the tap is when the step was finished. It was begun at the later
/// of the tap before it and (the tap − what the procedure says that it takes); a wait was begun at the tap before it.
/// The first step of a run has the start of the run for the tap before it.
/// </para>
/// </summary>
public sealed class Runs
{
    /// <summary>How many characters the reason has for which a run is given up, at most.</summary>
    public const int LongestReason = 500;

    /// <summary>How many characters an examiner's note has at most.</summary>
    public const int LongestNote = 1000;

    private readonly TrainingDbContext db;
    private readonly Library library;
    private readonly Archive archive;
    private readonly RunJudging judging;
    private readonly PassedPapers passedPapers;
    private readonly RunLines lines;
    private readonly Issuing issuing;
    private readonly Tallies tallies;
    private readonly ExaminerPairs pairs;
    private readonly TimeProvider clock;

    internal Runs(
        TrainingDbContext db,
        Library library,
        Archive archive,
        RunJudging judging,
        PassedPapers passedPapers,
        RunLines lines,
        Issuing issuing,
        Tallies tallies,
        ExaminerPairs pairs,
        TimeProvider clock)
    {
        (this.db, this.library, this.archive, this.judging) = (db, library, archive, judging);
        (this.passedPapers, this.lines, this.issuing, this.tallies, this.pairs, this.clock) = (passedPapers, lines, issuing, tallies, pairs, clock);
    }

    /// <summary>
    /// Who is to be observed: technicians within reach who passed a paper and have still to show procedures at a vehicle.
    /// </summary>
    /// <param name="actor">The examiner.</param>
    public async Task<Outcome<IReadOnlyList<RunToDo>, Refusal>> ToDo(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Examiner)) return Refused.NotAllowed;
        var papers = db.Papers.Where(paper => paper.PersonId != actor.Person);
        if (actor.Shop is { } own) papers = papers.Where(paper => paper.ShopId == own);
        var awaiting = await passedPapers.Awaiting(papers, clock.Instant());
        var people = awaiting.Select(of => of.Paper.PersonId).Distinct().ToList();
        var names = await db.Users.AsNoTracking().Where(person => people.Contains(person.Id)).ToDictionaryAsync(person => person.Id);
        var shops = await db.Shops.AsNoTracking().ToDictionaryAsync(shop => shop.Id);
        var open = await db.Runs.AsNoTracking()
            .Where(run => people.Contains(run.TechnicianId) && run.SignedAt == null && run.AbandonedAt == null).ToListAsync();
        var content = library.Current.Content;
        return (from of in awaiting
                from procedure in of.Procedures
                let written = content.FindProcedure(procedure)
                where written is not null
                let run = open.FirstOrDefault(known => known.PaperId == of.Paper.Id && known.Procedure == procedure)
                orderby of.Until, names[of.Paper.PersonId].DisplayName
                select new RunToDo(
                    of.Paper.PersonId, names[of.Paper.PersonId].DisplayName, shops[of.Paper.ShopId].Name, of.Competency.Id,
                    of.Competency.Title, procedure, written.Procedure.Title, written.Procedure.Variants, of.Until, run?.Id)).ToList();
    }

    /// <summary>Starts a run; the clock of the run starts with it.</summary>
    /// <param name="actor">The examiner, never the technician themself.</param>
    /// <param name="run">Who does what on which vehicle.</param>
    public async Task<Outcome<RunId, Refusal>> Start(Actor actor, NewRun run)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(run);
        if (!actor.Is(Roles.Examiner)) return Refused.NotAllowed;
        await using var change = await db.BeginChange();
        var technician = await db.Users.AsNoTracking().WithinReach(actor).Technicians(db)
            .SingleOrDefaultAsync(person => person.Id == run.Technician);
        if (technician is null) return Refused.NotFound;
        if (technician.Id == actor.Person) return new Refusal("Nobody examines themself.");
        var chassis = run.Chassis?.Trim() ?? "";
        if (chassis.Length is < 1 or > 80) return new Refusal("Say in up to 80 characters which vehicle it is.") { About = "Chassis" };
        var served = library.Current;
        if (served.Content.FindProcedure(run.Procedure) is not { } written) return Refused.NotFound;
        var variants = written.Procedure.Variants;
        if (run.Variant is { } variant ? !variants.Contains(variant) : variants.Count > 0)
            return new Refusal($"Choose one of the kinds of vehicle that this job tells apart: {string.Join(", ", variants)}.") { About = "Variant" };

        var now = clock.Instant();
        var papers = db.Papers.Where(paper => paper.PersonId == technician.Id && paper.Competency == run.Competency);
        var awaited = (await passedPapers.Awaiting(papers, now)).SingleOrDefault();
        if (awaited is null)
            return new Refusal($"{technician.DisplayName} has no passed paper for this that still waits for a run; the paper comes first.");
        if (!awaited.Competency.Observed!.Procedures.Contains(run.Procedure))
            return new Refusal("This competency does not ask for that job at a vehicle.");
        if (!awaited.Procedures.Contains(run.Procedure)) return new Refusal($"{technician.DisplayName} has passed a run of this job already.");
        var open = await db.Runs.Where(known => known.TechnicianId == technician.Id && known.SignedAt == null && known.AbandonedAt == null)
            .ToListAsync();
        if (open.Any(known => known.EndedAt is null))
            return new Refusal($"{technician.DisplayName} has a run under way; end or abandon that one first.");
        if (open.Any(known => known.PaperId == awaited.Paper.Id && known.Procedure == run.Procedure))
            return new Refusal($"A run of this job by {technician.DisplayName} waits for the signature; sign or abandon that one first.");

        var started = new Run
        {
            Id = RunId.New(now),
            TechnicianId = technician.Id,
            ShopId = awaited.Paper.ShopId,
            ExaminerId = actor.Person,
            PaperId = awaited.Paper.Id,
            Competency = run.Competency,
            Procedure = run.Procedure,
            ProcedureHash = written.File.Hash,
            PublicationNumber = served.Number,
            Variant = run.Variant,
            Chassis = chassis,
            StartedAt = now,
            Language = technician.Language,
        };
        db.Add(started);
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return started.Id;
    }

    /// <summary>The runs within reach (examiners, administrators), open ones first, then the newest.</summary>
    /// <param name="actor">Who asks.</param>
    public async Task<Outcome<IReadOnlyList<RunLine>, Refusal>> List(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!MaySee(actor)) return Refused.NotAllowed;
        return await lines.Of(actor.Shop is { } shop ? db.Runs.Where(run => run.ShopId == shop) : db.Runs);
    }

    /// <summary>The actor's own runs as a technician, newest first.</summary>
    /// <param name="actor">Who asks.</param>
    public async Task<IReadOnlyList<RunLine>> Mine(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return await lines.Of(db.Runs.Where(run => run.TechnicianId == actor.Person));
    }

    /// <summary>
    /// A run: for examiners and administrators within reach at any time; for the technician who did it once it is signed
    /// or abandoned. The verdict comes with it once the run has ended (the examiner's look before signing) and for good
    /// once it is signed.
    /// </summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="run">The run.</param>
    /// <param name="language">The language of the texts.</param>
    public async Task<Outcome<RunView, Refusal>> Look(
        Actor actor, RunId run, string language = ContentLibrary.DefaultLanguage)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var found = await db.Runs.AsNoTracking().Include(known => known.Taps).SingleOrDefaultAsync(known => known.Id == run);
        if (found is null) return Refused.NotFound;
        var isOwn = found.TechnicianId == actor.Person && found.State is RunState.Signed or RunState.Abandoned;
        if (!isOwn && (found.TechnicianId == actor.Person || !actor.Reaches(found.ShopId) || !MaySee(actor))) return Refused.NotFound;
        return await View(found, language);
    }

    /// <summary>
    /// Notes that a step was just done. A tap that was sent before, by its id, changes nothing. Refused: a time before
    /// the tap before it, a time more than 5 s ahead of the server's clock, a run that has ended.
    /// </summary>
    /// <param name="actor">The run's examiner.</param>
    /// <param name="run">The run.</param>
    /// <param name="tap">What was tapped.</param>
    public async Task<Outcome<TapView, Refusal>> Tap(Actor actor, RunId run, NewTap tap)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(tap);
        await using var change = await db.BeginChange();
        var found = await Own(actor, run);
        if (found is null) return Refused.NotFound;
        var procedure = await archive.Procedure(found.ProcedureHash);
        if (found.Taps.SingleOrDefault(known => known.Id == tap.Id) is { } sent) return View(procedure, sent);
        if (found.State != RunState.UnderWay) return Tapping.HasEnded;
        var now = clock.Instant();
        if (Tapping.WhyNot(tap, found.LiveTaps.LastOrDefault(), now - found.StartedAt, procedure, found.Variant) is { } wrong) return wrong;
        var noted = new Tap
        {
            RunId = run,
            Number = found.Taps.Count + 1,
            Id = tap.Id,
            Step = tap.Step,
            Seconds = decimal.Round(tap.Seconds, 3),
            ReceivedAt = now,
        };
        db.Add(noted);
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return View(procedure, noted);
    }

    /// <summary>Takes the last live tap back. It is marked, not deleted; taking it back again changes nothing.</summary>
    /// <param name="actor">The run's examiner.</param>
    /// <param name="run">The run.</param>
    /// <param name="tap">The tap, which must be the last one that stands.</param>
    public async Task<Outcome<TapView, Refusal>> Undo(Actor actor, RunId run, Guid tap)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var change = await db.BeginChange();
        var found = await Own(actor, run);
        if (found?.Taps.SingleOrDefault(known => known.Id == tap) is not { } noted) return Refused.NotFound;
        var procedure = await archive.Procedure(found.ProcedureHash);
        if (noted.UndoneAt is not null) return View(procedure, noted);
        if (found.State != RunState.UnderWay) return Tapping.HasEnded;
        if (Tapping.WhyNotBack(noted, found.LiveTaps.Last()) is { } wrong) return wrong;
        noted.UndoneAt = clock.Instant();
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return View(procedure, noted);
    }

    /// <summary>
    /// What of the job is not tapped yet, for whoever is about to end the run: each required step, and each choice of
    /// which nothing was done as its ways one beside the other.
    /// </summary>
    /// <param name="actor">The run's examiner.</param>
    /// <param name="run">The run, under way.</param>
    /// <param name="language">The language of the texts.</param>
    public async Task<Outcome<IReadOnlyList<string>, Refusal>> NotTapped(
        Actor actor, RunId run, string language = ContentLibrary.DefaultLanguage)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var found = await Own(actor, run);
        if (found is null) return Refused.NotFound;
        if (found.State != RunState.UnderWay) return Tapping.HasEnded;
        var judged = await judging.Judge(found, language);
        return judged.Verdict.Findings.Where(finding => finding.Kind == FindingKind.Missing)
            .Select(finding => string.Join(" / ", finding.Steps.Select(step => Words.Of(judged.Procedure, step).Do))).ToArray();
    }

    /// <summary>Ends a run: no tap is taken any more, and the examiner sees the verdict before signing. Again changes nothing.</summary>
    /// <param name="actor">The run's examiner.</param>
    /// <param name="run">The run.</param>
    public async Task<Outcome<RunView, Refusal>> End(Actor actor, RunId run)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var change = await db.BeginChange();
        var found = await Own(actor, run);
        if (found is null) return Refused.NotFound;
        if (found.State == RunState.UnderWay)
        {
            found.EndedAt = clock.Instant();
            await db.SaveChangesAsync();
            await change.CommitAsync();
        }

        return await View(found, ContentLibrary.DefaultLanguage);
    }

    /// <summary>
    /// Signs an ended run: its verdict is kept, and where it was the last thing needed the competency record is issued in
    /// the same transaction. Signing again gives the same.
    /// </summary>
    /// <param name="actor">The run's examiner.</param>
    /// <param name="run">The run.</param>
    /// <param name="note">What the examiner adds in words; may be empty.</param>
    public async Task<Outcome<SignedRun, Refusal>> Sign(Actor actor, RunId run, string note)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var said = note?.Trim() ?? "";
        if (said.Length > LongestNote) return new Refusal($"A note has at most {LongestNote} characters.") { About = "note" };
        await using var change = await db.BeginChange();
        var found = await Own(actor, run);
        if (found is null) return Refused.NotFound;
        if (found.State == RunState.UnderWay) return new Refusal("End the run before signing it.");
        if (found.State == RunState.Abandoned) return new Refusal("The run was abandoned; it cannot be signed.");
        if (found.State == RunState.Ended)
        {
            var now = clock.Instant();
            var judged = await judging.Judge(found, ContentLibrary.DefaultLanguage);
            var verdict = judged.Verdict;
            (found.SignedAt, found.Note, found.VerdictJson, found.Accepted) = (now, said, VerdictJson.Write(verdict), verdict.Accepted);
            await tallies.Count(new(found.TechnicianId, found.ShopId, found.Language), WorkOf(found, judged), now);
            var besides = await db.BesideRuns.AsNoTracking().Include(beside => beside.Taps)
                .Where(beside => beside.RunId == run && beside.EndedAt != null).ToListAsync();
            foreach (var beside in besides) await pairs.Count(found, beside);
            await db.SaveChangesAsync();
            var paper = await db.Papers.Include(known => known.Questions).SingleAsync(known => known.Id == found.PaperId);
            var sitting = await db.Sittings.SingleAsync(known => known.Id == paper.SittingId);
            await issuing.IssueIfComplete(paper, sitting, actor.Person, now);
            await change.CommitAsync();
        }

        return new SignedRun(run, found.Accepted!.Value, await RecordOf(run));
    }

    /// <summary>Gives a run up before it is signed, with a reason; it counts for nothing.</summary>
    /// <param name="actor">The run's examiner.</param>
    /// <param name="run">The run.</param>
    /// <param name="reason">Why.</param>
    public async Task<Outcome<RunView, Refusal>> Abandon(Actor actor, RunId run, string reason)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var said = reason?.Trim() ?? "";
        if (said.Length is < 1 or > LongestReason) return new Refusal($"Say in up to {LongestReason} characters why the run is abandoned.") { About = "reason" };
        await using var change = await db.BeginChange();
        var found = await Own(actor, run);
        if (found is null) return Refused.NotFound;
        if (found.State == RunState.Signed) return new Refusal("The run is signed; it cannot be abandoned.");
        if (found.State != RunState.Abandoned)
        {
            (found.AbandonedAt, found.Reason) = (clock.Instant(), said);
            await db.SaveChangesAsync();
            await change.CommitAsync();
        }

        return await View(found, ContentLibrary.DefaultLanguage);
    }

    /// <summary>The work of a run, as results are counted by it.</summary>
    internal static JudgedWork WorkOf(Run run, JudgedRunView judged) => new(
        WorkSource.Vehicle, run.Procedure, run.ProcedureHash, run.Variant, judged.Answer,
        Tapping.Offered(judged.Procedure, run.Variant).Select(offered => offered.Id), judged.Verdict, new(run.Id.Value, 0));

    private static bool MaySee(Actor actor) => actor.Is(Roles.Examiner) || actor.Is(Roles.Administrator);

    private static TapView View(Procedure texts, Tap tap) =>
        new(tap.Id, tap.Number, tap.Step, Words.Of(texts, tap.Step).Do, tap.Seconds, tap.UndoneAt is not null);

    /// <summary>The run, for its examiner alone.</summary>
    private Task<Run?> Own(Actor actor, RunId run) => db.Runs.Include(known => known.Taps)
        .SingleOrDefaultAsync(known => known.Id == run && known.ExaminerId == actor.Person);

    private Task<RecordId?> RecordOf(RunId run) => db.Set<RecordRun>().Where(known => known.RunId == run)
        .Select(known => (RecordId?)known.RecordId).SingleOrDefaultAsync();

    private async Task<RunView> View(Run run, string language)
    {
        var written = (await archive.Of(run.PublicationNumber)).Content.FindProcedure(run.Procedure)!;
        var texts = written.In(language);
        var elapsed = (run.EndedAt ?? run.AbandonedAt ?? clock.Instant()) - run.StartedAt;
        return new(
            (await lines.Of(db.Runs.Where(known => known.Id == run.Id)))[0],
            written.Procedure.Revision,
            run.ProcedureHash,
            [.. Tapping.Offered(texts, run.Variant)],
            [.. run.Taps.OrderBy(tap => tap.Number).Select(tap => View(texts, tap))],
            Tapping.Seconds(elapsed),
            run.Note,
            run.Reason,
            run.EndedAt,
            run.SignedAt,
            run.EndedAt is null ? null : await judging.Judge(run, language),
            await RecordOf(run.Id));
    }
}
