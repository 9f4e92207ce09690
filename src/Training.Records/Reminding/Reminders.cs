using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Covering;
using Training.Records.Staffing;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Reminding;

/// <summary>Whom to remind of what. Worked out when somebody asks; nothing of it is kept.</summary>
public sealed class Reminders
{
    /// <summary>How many days ahead a list looks. Common practice, no published source: a quarter is enough to find a sitting.</summary>
    public const int DaysAhead = 90;

    private const int DaysAfterTheEnd = 30;

    private readonly TrainingDbContext db;
    private readonly Coverage coverage;
    private readonly RecordLines lines;

    internal Reminders(TrainingDbContext db, Coverage coverage, RecordLines lines) => (this.db, this.coverage, this.lines) = (db, coverage, lines);

    /// <summary>What the own shop's owner is reminded of (owners).</summary>
    /// <param name="actor">The owner.</param>
    public async Task<Outcome<OwnersReminders, Refusal>> OfShop(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var found = await OfShop(actor, DaysAhead);
        if (!found.IsOk) return found.Fault;
        var made = await db.Set<CalendarAddress>().Where(address => address.PersonId == actor.Person).Select(address => (Instant?)address.MadeAt).SingleOrDefaultAsync();
        var mail = await db.Users.Where(person => person.Id == actor.Person).Select(person => person.Email).SingleAsync();
        return new OwnersReminders(found.Value.Today, found.Value.Reminders, made, mail);
    }

    /// <summary>What a technician is reminded of: the own records alone.</summary>
    /// <param name="actor">The technician.</param>
    public async Task<Outcome<IReadOnlyList<Reminder>, Refusal>> Mine(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Technician) || actor.Shop is not { } id) return Refused.NotAllowed;
        var today = lines.Today(await db.Shops.AsNoTracking().SingleAsync(shop => shop.Id == id));
        var own = (await lines.Of([actor.Person], today)).Where(line => line.IsNewest);
        return InOrder(own.Select(line => OfRecord(line, today, today.PlusDays(DaysAhead))).OfType<Reminder>());
    }

    internal async Task<Outcome<(LocalDate Today, IReadOnlyList<Reminder> Reminders), Refusal>> OfShop(Actor actor, int daysAhead)
    {
        var looked = await coverage.Look(actor);
        if (!looked.IsOk) return looked.Fault;
        var (today, shop) = (looked.Value.Today, actor.Shop!.Value);
        var last = today.PlusDays(daysAhead);
        var found = new List<Reminder>();
        foreach (var competency in looked.Value.Competencies)
        {
            found.AddRange(competency.Holding.Concat(competency.NotHolding).Select(line => OfRecord(line, today, last)).OfType<Reminder>());
            if (competency.FirstBelow is { } day && day <= last)
                found.Add(new Reminder.TooFew(
                    $"too-few-{shop}-{competency.Competency}", day, competency.Competency, competency.Title,
                    competency.Steps.Last(step => step.From <= day).People, competency.Need));
        }

        found.AddRange(await OfJobs(shop, today, last));
        return (today, InOrder(found));
    }

    /// <summary>What is to be said of the record that counts today; null where nothing is.</summary>
    private static Reminder? OfRecord(RecordLine line, LocalDate today, LocalDate last) => line.Standing switch
    {
        { Holds: true } standing when standing.Until > last => null,
        { Holds: true } standing when standing.ConfirmBy == standing.Until => new Reminder.Confirm($"confirm-{line.Id}", line),
        { Holds: true } => new Reminder.Renew($"renew-{line.Id}", line),
        { State: RecordState.Expired } standing when standing.Until >= today.PlusDays(-DaysAfterTheEnd) => new Reminder.Ended($"ended-{line.Id}", line),
        _ => null,
    };

    /// <summary>Where somebody of a confirmed crew may not do the work on a day that is still to come.</summary>
    private async Task<List<Reminder>> OfJobs(ShopId shop, LocalDate today, LocalDate last)
    {
        var jobs = await db.Set<Job>().AsNoTracking().AsSplitQuery().Include(job => job.Crews).ThenInclude(crew => crew.Places)
            .Where(job => job.ShopId == shop && job.Cancellation == null && job.LastDay >= today && job.FirstDay <= last && job.Crews.Count > 0).ToListAsync();
        if (jobs.Count == 0) return [];
        var held = (await lines.Held(db.Users.AsNoTracking().Where(person => person.ShopId == shop)))
            .ToDictionary(history => (history.Person, history.Competency));
        var found = new List<Reminder>();
        foreach (var job in jobs)
            foreach (var place in job.Crews.MaxBy(crew => crew.Number)!.Places)
                if (held.TryGetValue((place.PersonId, place.Competency), out var history)
                    && FirstLack(history, LocalDate.Max(job.FirstDay, today), job.LastDay) is { } day)
                    found.Add(new Reminder.CrewLapses(
                        $"crew-{job.Id}-{place.PersonId}-{place.Competency}", day, job.Id, job.Customer, job.Chassis, history.Name, history.Records[^1].CompetencyTitle));
        return found;
    }

    private static LocalDate? FirstLack(HeldCompetency history, LocalDate first, LocalDate last)
    {
        for (var day = first; day <= last; day = day.PlusDays(1))
            if (!history.MayOn(day)) return day;
        return null;
    }

    private static List<Reminder> InOrder(IEnumerable<Reminder> reminders) =>
        [.. reminders.OrderBy(reminder => reminder.Day).ThenBy(reminder => reminder.Key, StringComparer.Ordinal)];
}
