using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Publishing;
using Training.Records.Storage;

namespace Training.Records.Staffing;

/// <summary>The jobs of a shop as they are kept, and who may stand in their places.</summary>
internal sealed class JobBoard(TrainingDbContext db, Library library, RecordLines lines)
{
    /// <summary>The shop whose jobs the actor plans; null for who is no owner.</summary>
    public static ShopId? OwnShop(Actor actor) => actor.Is(Roles.Owner) ? actor.Shop : null;

    /// <summary>The crew that counts; null where none was confirmed yet.</summary>
    public static Crew? Newest(Job job) => job.Crews.MaxBy(crew => crew.Number);

    /// <summary>A job as a line of a list.</summary>
    public static JobLine Line(Job job) => new(
        job.Id, job.Customer, job.Chassis, job.Kind, job.FirstDay, job.LastDay,
        job.Needs.Sum(need => need.People), Newest(job)?.Places.Count ?? 0)
    { CalledOffAt = job.Cancellation?.At };

    /// <summary>Jobs with their needs and crews.</summary>
    public IQueryable<Job> Whole() => db.Set<Job>().AsNoTracking().AsSplitQuery()
        .Include(job => job.Needs).Include(job => job.Cancellation).Include(job => job.Crews).ThenInclude(crew => crew.Places);

    /// <summary>A job of the actor's own shop; null where there is none.</summary>
    public async Task<Job?> Found(Actor actor, JobId id) => OwnShop(actor) is { } shop
        ? await Whole().SingleOrDefaultAsync(job => job.Id == id && job.ShopId == shop)
        : null;

    /// <summary>Today in a shop.</summary>
    public async Task<LocalDate> Today(ShopId id) => lines.Today(await db.Shops.AsNoTracking().SingleAsync(shop => shop.Id == id));

    /// <summary>What the people of a shop have shown of what is needed.</summary>
    public async Task<List<HeldCompetency>> Histories(ShopId shop, IEnumerable<JobNeed> needs)
    {
        var needed = needs.Select(need => need.Competency).ToHashSet();
        return [.. (await lines.Held(db.Users.AsNoTracking().Where(person => person.ShopId == shop))).Where(history => needed.Contains(history.Competency))];
    }

    /// <summary>What a competency is called, or was called where it is no longer served.</summary>
    public string Title(CompetencyId competency, List<HeldCompetency> histories) =>
        library.Current.Content.FindCompetency(competency)?.Title
        ?? histories.Find(history => history.Competency == competency)?.Records[^1].CompetencyTitle ?? competency.Value;

    /// <summary>When and by whom a crew was confirmed.</summary>
    public async Task<CrewConfirmed> Confirmed(Crew crew) => new(crew.ConfirmedAt, (await db.NamesOf([crew.ConfirmedById]))[crew.ConfirmedById]);

    /// <summary>How many places of each job's crew are held by somebody who may no longer do the work on all the days.</summary>
    /// <param name="jobs">Jobs of one shop.</param>
    /// <param name="shop">The shop.</param>
    public async Task<Dictionary<JobId, int>> Lost(IReadOnlyList<Job> jobs, ShopId shop)
    {
        var today = await Today(shop);
        var open = jobs.Where(job => job.Cancellation is null && job.LastDay >= today && job.Crews.Count > 0).ToList();
        if (open.Count == 0) return [];
        var held = (await Histories(shop, open.SelectMany(job => job.Needs))).ToDictionary(history => (history.Person, history.Competency));
        return open.ToDictionary(job => job.Id, job => Newest(job)!.Places.Count(place =>
            !held.TryGetValue((place.PersonId, place.Competency), out var history) || !new JobStaff(history, job.FirstDay, job.LastDay, today).May));
    }

    /// <summary>Who of the shop has a record for what a job needs, looked at for its days.</summary>
    public async Task<StaffedJob> Staffed(Job job)
    {
        var today = await Today(job.ShopId);
        var histories = await Histories(job.ShopId, job.Needs);
        return new(
            job, today, job.Needs.ToDictionary(need => need.Competency, need => Title(need.Competency, histories)),
            histories.Select(history => new JobStaff(history, job.FirstDay, job.LastDay, today)).ToLookup(one => one.History.Competency));
    }

    /// <summary>A job as its owner sees it.</summary>
    public async Task<JobView> View(Job job)
    {
        var crew = Newest(job);
        var view = (await Staffed(job)).View(crew is null ? null : await Confirmed(crew));
        return job.Cancellation is { } off ? view with { CalledOffBy = (await db.NamesOf([off.ById]))[off.ById] } : view;
    }
}
