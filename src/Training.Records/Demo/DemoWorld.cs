using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Training.Content;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Covering;
using Training.Records.Issuers;
using Training.Records.Learning;
using Training.Records.Publishing;
using Training.Records.Staffing;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Demo;

/// <summary>
/// An invented world to try things in: Eastvale Training Centre's staff, the shops Quillmoor Coachworks and Brackenhill
/// Bodyworks and their people, with records in varied states.
/// </summary>
public sealed class DemoWorld
{
    /// <summary>The password of everybody in the demo.</summary>
    public const string Password = "a bare chassis at dawn";

    // What its people hold and sit for; where the content has no such competency, its first.
    private static readonly CompetencyId Held = new("electrical-isolation");

    private readonly TrainingDbContext db;
    private readonly TimeProvider clock;
    private readonly IssuerPlace place;

    /// <summary>Made by the host's services.</summary>
    public DemoWorld(TrainingDbContext db, TimeProvider clock, IssuerPlace place) =>
        (this.db, this.clock, this.place) = (db, clock, place);

    /// <summary>Everybody who can sign in, for the console and the sign-in page in Development.</summary>
    public static IReadOnlyList<DemoSignIn> SignIns => DemoPeople.All;

    /// <summary>
    /// Fills an empty database through the services, as if months had passed; a database with anybody in it stays as it
    /// is. To be called before the content folder is published otherwise.
    /// </summary>
    /// <param name="files">The content to publish and to examine by.</param>
    /// <returns>Whether anything was added; nothing is where the content has an error or no competency.</returns>
    public async Task<bool> Seed(IReadOnlyList<ContentFile> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        if (await db.Users.AnyAsync()) return false;
        if (ContentReader.Read(files).Library is not { Competencies: [var first, ..] } content) return false;
        await using var past = Past(db.Database.GetConnectionString()!, place, out var pastClock);
        await using var scope = past.CreateAsyncScope();
        var history = new DemoHistory(scope.ServiceProvider, pastClock);
        await history.Live(files, content.FindCompetency(Held) ?? first, clock.Instant());
        return true;
    }

    /// <summary>The same services on the same database and for the same issuer, with a clock of their own.</summary>
    private static ServiceProvider Past(string connectionString, IssuerPlace place, out DemoClock clock)
    {
        clock = new();
        var services = new ServiceCollection();
        services.AddSingleton<TimeProvider>(clock);
        services.AddSingleton(place);
        services.AddLogging();
        services.AddTrainingRecords(connectionString);
        services.AddIdentityCore<Person>(options => options.Password = new PasswordOptions
        {
            RequiredLength = 15,
            RequireDigit = false,
            RequireLowercase = false,
            RequireNonAlphanumeric = false,
            RequireUppercase = false,
        }).AddRoles<Role>().AddEntityFrameworkStores<TrainingDbContext>();
        // Everybody is told this password; hashing it a hundred thousand times a person would only make the start slow.
        services.Configure<PasswordHasherOptions>(options => options.IterationCount = 1000);
        return services.BuildServiceProvider();
    }
}

/// <summary>A clock that stands where the history has come to.</summary>
internal sealed class DemoClock : TimeProvider
{
    public Instant At { get; set; }

    public override DateTimeOffset GetUtcNow() => At.ToDateTimeOffset();
}

/// <summary>What happened in the demo's world, in order.</summary>
internal sealed class DemoHistory(IServiceProvider services, DemoClock clock)
{
    private readonly Dictionary<DemoSignIn, Actor> actors = [];
    private DemoExaminations examinations = null!;

    public async Task Live(IReadOnlyList<ContentFile> files, Competency competency, Instant now)
    {
        var morning = now - NodaTime.Duration.FromHours(3);
        var whole = competency.ValidFor;
        clock.At = MonthsBefore(morning, whole.Months, whole.Days + 60);
        await services.GetRequiredService<Publisher>().Publish(files);
        await AddPeople();
        examinations = new(services, clock, actors[DemoPeople.SittingExaminer], actors[DemoPeople.RunExaminer]);

        List<(Instant At, Func<Task> Happens)> events =
        [
            (MonthsBefore(morning, whole.Months, whole.Days + 20), () => Earns(DemoPeople.Expired)),
            (MonthsBefore(morning, whole.Months, whole.Days - 40), () => Earns(DemoPeople.Due)),
            (MonthsBefore(morning, 10, 0), () => Earns(DemoPeople.OtherCurrent)),
            (MonthsBefore(morning, 8, 0), () => Earns(DemoPeople.Suspended)),
            (MonthsBefore(morning, 5, 0), () => Earns(DemoPeople.Current)),
            (MonthsBefore(morning, 2, 0), () => Earns(DemoPeople.Foreman)),
            .. EarningOfTheCrew(morning, competency.Id),
            (MonthsBefore(morning, 0, 12), () => IsSuspended(DemoPeople.Suspended)),
            (MonthsBefore(morning, 0, 10), () => Needs(competency.Id, 8)),
            (MonthsBefore(morning, 0, 1), () => Plans(competency.Id)),
            (MonthsBefore(morning, 0, 4), () => BeginsToPractise(DemoPeople.Awaiting)),
            (MonthsBefore(morning, 0, 3), () => Learns(DemoPeople.Awaiting, competency)),
            (MonthsBefore(morning, 0, 2), () => examinations.PassPaper(actors[DemoPeople.Awaiting], competency.Id)),
        ];
        foreach (var (at, happens) in events.OrderBy(entry => entry.At))
        {
            clock.At = at;
            await happens();
        }

        async Task Earns(DemoSignIn person)
        {
            await BeginsToPractise(person);
            await Passes(person, competency);
        }
    }

