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

    /// <summary>How far the days of a job may lie from today: further away is a slip of the hand.</summary>
    private const int MostYearsAway = 10;

    private readonly TrainingDbContext db;
    private readonly Library library;
    private readonly JobBoard board;
    private readonly CustomerProofs proofs;
    private readonly TimeProvider clock;

    internal Jobs(TrainingDbContext db, Library library, JobBoard board, CustomerProofs proofs, TimeProvider clock) =>
        (this.db, this.library, this.board, this.proofs, this.clock) = (db, library, board, proofs, clock);

    /// <summary>The kinds of chassis that the procedures know.</summary>
    public IReadOnlyList<VariantId> Kinds =>
        [.. library.Current.Content.Procedures.SelectMany(procedure => procedure.Procedure.Variants).Distinct().OrderBy(kind => kind.Value, StringComparer.Ordinal)];

    /// <summary>The competencies that a job can need: those that are served.</summary>
    public IReadOnlyList<(CompetencyId Competency, string Title)> Competencies =>
        [.. library.Current.Content.Competencies.Select(competency => (competency.Id, competency.Title))];

    /// <summary>Keeps a job. The same one sent twice under its key is kept once.</summary>
    /// <param name="actor">The owner.</param>
    /// <param name="job">The job.</param>
    public async Task<Outcome<JobId, Refusal>> Make(Actor actor, NewJob job)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(job);
        if (JobBoard.OwnShop(actor) is not { } shop) return Refused.NotAllowed;
        if (WhyNot(job, await board.Today(shop)) is { } wrong) return wrong;
        await using var change = await db.BeginChange();
        var now = clock.Instant();
        var before = job.Key is { } key ? await board.Whole().SingleOrDefaultAsync(known => known.Id == key) : null;
        if (before is not null && before.ShopId == shop && IsSame(before, job)) return before.Id;
        var made = new Job
        {
            Id = before is null && job.Key is { } free ? free : JobId.New(now),
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
        if (JobBoard.OwnShop(actor) is not { } shop) return Refused.NotAllowed;
        var jobs = await board.Whole().Where(job => job.ShopId == shop).OrderByDescending(job => job.LastDay).ThenByDescending(job => job.Id).ToListAsync();
        var lost = await board.Lost(jobs, shop);
        return jobs.ConvertAll(job => JobBoard.Line(job) with { Lost = lost.GetValueOrDefault(job.Id) });
    }

    /// <summary>One job: who may do it on all its days, whom we propose, whom its owner confirmed.</summary>
    /// <param name="actor">The owner.</param>
    /// <param name="job">The job.</param>
    public async Task<Outcome<JobView, Refusal>> Look(Actor actor, JobId job)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return await board.Found(actor, job) is { } found ? await board.View(found) : Refused.NotFound;
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
        if (JobBoard.OwnShop(actor) is null) return Refused.NotFound;
        await using var change = await db.BeginChange();
        if (await board.Found(actor, job) is not { } found) return Refused.NotFound;
        var chosen = places.Distinct().ToList();
        if (found.Cancellation is not null) return IsCalledOff;
        if (chosen.Count == 0) return new Refusal("Choose at least one person.");
        if ((await board.Staffed(found)).WhyNot(chosen) is { } wrong) return wrong;
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
        return await board.View((await board.Found(actor, job))!);
    }

    /// <summary>Who was on the job and competent on one day, from what had happened to the records by the end of it.</summary>
    /// <param name="actor">The owner.</param>
    /// <param name="job">The job.</param>
    /// <param name="day">The day.</param>
    public async Task<Outcome<JobDay, Refusal>> On(Actor actor, JobId job, LocalDate day)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (await board.Found(actor, job) is not { } found) return Refused.NotFound;
        var shop = await db.Shops.AsNoTracking().SingleAsync(known => known.Id == found.ShopId);
        var crews = found.Crews.OrderBy(crew => crew.Number).ToList();
        var crew = crews.FindLast(known => known.ConfirmedAt.DayIn(shop) <= day) ?? crews.FirstOrDefault();
        var histories = await board.Histories(found.ShopId, found.Needs);
        var places = crew?.Places ?? [];
        var names = await db.NamesOf(places.Select(place => place.PersonId));
        return new JobDay(
            day,
            day >= found.FirstDay && day <= found.LastDay,
            crew is null ? null : await board.Confirmed(crew),
            crew is not null && crew.ConfirmedAt.DayIn(shop) <= day,
            [.. places.Select(place => new JobDayLine(
                    names[place.PersonId],
                    board.Title(place.Competency, histories),
                    Of(place)?.LineOn(day)?.Standing,
                    Of(place)?.HasLeftOn(day) ?? false))
                .OrderBy(line => line.Title, StringComparer.Ordinal).ThenBy(line => line.Name, StringComparer.Ordinal)],
            [.. histories.Where(of => of.MayOn(day) && !places.Any(place => place.PersonId == of.Person && place.Competency == of.Competency))
                .Select(of => of.LineOn(day)!)
                .OrderBy(line => line.CompetencyTitle, StringComparer.Ordinal).ThenBy(line => line.Name, StringComparer.Ordinal)]);

        HeldCompetency? Of(CrewPlace place) => histories.Find(of => of.Person == place.PersonId && of.Competency == place.Competency);
    }

    /// <summary>Makes a proof of the confirmed crew's records, for the job's customer.</summary>
    /// <param name="actor">The owner.</param>
    /// <param name="job">The job.</param>
    /// <param name="forWhom">What stands on the proof, made from the job in the owner's words.</param>
    public async Task<Outcome<ProofLine, Refusal>> Prove(Actor actor, JobId job, Func<JobLine, string> forWhom)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(forWhom);
        if (await board.Found(actor, job) is not { } found) return Refused.NotFound;
        if (found.Cancellation is not null) return IsCalledOff;
        if (JobBoard.Newest(found) is not { } crew) return new Refusal("Confirm the crew first; the proof shows it.");
        var today = await board.Today(found.ShopId);
        var records = (await board.Histories(found.ShopId, found.Needs)).Where(of => crew.Places.Any(place => place.PersonId == of.Person && place.Competency == of.Competency))
            .Select(of => of.LineOn(today)).OfType<RecordLine>().Select(line => line.Id).ToList();
        return await proofs.Make(actor, records, forWhom(JobBoard.Line(found)), found.Id);
    }

    /// <summary>
    /// Calls a job off (the owner who planned it, or another of the shop). It stays to be read, with its crews; nobody is
    /// reminded of it any more. Again changes nothing.
    /// </summary>
    /// <param name="actor">The owner.</param>
    /// <param name="job">The job.</param>
    public async Task<Outcome<JobView, Refusal>> CallOff(Actor actor, JobId job)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var change = await db.BeginChange();
        if (await board.Found(actor, job) is not { } found) return Refused.NotFound;
        if (found.Cancellation is null)
        {
            if (found.LastDay < await board.Today(found.ShopId)) return new Refusal("The job is over; it can no longer be called off.");
            db.Add(new JobCancellation { JobId = job, ById = actor.Person, At = clock.Instant() });
            await db.SaveChangesAsync();
            await change.CommitAsync();
        }

        return await board.View((await board.Found(actor, job))!);
    }

    private static Refusal IsCalledOff { get; } = new("The job was called off. Plan another one.");

    private static bool IsSame(Job made, NewJob job) =>
        (made.Customer, made.Chassis, made.Kind, made.FirstDay, made.LastDay, made.Work, made.SeparatePeople)
            == (job.Customer.Trim(), job.Chassis.Trim(), job.Kind, job.FirstDay, job.LastDay, job.Work.Trim(), job.SeparatePeople)
        && made.Needs.ToDictionary(need => need.Competency, need => need.People).ToHashSet().SetEquals(job.Needs.Where(need => need.Value > 0));

    private Refusal? WhyNot(NewJob job, LocalDate today)
    {
        if (!IsLine(job.Customer, 100)) return new("Name the customer in up to 100 characters on one line.") { About = nameof(job.Customer) };
        if (!IsLine(job.Chassis, 60)) return new("Name the vehicle in up to 60 characters on one line.") { About = nameof(job.Chassis) };
        if (!Kinds.Contains(job.Kind)) return new("Choose the kind of chassis.") { About = nameof(job.Kind) };
        if (job.FirstDay < today.PlusYears(-MostYearsAway) || job.LastDay > today.PlusYears(MostYearsAway))
        {
            return new($"The days of a job lie at most {MostYearsAway} years from today; look at the year.")
            {
                About = job.FirstDay < today.PlusYears(-MostYearsAway) ? nameof(job.FirstDay) : nameof(job.LastDay),
            };
        }

        if (job.LastDay < job.FirstDay) return new("The last day is before the first.") { About = nameof(job.LastDay) };
        if (NodaTime.Period.DaysBetween(job.FirstDay, job.LastDay) >= MostDays) return new($"A job lasts {MostDays} days at most.") { About = nameof(job.LastDay) };
        if (job.Work?.Trim() is not { Length: >= 1 and <= 2000 }) return new("Say in up to 2000 characters what is done.") { About = nameof(job.Work) };
        if (job.Needs.Where(need => need.Value is < 0 or > MostPeople).Select(need => need.Key.Value).FirstOrDefault() is { } competency)
            return new($"A job needs from 0 to {MostPeople} people for each; write a whole number.") { About = $"people-{competency}" };
        if (job.Needs.Values.All(people => people == 0)) return new("Say for at least one competency how many people are needed.");
        return job.Needs.Keys.All(needed => library.Current.Content.FindCompetency(needed) is not null) ? null : Refused.NotFound;
    }

    private static bool IsLine(string? text, int most) => text?.Trim() is { Length: >= 1 } line && line.Length <= most && !line.Any(char.IsControl);
}
