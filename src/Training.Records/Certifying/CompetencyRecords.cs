using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Records.Accounts;
using Training.Records.Ledger;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Certifying;

/// <summary>
/// Competency records: issued by the services when a paper and its runs are passed, never by hand. What happens to one
/// afterwards is added to the log; nothing is changed or deleted.
/// </summary>
public sealed class CompetencyRecords
{
    /// <summary>How many characters a reason has at most.</summary>
    public const int LongestReason = 500;

    private readonly TrainingDbContext db;
    private readonly Archive archive;
    private readonly RecordLines lines;
    private readonly LogBook log;
    private readonly LogWriter writer;

    internal CompetencyRecords(TrainingDbContext db, Archive archive, RecordLines lines, LogBook log, LogWriter writer) =>
        (this.db, this.archive, this.lines, this.log, this.writer) = (db, archive, lines, log, writer);

    /// <summary>A person's records, newest first: one's own, or those of somebody within reach (examiners, owners, trainers, administrators).</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="person">Whose.</param>
    /// <param name="on">The day that the state is asked for; null for today in the shop's time zone.</param>
    public async Task<Outcome<IReadOnlyList<RecordLine>, Refusal>> Of(Actor actor, PersonId person, LocalDate? on = null)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (await db.PersonInSight(actor, person) is null) return Refused.NotFound;
        return await lines.Of([person], on);
    }

    /// <summary>One record with its evidence and events, for those who may see its person.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="record">The record.</param>
    /// <param name="on">The day that the state is asked for; null for today in the shop's time zone.</param>
    public async Task<Outcome<RecordView, Refusal>> Look(Actor actor, RecordId record, LocalDate? on = null)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var found = await db.CompetencyRecords.AsNoTracking().SingleOrDefaultAsync(known => known.Id == record);
        if (found is null || await db.PersonInSight(actor, found.PersonId) is null) return Refused.NotFound;
        return (await log.Read(db)).Records.ContainsKey(record) ? await View(record, on) : Refused.NotFound;
    }

    /// <summary>Suspends a record (an owner in the own shop, an administrator), never one's own.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="record">The record.</param>
    /// <param name="reason">Why.</param>
    public Task<Outcome<RecordView, Refusal>> Suspend(Actor actor, RecordId record, string reason) => Add(
        actor, record, RecordEventKind.Suspended, reason, MayHoldBack(actor), standing => standing.State switch
        {
            RecordState.Suspended => new("The record is suspended already."),
            RecordState.Withdrawn => IsWithdrawn,
            RecordState.Expired => HasExpired,
            _ => null,
        });

    /// <summary>Reinstates a suspended record (an owner in the own shop, an administrator), never one's own.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="record">The record.</param>
    /// <param name="reason">Why.</param>
    public Task<Outcome<RecordView, Refusal>> Reinstate(Actor actor, RecordId record, string reason) => Add(
        actor, record, RecordEventKind.Reinstated, reason, MayHoldBack(actor), standing => standing.State switch
        {
            RecordState.Suspended => null,
            RecordState.Withdrawn => IsWithdrawn,
            RecordState.Expired => HasExpired,
            _ => new("The record is not suspended."),
        });

    /// <summary>Withdraws a record for good (an administrator, an examiner of the provider), never one's own.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="record">The record.</param>
    /// <param name="reason">Why.</param>
    public Task<Outcome<RecordView, Refusal>> Withdraw(Actor actor, RecordId record, string reason) => Add(
        actor, record, RecordEventKind.Withdrawn, reason, MayWithdraw(actor),
        standing => standing.State == RecordState.Withdrawn ? IsWithdrawn : null);

    /// <summary>
    /// Confirms that the person has done this work since the last time (an owner in the own shop, an administrator, an
    /// examiner of the provider), never for oneself; only where the competency asks for it. It counts for the
    /// period that today is in, never for one that is over; a second confirmation on the same day adds nothing.
    /// </summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="record">The record.</param>
    /// <param name="work">Which work was seen.</param>
    public Task<Outcome<RecordView, Refusal>> Confirm(Actor actor, RecordId record, string work) => Add(
        actor, record, RecordEventKind.Confirmed, work, MayConfirm(actor), standing => standing switch
        {
            { ConfirmBy: null } => new("This competency asks for no confirmation."),
            { State: RecordState.Withdrawn } => IsWithdrawn,
            { State: RecordState.Suspended } => new("The record is suspended; reinstate it before you confirm it."),
            { HasLapsed: true } => new("The record was not confirmed in time and has lapsed; it can only be earned again."),
            { State: RecordState.Expired } => HasExpired,
            _ => null,
        });

    private static Refusal IsWithdrawn { get; } = new("The record is withdrawn for good.");

    private static Refusal HasExpired { get; } = new("The record has expired; it can only be earned again.");

    private static bool MayHoldBack(Actor actor) => actor.Is(Roles.Administrator) || (actor.Is(Roles.Owner) && actor.Shop is not null);

    private static bool MayConfirm(Actor actor) => MayHoldBack(actor) || MayWithdraw(actor);

    private static bool MayWithdraw(Actor actor) => actor.Is(Roles.Administrator) || (actor.Is(Roles.Examiner) && actor.Shop is null);

    private async Task<Outcome<RecordView, Refusal>> Add(
        Actor actor, RecordId record, RecordEventKind kind, string reason, bool may, Func<RecordStanding, Refusal?> whyNot)
    {
        if (!may) return Refused.NotAllowed;
        await using var change = await db.BeginChange();
        var found = await db.CompetencyRecords.AsNoTracking().SingleOrDefaultAsync(known => known.Id == record);
        if (found is null || !actor.Reaches(found.ShopId)) return Refused.NotFound;
        var said = reason?.Trim() ?? "";
        if (said.Length is < 1 or > LongestReason)
        {
            return kind == RecordEventKind.Confirmed
                ? new Refusal($"Say in up to {LongestReason} characters which work was seen.") { About = "work" }
                : new Refusal($"Say in up to {LongestReason} characters why.") { About = "reason" };
        }

        if (found.PersonId == actor.Person) return new Refusal("Nobody decides about their own record.");
        var line = (await lines.Of([found.PersonId], null)).SingleOrDefault(known => known.Id == record);
        if (line is null) return Refused.NotFound;
        if (line.Standing is not { } standing)
            return new Refusal("By the clock of this server the record is not issued yet; have the clock set right first.");
        if (whyNot(standing) is { } wrong) return wrong;
        if (kind == RecordEventKind.Confirmed && await IsConfirmedToday(found)) return await View(record, null);
        await writer.Add(record, kind, actor.Person, said);
        await change.CommitAsync();
        return await View(record, null);
    }

    private async Task<bool> IsConfirmedToday(CompetencyRecord record)
    {
        var known = (await log.Read(db)).Records[record.Id];
        var today = lines.Today(await db.Shops.AsNoTracking().SingleAsync(shop => shop.Id == record.ShopId));
        return known.Events.Any(entry => entry.Kind == RecordEventKind.Confirmed && known.DayOf(entry.At) == today);
    }

    private async Task<RecordView> View(RecordId id, LocalDate? on)
    {
        var record = await db.CompetencyRecords.AsNoTracking().SingleAsync(known => known.Id == id);
        var known = (await log.Read(db)).Records[id];
        var shop = await db.Shops.AsNoTracking().SingleAsync(known => known.Id == record.ShopId);
        var paper = await (from sat in db.Papers
                           where sat.Id == record.PaperId
                           join sitting in db.Sittings on sat.SittingId equals sitting.Id
                           join examiner in db.Users on sitting.ExaminerId equals examiner.Id
                           select new { sat.HandedInAt, examiner.DisplayName }).SingleAsync();
        var runs = await (from rested in db.Set<RecordRun>()
                          where rested.RecordId == id
                          join run in db.Runs on rested.RunId equals run.Id
                          join examiner in db.Users on run.ExaminerId equals examiner.Id
                          orderby run.SignedAt
                          select new { run.Id, run.ProcedureHash, run.Chassis, examiner.DisplayName, run.SignedAt }).ToListAsync();
        var runViews = new List<RecordRunView>();
        foreach (var run in runs)
            runViews.Add(new(run.Id, (await archive.Procedure(run.ProcedureHash)).Title, run.Chassis, run.DisplayName, run.SignedAt!.Value));
        var notes = await (from note in db.LogNotes
                           where note.RecordId == id
                           join person in db.Users on note.ById equals person.Id
                           select new { note.EntryIndex, note.Reason, person.DisplayName }).ToDictionaryAsync(note => note.EntryIndex);
        return new(
            (await lines.Of([record.PersonId], on)).Single(line => line.Id == id),
            on ?? lines.Today(shop),
            known.Issued.Text,
            known.IssuedAt,
            record.PaperId,
            paper.HandedInAt!.Value,
            paper.DisplayName,
            runViews,
            [.. known.Issued.Judged.Select(text => new JudgedTextView(text.Path, text.Text))],
            [Event(known.Index, known.IssuedAt, RecordEventKind.Issued), .. known.Events.Select(entry => Event(entry.Index, entry.At, entry.Kind))]);

        RecordEventView Event(long index, NodaTime.Instant at, RecordEventKind kind) => notes.TryGetValue(index, out var note)
            ? new(kind, at, note.DisplayName, note.Reason) { Entry = index }
            : new(kind, at, "", "") { Entry = index };
    }
}
