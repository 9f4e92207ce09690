using System.Text;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Demo;
using Training.Records.Examining;
using Training.Records.Observing;
using Training.Records.Overviews;
using Training.Records.Practising;
using Training.Records.Proving;
using Training.Records.Publishing;
using Training.Records.Staffing;
using Training.Records.Writing;
using Training.Sequencing;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Doors;

/// <summary>A house with things of Quillmoor Coachworks behind its doors, and somebody of Brackenhill Bodyworks who may do all that a shop's person can.</summary>
public sealed class DoorsHouse : IAsyncLifetime
{
    /// <summary>The name for signing in of somebody of the other shop.</summary>
    public const string Foreigner = "ines";

    /// <summary>What the foreigner may do.</summary>
    public static readonly string[] ForeignRoles = [Roles.Technician, Roles.Examiner, Roles.Owner];

    private readonly Dictionary<string, string> examples = [];

    public TrainingHouse House { get; } = new();

    /// <summary>What stands for each parameter of an address: things of Quillmoor Coachworks, and of the content.</summary>
    public IReadOnlyDictionary<string, string> Examples => examples;

    /// <summary>The parameters that name things of one shop.</summary>
    public static IReadOnlyList<string> ShopsOwn { get; } = ["person", "record", "run", "proof", "paper", "sitting", "id", "job"];

    /// <summary>Fields with which a form would do something to Quillmoor's things.</summary>
    public (string, string)[] Fields { get; private set; } = [];

    public async ValueTask InitializeAsync()
    {
        await using var scope = House.Services.CreateAsyncScope();
        T The<T>() where T : notnull => scope.ServiceProvider.GetRequiredService<T>();
        var people = The<People>();
        var competency = The<Library>().Current.Content.FindCompetency(new("electrical-isolation"))!;
        var ifeoma = await ActorOf("ifeoma");
        var hollis = await ActorOf("hollis");
        var renske = await ActorOf("renske");
        var mateo = await ActorOf("mateo");
        var rania = await ActorOf("rania");
        var amara = await ActorOf("amara");
        var shops = await people.Shops(ifeoma);
        var added = Ok(await people.Add(ifeoma, new("Ines Duarte", Foreigner, shops.Single(shop => shop.Name.StartsWith("Brackenhill", StringComparison.Ordinal)).Id, ForeignRoles)));
        Ok(await people.ChoosePassword((await people.ActorOf(added.Person))!, added.OneTimePassword, DemoWorld.Password));

        var record = Ok(await The<Overview>().WhoMayDoWhat(hollis)).Rows.SelectMany(row => row.Records).OfType<RecordLine>()
            .First(line => line.Standing is { State: RecordState.Current });
        var proof = Ok(await The<CustomerProofs>().Make(hollis, [record.Id], "Larkfield Haulage"));
        var sitting = Ok(await The<Sittings>().Open(renske, competency.Id, "Bay 3"));
        var paper = Ok(await The<Sittings>().Admit(renske, sitting, amara.Person));
        var toDo = Ok(await The<Runs>().ToDo(mateo)).First(line => line.Technician == rania.Person);
        var run = Ok(await The<Runs>().Start(mateo, new(rania.Person, toDo.Competency, toDo.Procedure, toDo.Variants[0], "L18-0427")));
        var practised = Ok(await The<Practice>().Of(rania, rania.Person));
        var content = The<Library>().Current.Content;
        var job = Ok(await The<Jobs>().List(hollis))[0].Id;

        var draft = Ok(await The<Drafts>().Begin(await ActorOf("tomasz"), content.Procedures[0].File.Path));

        foreach (var (name, value) in new (string, object)[]
        {
            ("draft", draft),
            ("person", amara.Person), ("record", record.Id), ("run", run), ("proof", proof.Id), ("token", proof.Token), ("paper", paper),
            ("sitting", sitting), ("job", job), ("id", practised[0].Id), ("number", 1), ("index", 0), ("credential", record.Id), ("code", 404), ("module", content.Modules[0].Id),
            ("scenario", content.Scenarios[0].Id), ("name", "nothing.svg"), ("procedure", "isolate-chassis"), ("kind", "rule"), ("subject", "told-first"), ("order", "0000"), ("measure", "voltage-drop"), ("competency", competency.Id),
        }) examples.Add(name, value.ToString()!);
        Fields =
        [
            ("reason", "To see whether it is let through."), ("work", "To see whether it is let through."), ("sure", "yes"), ("note", ""), ("id", Guid.NewGuid().ToString()), ("seconds", "1"),
            ("step", content.FindProcedure(toDo.Procedure)!.Procedure.Steps[0].Id.Value), ("person", rania.Person.ToString()),
            ("Technician", rania.Person.ToString()), ("Competency", toDo.Competency.Value), ("Procedure", toDo.Procedure.Value),
            ("Variant", toDo.Variants[0].Value), ("Chassis", "K26-1"), ("Records", record.Id.ToString()), ("places", $"{toDo.Competency}/{amara.Person}"),
        ];

        async Task<Actor> ActorOf(string userName)
        {
            var user = await The<Microsoft.AspNetCore.Identity.UserManager<Person>>().FindByNameAsync(userName);
            return (await people.ActorOf(user!.Id))!;
        }
    }

    /// <summary>Everything that the database holds, as text.</summary>
    public string Held()
    {
        using var connection = new SqliteConnection($"Data Source={House.Services.GetRequiredService<Startup.House>().Database};Mode=ReadOnly");
        connection.Open();
        var held = new StringBuilder();
        foreach (var table in Rows(connection, "SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name"))
            foreach (var row in Rows(connection, $"SELECT * FROM \"{table}\" ORDER BY 1, 2"))
                held.Append(table).Append(": ").AppendLine(row);
        Assert.True(held.Length > 10_000, "The database is all but empty.");
        return held.ToString();
    }

    public async ValueTask DisposeAsync() => await House.DisposeAsync();

    private static List<string> Rows(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        using var reader = command.ExecuteReader();
        var rows = new List<string>();
        while (reader.Read())
            rows.Add(string.Join("|", Enumerable.Range(0, reader.FieldCount).Select(field => reader.IsDBNull(field) ? "" : reader.GetValue(field).ToString())));
        return rows;
    }

    private static T Ok<T>(Outcome<T, Refusal> outcome) => outcome.Match(value => value, refusal => throw new InvalidOperationException(refusal.Sentence));
}
