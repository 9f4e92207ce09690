using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Records.Accounts;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Certifying;

/// <summary>
/// Competency records: issued by the services when a paper and its runs are passed, never by hand. What happens to one
/// afterwards is added to its events; nothing is changed or deleted.
/// </summary>
public sealed class CompetencyRecords
{
    private readonly TrainingDbContext db;
    private readonly Archive archive;
    private readonly RecordLines lines;
    private readonly TimeProvider clock;

    internal CompetencyRecords(TrainingDbContext db, Archive archive, RecordLines lines, TimeProvider clock) =>
        (this.db, this.archive, this.lines, this.clock) = (db, archive, lines, clock);

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
        return await View(record, on);
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

    /// <summary>Confirms that the person still does the work (an owner in the own shop, an administrator), never for oneself; only where the competency asks for it.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="record">The record.</param>
    /// <param name="note">What it is based on.</param>
    public Task<Outcome<RecordView, Refusal>> Confirm(Actor actor, RecordId record, string note) => Add(
        actor, record, RecordEventKind.Confirmed, note, MayHoldBack(actor), standing =>
            standing.ConfirmBy is null ? new("This competency asks for no confirmation.")
            : standing.Holds ? null
            : new("Only a record that holds can be confirmed."));

    private static Refusal IsWithdrawn { get; } = new("The record is withdrawn for good.");

    private static Refusal HasExpired { get; } = new("The record has expired; it can only be earned again.");

    private static bool MayHoldBack(Actor actor) => actor.Is(Roles.Administrator) || (actor.Is(Roles.Owner) && actor.Shop is not null);

    private static bool MayWithdraw(Actor actor) => actor.Is(Roles.Administrator) || (actor.Is(Roles.Examiner) && actor.Shop is null);

    private async Task<Outcome<RecordView, Refusal>> Add(
        Actor actor, RecordId record, RecordEventKind kind, string reason, bool may, Func<RecordStanding, Refusal?> whyNot)
    {
        if (!may) return Refused.NotAllowed;
        var said = reason?.Trim() ?? "";
        if (said.Length is < 1 or > 2000) return new Refusal("Say in up to 2000 characters why.");
        await using var change = await db.BeginChange();
        var found = await db.CompetencyRecords.Include(known => known.Events).SingleOrDefaultAsync(known => known.Id == record);
        if (found is null || !actor.Reaches(found.ShopId)) return Refused.NotFound;
        if (found.PersonId == actor.Person) return new Refusal("Nobody decides about their own record.");
        var standing = (await lines.Of([found.PersonId], null)).Single(line => line.Id == record).Standing!;
        if (whyNot(standing) is { } wrong) return wrong;
        found.Events.Add(new()
        {
            Number = found.Events.Count + 1,
            Kind = kind,
            At = clock.Instant(),
            ById = actor.Person,
            Reason = said,
        });
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return await View(record, null);
    }

    private async Task<RecordView> View(RecordId id, LocalDate? on)
    {
        var record = await db.CompetencyRecords.AsNoTracking().Include(known => known.Events).Include(known => known.Texts)
            .SingleAsync(known => known.Id == id);
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
        var actors = record.Events.Select(entry => entry.ById).ToList();
        var names = await db.Users.AsNoTracking().Where(person => actors.Contains(person.Id))
            .ToDictionaryAsync(person => person.Id, person => person.DisplayName);
        return new(
            (await lines.Of([record.PersonId], on)).Single(line => line.Id == id),
            on ?? lines.Today(shop),
            record.CompetencyHash,
            record.IssuedAt,
            record.PaperId,
            paper.HandedInAt!.Value,
            paper.DisplayName,
            runViews,
            [.. record.Texts.OrderBy(text => text.Path, StringComparer.Ordinal).Select(text => new JudgedTextView(text.Path, text.Hash))],
            [.. record.Events.OrderBy(entry => entry.Number)
                .Select(entry => new RecordEventView(entry.Kind, entry.At, names[entry.ById], entry.Reason))]);
    }
}
