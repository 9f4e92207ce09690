using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Proving;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing;
using Training.Sequencing.Procedures;

namespace Training.Records.Staffing;

/// <summary>Jobs of a shop, the crews for them, and who was competent on them on any day (owners, in the own shop).</summary>
public sealed class Jobs
{
    private const int MostDays = 366;
    private const int MostPeople = 50;
    private const int MostNearest = 3;

    private readonly TrainingDbContext db;
    private readonly Library library;
    private readonly RecordLines lines;
    private readonly CustomerProofs proofs;
    private readonly TimeProvider clock;

    internal Jobs(TrainingDbContext db, Library library, RecordLines lines, CustomerProofs proofs, TimeProvider clock) =>
        (this.db, this.library, this.lines, this.proofs, this.clock) = (db, library, lines, proofs, clock);

    /// <summary>The kinds of chassis that the procedures know.</summary>
    public IReadOnlyList<VariantId> Kinds =>
        [.. library.Current.Content.Procedures.SelectMany(procedure => procedure.Procedure.Variants).Distinct().OrderBy(kind => kind.Value, StringComparer.Ordinal)];

    /// <summary>The competencies that a job can need: those that are served.</summary>
    public IReadOnlyList<(CompetencyId Competency, string Title)> Competencies =>
        [.. library.Current.Content.Competencies.Select(competency => (competency.Id, competency.Title))];

