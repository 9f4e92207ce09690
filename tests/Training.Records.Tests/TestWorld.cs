using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using Training.Content;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Covering;
using Training.Records.Examining;
using Training.Records.Issuers;
using Training.Records.Learning;
using Training.Records.Observing;
using Training.Records.Overviews;
using Training.Records.Practising;
using Training.Records.Proving;
using Training.Records.Publishing;
using Training.Records.Staffing;
using Training.Records.Storage;
using Training.Sequencing;
using Training.Sequencing.Procedures;

namespace Training.Records.Tests;

/// <summary>
/// A provider and two shops on a SQLite file of their own, with a clock that stands. Every call takes a scope of its own, as a request does.
/// </summary>
public sealed class TestWorld : IAsyncDisposable
{
    public static readonly CompetencyId RelayTrays = new("relay-trays");
    public static readonly CompetencyId TrayTheory = new("tray-theory");
    public static readonly ProcedureId ChangeTray = new("change-tray");
    public static readonly ProcedureId StowTray = new("stow-tray");
    public static readonly VariantId Crane = new("crane");

    private readonly string folder = Directory.CreateTempSubdirectory("records-").FullName;
    private ServiceProvider services;

    // Making the people takes longer than most tests; it is done once, and every test has a copy of the file.
    private static readonly Lazy<Task<TestWorld>> Template = new(async () =>
    {
        var template = await Begin();
        await template.services.DisposeAsync();
        return template;
    });

    private TestWorld() => services = Build();

    private TestWorld(TestWorld template) : this()
    {
        File.Copy(template.DatabaseFile, DatabaseFile);
        (Quillmoor, Brackenhill) = (template.Quillmoor, template.Brackenhill);
        (Administrator, Trainer, Examiner, OtherExaminer) =
            (template.Administrator, template.Trainer, template.Examiner, template.OtherExaminer);
        (Owner, Technician, Colleague, ShopExaminer) = (template.Owner, template.Technician, template.Colleague, template.ShopExaminer);
        (ForeignOwner, ForeignTechnician, ForeignExaminer) =
            (template.ForeignOwner, template.ForeignTechnician, template.ForeignExaminer);
    }