    /// <summary>
    /// What the crew earned, who were examined without having practised here: all hold the competency that the demo is
    /// about, some hold others. What the content does not have is left out.
    /// </summary>
    private IEnumerable<(Instant At, Func<Task> Happens)> EarningOfTheCrew(Instant morning, CompetencyId held)
    {
        var (batteries, hotWork) = (new CompetencyId("batteries"), new CompetencyId("hot-work-and-paint"));
        (string Who, CompetencyId What, int Months, int Days)[] earned =
        [
            ("nikau", held, 19, 4), ("ioana", held, 14, 11), ("tenzin", held, 11, 20), ("kwabena", held, 9, 2), ("yasmin", held, 7, 15),
            ("tenzin", batteries, 11, 6), ("kwabena", hotWork, 9, 1), ("ioana", hotWork, 5, 10),
        ];
        foreach (var (who, what, months, days) in earned)
            if (services.GetRequiredService<Library>().Current.Content.FindCompetency(what) is { } competency)
                yield return (MonthsBefore(morning, months, days), () => Passes(Of(who), competency));
        if (services.GetRequiredService<Library>().Current.Content.FindCompetency(hotWork) is not null)
        {
            yield return (MonthsBefore(morning, 4, 0), () => IsConfirmed(Of("kwabena"), hotWork));
            yield return (MonthsBefore(morning, 0, 9), () => Needs(hotWork, 2));
        }

        static DemoSignIn Of(string userName) => DemoPeople.Crew.Single(person => person.UserName == userName);
    }

    private async Task Passes(DemoSignIn person, Competency competency)
    {
        await examinations.PassPaper(actors[person], competency.Id);
        await examinations.PassRuns(actors[person], competency);
    }

    /// <summary>The value of what the demo's own people did; a refusal would be a fault of the demo.</summary>
    public static T Done<T>(Outcome<T, Refusal> outcome) =>
        outcome.Match(value => value, refusal => throw new InvalidOperationException($"The demo was refused: {refusal}"));

    private static Instant MonthsBefore(Instant at, int months, int days) =>
        at.InUtc().LocalDateTime.PlusMonths(-months).PlusDays(-days).InUtc().ToInstant();

    private async Task AddPeople()
    {
        var people = services.GetRequiredService<People>();
        var first = DemoPeople.Administrator;
        var administrator = await Actor(Done(await people.AddFirstAdministrator(first.DisplayName, first.UserName, first.Password)));
        actors[first] = administrator;
        var shops = new Dictionary<string, ShopId?>
        {
            [DemoPeople.Provider] = null,
            [DemoPeople.Quillmoor] = Done(await people.AddShop(administrator, DemoPeople.Quillmoor, "Europe/London")),
            [DemoPeople.Brackenhill] = Done(await people.AddShop(administrator, DemoPeople.Brackenhill, "Europe/Dublin")),
        };
        foreach (var person in DemoPeople.All.Concat(DemoPeople.Crew).Where(person => person != first))
        {
            var added = Done(await people.Add(
                administrator, new(person.DisplayName, person.UserName, shops[person.Place], person.Roles)));
            var actor = await Actor(added.Person);
            Done(await people.ChoosePassword(actor, added.OneTimePassword, person.Password));
            actors[person] = actor;
        }

        async Task<Actor> Actor(PersonId id) => (await people.ActorOf(id))!;
    }

    private Task BeginsToPractise(DemoSignIn person) => new DemoPractice(services, clock).Begin(person, actors[person]);

    private async Task IsSuspended(DemoSignIn person)
    {
        var records = services.GetRequiredService<CompetencyRecords>();
        var record = Done(await records.Of(actors[DemoPeople.Owner], actors[person].Person))[0];
        Done(await records.Suspend(actors[DemoPeople.Owner], record.Id, "Back from long sick leave; to be watched at the vehicle first."));
    }

    private async Task IsConfirmed(DemoSignIn person, CompetencyId competency)
    {
        var records = services.GetRequiredService<CompetencyRecords>();
        var record = Done(await records.Of(actors[DemoPeople.Owner], actors[person].Person)).Single(line => line.Competency == competency);
        Done(await records.Confirm(actors[DemoPeople.Owner], record.Id, "Made K26-0131 ready for the crane brackets and kept the fire watch; I was there."));
    }

    private async Task Needs(CompetencyId competency, int people) => Done(await services.GetRequiredService<Coverage>()
        .SetNeeds(actors[DemoPeople.Owner], new Dictionary<CompetencyId, int> { [competency] = people }));

    /// <summary>A job that begins tomorrow, with a crew of two.</summary>
    private async Task Plans(CompetencyId competency)
    {
        var jobs = services.GetRequiredService<Jobs>();
        var owner = actors[DemoPeople.Owner];
        var today = clock.At.InUtc().Date;
        var job = Done(await jobs.Make(owner, new(
            "Larkfield Haulage", "K26-0142", jobs.Kinds[^1], today.PlusDays(2), today.PlusDays(9),
            "Refrigerated box: batteries out, weld-on brackets, batteries back.",
            new Dictionary<CompetencyId, int> { [competency] = 2 }, SeparatePeople: false)));
        var places = Done(await jobs.Look(owner, job)).Needs
            .SelectMany(need => need.Candidates.Where(candidate => candidate.IsProposed).Select(candidate => (need.Competency, candidate.Record.Person)));
        Done(await jobs.Confirm(owner, job, [.. places]));
    }

    private async Task Learns(DemoSignIn person, Competency competency)
    {
        var reading = services.GetRequiredService<Reading>();
        foreach (var module in competency.Modules) Done(await reading.Finish(actors[person], module));
        foreach (var draw in competency.Paper.Questions)
            await examinations.Practise(actors[person], draw.From[0], draw.Kind);
    }
}