    /// <summary>Keeps a job.</summary>
    /// <param name="actor">The owner.</param>
    /// <param name="job">The job.</param>
    public async Task<Outcome<JobId, Refusal>> Make(Actor actor, NewJob job)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(job);
        if (OwnShop(actor) is not { } shop) return Refused.NotAllowed;
        if (WhyNot(job) is { } wrong) return wrong;
        await using var change = await db.BeginChange();
        var now = clock.Instant();
        var made = new Job
        {
            Id = JobId.New(now),
            ShopId = shop,
            Customer = job.Customer.Trim(),
            Chassis = job.Chassis.Trim(),
            Kind = job.Kind,
            FirstDay = job.FirstDay,
            LastDay = job.LastDay,
            Work = job.Work.Trim(),
            SeparatePeople = job.SeparatePeople,
            MadeById = actor.Person,
            MadeAt = now,
            Needs = [.. job.Needs.Where(need => need.Value > 0).Select(need => new JobNeed { Competency = need.Key, People = need.Value })],
        };
        db.Add(made);
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return made.Id;
    }

    /// <summary>The own shop's jobs, the last to end first.</summary>
    /// <param name="actor">The owner.</param>
    public async Task<Outcome<IReadOnlyList<JobLine>, Refusal>> List(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (OwnShop(actor) is not { } shop) return Refused.NotAllowed;
        return (await Whole().Where(job => job.ShopId == shop).OrderByDescending(job => job.LastDay).ThenByDescending(job => job.Id)
            .ToListAsync()).ConvertAll(Line);
    }

    /// <summary>One job: who may do it on all its days, whom we propose, whom its owner confirmed.</summary>
    /// <param name="actor">The owner.</param>
    /// <param name="job">The job.</param>
    public async Task<Outcome<JobView, Refusal>> Look(Actor actor, JobId job)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return await Found(actor, job) is { } found ? await View(found) : Refused.NotFound;
    }

    /// <summary>Confirms a crew: people who may do the work on all the days. What was confirmed before is kept beside it.</summary>
    /// <param name="actor">The owner.</param>
    /// <param name="job">The job.</param>
    /// <param name="places">Who stands for which competency; fewer than are needed leave places open.</param>
    public async Task<Outcome<JobView, Refusal>> Confirm(
        Actor actor, JobId job, IReadOnlyCollection<(CompetencyId Competency, PersonId Person)> places)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(places);
        if (OwnShop(actor) is null) return Refused.NotFound;
        await using var change = await db.BeginChange();
        if (await Found(actor, job) is not { } found) return Refused.NotFound;
        var chosen = places.Distinct().ToList();
        if (chosen.Count == 0) return new Refusal("Choose at least one person.");
        var view = await View(found);
        foreach (var of in chosen.GroupBy(place => place.Competency))
        {
            if (view.Needs.FirstOrDefault(need => need.Competency == of.Key) is not { } need) return Refused.NotFound;
            if (of.Count() > need.People) return new Refusal($"{need.Title}: choose at most {need.People}.");
            foreach (var (_, person) in of)
            {
                if (need.Candidates.FirstOrDefault(candidate => candidate.Record.Person == person) is not { } candidate) return Refused.NotFound;
                if (!candidate.May) return new Refusal($"{candidate.Record.Name} may not do this on all the days: {need.Title}.");
            }
        }

        if (found.SeparatePeople && chosen.DistinctBy(place => place.Person).Count() < chosen.Count)
            return new Refusal("This job wants a person of its own in each place, and somebody stands in two.");
        db.Add(new Crew
        {
            JobId = found.Id,
            Number = found.Crews.Count + 1,
            ConfirmedById = actor.Person,
            ConfirmedAt = clock.Instant(),
            Places = [.. chosen.Select(place => new CrewPlace { Competency = place.Competency, PersonId = place.Person })],
        });
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return await View((await Found(actor, job))!);
    }

    /// <summary>Who was on the job and competent on one day, from what had happened to the records by the end of it.</summary>
    /// <param name="actor">The owner.</param>
    /// <param name="job">The job.</param>
    /// <param name="day">The day.</param>
    public async Task<Outcome<JobDay, Refusal>> On(Actor actor, JobId job, LocalDate day)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (await Found(actor, job) is not { } found) return Refused.NotFound;
        var shop = await db.Shops.AsNoTracking().SingleAsync(known => known.Id == found.ShopId);
        var crews = found.Crews.OrderBy(crew => crew.Number).ToList();
        var crew = crews.FindLast(known => known.ConfirmedAt.DayIn(shop) <= day) ?? crews.FirstOrDefault();
        var histories = await Histories(found);
        var places = crew?.Places ?? [];
        var names = await db.NamesOf(places.Select(place => place.PersonId));
        return new JobDay(
            day,
            day >= found.FirstDay && day <= found.LastDay,
            crew is null ? null : await Confirmed(crew),
            crew is not null && crew.ConfirmedAt.DayIn(shop) <= day,
            [.. places.Select(place => new JobDayLine(
                    names[place.PersonId],
                    Title(place.Competency, histories),
                    histories.Find(of => of.Person == place.PersonId && of.Competency == place.Competency)?.LineOn(day)?.Standing))
                .OrderBy(line => line.Title, StringComparer.Ordinal).ThenBy(line => line.Name, StringComparer.Ordinal)],
            [.. histories.Where(of => !places.Any(place => place.PersonId == of.Person && place.Competency == of.Competency))
                .Select(of => of.LineOn(day)).OfType<RecordLine>().Where(line => line.Standing is { Holds: true })
                .OrderBy(line => line.CompetencyTitle, StringComparer.Ordinal).ThenBy(line => line.Name, StringComparer.Ordinal)]);
    }

    /// <summary>Makes a proof of the confirmed crew's records, for the job's customer.</summary>
    /// <param name="actor">The owner.</param>
    /// <param name="job">The job.</param>
    /// <param name="forWhom">What stands on the proof, made from the job in the owner's words.</param>
    public async Task<Outcome<ProofLine, Refusal>> Prove(Actor actor, JobId job, Func<JobLine, string> forWhom)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(forWhom);
        if (await Found(actor, job) is not { } found) return Refused.NotFound;
        if (Newest(found) is not { } crew) return new Refusal("Confirm the crew first; the proof shows it.");
        var today = await Today(found);
        var records = (await Histories(found)).Where(of => crew.Places.Any(place => place.PersonId == of.Person && place.Competency == of.Competency))
            .Select(of => of.LineOn(today)).OfType<RecordLine>().Select(line => line.Id).ToList();
        return await proofs.Make(actor, records, forWhom(Line(found)), found.Id);
    }

    private static ShopId? OwnShop(Actor actor) => actor.Is(Roles.Owner) ? actor.Shop : null;

    private static Crew? Newest(Job job) => job.Crews.MaxBy(crew => crew.Number);

    private static JobLine Line(Job job) => new(
        job.Id, job.Customer, job.Chassis, job.Kind, job.FirstDay, job.LastDay,
        job.Needs.Sum(need => need.People), Newest(job)?.Places.Count ?? 0);

    private Refusal? WhyNot(NewJob job)
    {
        if (!IsLine(job.Customer, 100)) return new("Name the customer in up to 100 characters on one line.");
        if (!IsLine(job.Chassis, 60)) return new("Name the vehicle in up to 60 characters on one line.");
        if (!Kinds.Contains(job.Kind)) return new("Choose the kind of chassis.");
        if (job.LastDay < job.FirstDay) return new("The last day is before the first.");
        if (NodaTime.Period.DaysBetween(job.FirstDay, job.LastDay) >= MostDays) return new($"A job lasts {MostDays} days at most.");
        if (job.Work?.Trim() is not { Length: >= 1 and <= 2000 }) return new("Say in up to 2000 characters what is done.");
        if (job.Needs.Values.Any(people => people is < 0 or > MostPeople)) return new($"A job needs from 0 to {MostPeople} people for each; write a whole number.");
        if (job.Needs.Values.All(people => people == 0)) return new("Say for at least one competency how many people are needed.");
        return job.Needs.Keys.All(competency => library.Current.Content.FindCompetency(competency) is not null) ? null : Refused.NotFound;
    }

    private static bool IsLine(string? text, int most) => text?.Trim() is { Length: >= 1 } line && line.Length <= most && !line.Any(char.IsControl);

    private IQueryable<Job> Whole() => db.Set<Job>().AsNoTracking().AsSplitQuery()
        .Include(job => job.Needs).Include(job => job.Crews).ThenInclude(crew => crew.Places);

    private async Task<Job?> Found(Actor actor, JobId id) => OwnShop(actor) is { } shop
        ? await Whole().SingleOrDefaultAsync(job => job.Id == id && job.ShopId == shop)
        : null;

    private async Task<LocalDate> Today(Job job) => lines.Today(await db.Shops.AsNoTracking().SingleAsync(shop => shop.Id == job.ShopId));

    private async Task<List<HeldCompetency>> Histories(Job job)
    {
        var people = db.Users.AsNoTracking().Where(person => person.ShopId == job.ShopId);
        var needed = job.Needs.Select(need => need.Competency).ToHashSet();
        return [.. (await lines.Held(people)).Where(history => needed.Contains(history.Competency))];
    }

    private string Title(CompetencyId competency, List<HeldCompetency> histories) =>
        library.Current.Content.FindCompetency(competency)?.Title
        ?? histories.Find(history => history.Competency == competency)?.Records[^1].CompetencyTitle ?? competency.Value;

    private async Task<CrewConfirmed> Confirmed(Crew crew) => new(crew.ConfirmedAt, (await db.NamesOf([crew.ConfirmedById]))[crew.ConfirmedById]);

    private async Task<JobView> View(Job job)
    {
        var today = await Today(job);
        var histories = await Histories(job);
        var staff = histories.Select(history => new JobStaff(history, job.FirstDay, job.LastDay, today)).ToLookup(one => one.History.Competency);
        var needs = job.Needs.OrderBy(need => Title(need.Competency, histories), StringComparer.Ordinal).ToList();
        var crew = Newest(job);
        // Whoever holds longest is preferred: they are least likely to need anything before the job is over.
        var proposed = CrewProposal.Propose(
            [.. needs.Select(need => new CrewNeed(need.People, [.. staff[need.Competency].Where(one => one.May).OrderByDescending(one => one.Line.Standing!.Until)
                .ThenBy(one => one.Line.Name, StringComparer.Ordinal).Select(one => one.Line.Person)]))],
            job.SeparatePeople);
        var views = needs.Select((need, index) => NeedView(need, Title(need.Competency, histories), [.. staff[need.Competency]], proposed[index], crew));
        return new(Line(job), job.Work, job.SeparatePeople, today, [.. views], crew is null ? null : await Confirmed(crew));
    }

    private static JobNeedView NeedView(JobNeed need, string title, List<JobStaff> staff, IReadOnlyList<PersonId> proposed, Crew? crew)
    {
        bool IsConfirmed(JobStaff one) => crew?.Places.Any(place => place.Competency == need.Competency && place.PersonId == one.Line.Person) ?? false;
        var candidates = staff.Where(one => one.May || IsConfirmed(one))
            .Select(one => new CrewCandidate(one.Line, one.May, proposed.Contains(one.Line.Person), IsConfirmed(one)))
            .OrderBy(candidate => candidate.Record.Name, StringComparer.Ordinal).ToList();
        var nearest = proposed.Count >= need.People
            ? []
            : staff.Where(one => !proposed.Contains(one.Line.Person)).OrderBy(one => one.Lacks)
                .ThenByDescending(one => one.Line.Standing?.Until).ThenBy(one => one.Line.Name, StringComparer.Ordinal)
                .Take(MostNearest).Select(one => new NearMiss(one.Line, one.Lacks)).ToList();
        return new(need.Competency, title, need.People, candidates, nearest);
    }
}