    public ManualClock Clock { get; } = new(new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero));

    public string DatabaseFile => Path.Combine(folder, "training.db");

    public string KeyFile => Path.Combine(folder, "signing.key");

    /// <summary>Where the provider is reached; null where that is not set.</summary>
    public string? Address { get; set; } = "https://eastvale.example";

    public string ConnectionString => $"Data Source={DatabaseFile};Pooling=False";

    public ShopId Quillmoor { get; private set; }

    public ShopId Brackenhill { get; private set; }

    public Actor Administrator { get; private set; } = null!;

    public Actor Trainer { get; private set; } = null!;

    public Actor Examiner { get; private set; } = null!;

    public Actor OtherExaminer { get; private set; } = null!;

    public Actor Owner { get; private set; } = null!;

    public Actor Technician { get; private set; } = null!;

    public Actor Colleague { get; private set; } = null!;

    /// <summary>An examiner of Quillmoor who is a technician there, too.</summary>
    public Actor ShopExaminer { get; private set; } = null!;

    public Actor ForeignOwner { get; private set; } = null!;

    public Actor ForeignTechnician { get; private set; } = null!;

    /// <summary>Somebody of the other shop who has every role that a shop's person can have.</summary>
    public Actor ForeignExaminer { get; private set; } = null!;

    public static IReadOnlyList<ContentFile> Files { get; } =
        ContentFolder.Read(Path.Combine(AppContext.BaseDirectory, "Data", "content"));

    /// <summary>The files with one text changed.</summary>
    public static IReadOnlyList<ContentFile> FilesWith(string path, string from, string to)
    {
        Assert.Contains(Files, file => file.Path == path && file.Text.Contains(from, StringComparison.Ordinal));
        return [.. Files.Select(file => file.Path == path ? file with { Text = file.Text.Replace(from, to, StringComparison.Ordinal) } : file)];
    }

    public static async Task<TestWorld> Create()
    {
        var world = new TestWorld(await Template.Value);
        // The template was prepared: asking every copy whether its schema is the model's would take longer than most tests.
        await world.One<Publisher>().Restore();
        return world;
    }

    /// <summary>A database that nobody has touched.</summary>
    public static async Task<TestWorld> Empty()
    {
        var world = new TestWorld();
        await world.services.PrepareTrainingRecords();
        return world;
    }

    private static async Task<TestWorld> Begin()
    {
        var world = new TestWorld();
        await world.services.PrepareTrainingRecords();
        await world.services.GetRequiredService<Publisher>().Publish(Files);
        var first = Ok(await world.With<People, Outcome<PersonId, Refusal>>(
            people => people.AddFirstAdministrator("Ifeoma Adeyemi", "ifeoma", "long enough to begin")));
        world.Administrator = await world.ActorOf(first);
        world.Quillmoor = Ok(await world.With<People, Outcome<ShopId, Refusal>>(
            people => people.AddShop(world.Administrator, "Quillmoor Coachworks", "Europe/London")));
        world.Brackenhill = Ok(await world.With<People, Outcome<ShopId, Refusal>>(
            people => people.AddShop(world.Administrator, "Brackenhill Bodyworks", "America/New_York")));
        world.Trainer = await world.Add("Tomasz Zielinski", "tomasz", null, Roles.Trainer);
        world.Examiner = await world.Add("Renske de Boer", "renske", null, Roles.Examiner);
        world.OtherExaminer = await world.Add("Mateo Quispe", "mateo", null, Roles.Examiner);
        world.Owner = await world.Add("Hollis Penrose", "hollis", world.Quillmoor, Roles.Owner);
        world.Technician = await world.Add("Amara Okafor", "amara", world.Quillmoor, Roles.Technician);
        world.Colleague = await world.Add("Bao Nguyen", "bao", world.Quillmoor, Roles.Technician);
        world.ShopExaminer = await world.Add("Leila Haddad", "leila", world.Quillmoor, Roles.Examiner, Roles.Technician);
        world.ForeignOwner = await world.Add("Signe Dahl", "signe", world.Brackenhill, Roles.Owner);
        world.ForeignTechnician = await world.Add("Kofi Mensah", "kofi", world.Brackenhill, Roles.Technician);
        world.ForeignExaminer = await world.Add("Ines Duarte", "ines", world.Brackenhill, Roles.Examiner, Roles.Owner, Roles.Technician);
        return world;
    }

    public static T Ok<T>(Outcome<T, Refusal> outcome) => outcome.Match(value => value, refusal =>
    {
        Assert.Fail($"Refused: {refusal}");
        return default(T)!;
    });

    public static void Refused<T>(Outcome<T, Refusal> outcome, string sentence)
    {
        Assert.False(outcome.IsOk, $"Not refused, though: {sentence}");
        Assert.Equal(sentence, outcome.Fault.Sentence);
    }

    public static void NotFound<T>(Outcome<T, Refusal> outcome) => Refused(outcome, global::Training.Records.Refused.NotFound.Sentence);

    public static void NotAllowed<T>(Outcome<T, Refusal> outcome) => Refused(outcome, global::Training.Records.Refused.NotAllowed.Sentence);

    public async Task<TResult> With<TService, TResult>(Func<TService, Task<TResult>> ask) where TService : notnull
    {
        await using var scope = services.CreateAsyncScope();
        return await ask(scope.ServiceProvider.GetRequiredService<TService>());
    }

    public Task<T> Sittings<T>(Func<Sittings, Task<T>> ask) => With(ask);

    public Task<T> Papers<T>(Func<Papers, Task<T>> ask) => With(ask);

    public Task<T> Runs<T>(Func<Runs, Task<T>> ask) => With(ask);

    public Task<T> Records<T>(Func<CompetencyRecords, Task<T>> ask) => With(ask);

    public Task<T> Proofs<T>(Func<CustomerProofs, Task<T>> ask) => With(ask);

    public Task<T> People<T>(Func<People, Task<T>> ask) => With(ask);

    public Task<T> Practice<T>(Func<Practice, Task<T>> ask) => With(ask);

    public Task<T> Reading<T>(Func<Reading, Task<T>> ask) => With(ask);

    public Task<T> Coverage<T>(Func<Coverage, Task<T>> ask) => With(ask);

    public Task<T> Jobs<T>(Func<Jobs, Task<T>> ask) => With(ask);

    public Task<T> Overview<T>(Func<Overview, Task<T>> ask) => With(ask);

    internal Task<T> Db<T>(Func<TrainingDbContext, Task<T>> ask) => With(ask);

    public T One<T>() where T : notnull => services.GetRequiredService<T>();

    /// <summary>Publishes the files with one text changed.</summary>
    public async Task Republish(string path, string from, string to)
    {
        var state = await One<Publisher>().Publish(FilesWith(path, from, to));
        Assert.False(state.IsHeldBack, string.Join('\n', state.Problems));
    }

    /// <summary>Stops the process, as it were, and starts it again on the same file.</summary>
    public async Task Restart()
    {
        await services.DisposeAsync();
        services = Build();
        await services.PrepareTrainingRecords();
    }

    public async Task<Actor> Add(string name, string userName, ShopId? shop, params string[] roles)
    {
        var added = Ok(await People(people => people.Add(Administrator, new(name, userName, shop, roles))));
        return await ActorOf(added.Person);
    }

    public async Task<Actor> ActorOf(PersonId person) =>
        await With<People, Actor?>(people => people.ActorOf(person)) ?? throw new InvalidOperationException("Nobody.");

    public async ValueTask DisposeAsync()
    {
        await services.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    private ServiceProvider Build()
    {
        var collection = new ServiceCollection();
        collection.AddSingleton<TimeProvider>(Clock);
        // One and the same for all tests, or the model is built anew for each.
        collection.AddSingleton<ILoggerFactory>(NullLoggerFactory.Instance);
        collection.AddLogging();
        collection.AddTrainingRecords(ConnectionString);
        collection.AddSingleton(new IssuerPlace("Eastvale Training Centre", KeyFile, () => Address is null
            ? new Refusal("No address is set.")
            : ProviderAddress.Read(Address)));
        collection.AddIdentityCore<Person>(options =>
        {
            options.Password = new PasswordOptions
            {
                RequiredLength = 15,
                RequireDigit = false,
                RequireLowercase = false,
                RequireNonAlphanumeric = false,
                RequireUppercase = false,
            };
        }).AddRoles<Role>().AddEntityFrameworkStores<TrainingDbContext>();
        // These passwords guard nothing.
        collection.Configure<PasswordHasherOptions>(options => options.IterationCount = 1);
        return collection.BuildServiceProvider(new ServiceProviderOptions { ValidateScopes = true, ValidateOnBuild = true });
    }
}
