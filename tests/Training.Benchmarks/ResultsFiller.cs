using System.Text.Json;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Training.Content.Scenarios;
using Training.Records;
using Training.Records.Asking;
using Training.Records.Practising;
using Training.Records.Publishing;
using Training.Records.Results;
using Training.Records.Storage;
using Training.Sequencing.Answers;
using Training.Sequencing.Json;
using Duration = NodaTime.Duration;

namespace Training.Benchmarks;

/// <summary>Fills a database as years of practice would leave it, in one go: rows by prepared statements, tallies by the records' own law.</summary>
internal sealed class ResultsFiller(IServiceProvider services)
{
    private const int ShopCount = 5000;
    private const int AnswersEach = 60;
    private const int JobsEach = 6;
    private const int RunsByTwo = 20_000;

    // Whether no two answers are the same text, as if nobody ever gave an order that somebody gave before.
    private static readonly bool AreAllDistinct = Environment.GetEnvironmentVariable("RESULTS_DISTINCT") == "1";
    private readonly Random random = new(20261125);

    public async Task<Filled> Fill(int people, int answers)
    {
        var now = Instant.FromUtc(2026, 11, 25, 12, 0);
        await using var scope = services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<TrainingDbContext>();
        var templates = await Templates(scope.ServiceProvider, now);
        await db.Database.OpenConnectionAsync();
        var connection = (SqliteConnection)db.Database.GetDbConnection();
        // Nobody else is there, and what is lost is filled again.
        Tell(connection, "PRAGMA journal_mode = OFF; PRAGMA synchronous = OFF; PRAGMA cache_size = -500000; PRAGMA foreign_keys = OFF;");
        await using var change = await connection.BeginTransactionAsync();
        var shops = Enumerable.Range(0, ShopCount).Select(_ => ShopId.New(now)).ToList();
        foreach (var (number, shop) in shops.Index())
            Insert(connection, "Shops", ("Id", shop.Value), ("Name", $"Shop {number:0000}"), ("TimeZone", "Europe/London"), ("AddedAt", now.ToUnixTimeTicks()));
        var persons = Enumerable.Range(0, people).Select(number => (Id: PersonId.New(now), Shop: shops[number % ShopCount], Language: (number % 7) switch { 0 => "hi", 1 or 2 => "es", _ => "en" })).ToList();
        var trainer = PersonId.New(now);
        foreach (var (number, person) in persons.Append((trainer, default, "en")).Index())
            Insert(connection, "AspNetUsers", ("Id", person.Item1.Value), ("DisplayName", $"Person {number}"), ("UserName", $"person-{number}"), ("NormalizedUserName", $"PERSON-{number}"),
                ("ShopId", person.Item1 == trainer ? null : person.Item2.Value), ("Language", person.Item3), ("HasOneTimePassword", 0), ("AddedAt", now.ToUnixTimeTicks()),
                ("EmailConfirmed", 0), ("PhoneNumberConfirmed", 0), ("TwoFactorEnabled", 0), ("LockoutEnabled", 0), ("AccessFailedCount", 0));
        var made = new List<object>();
        var sheets = new TallySheets { Added = made.Add };
        var first = now - Duration.FromDays(1000);
        for (var number = 0; number < answers; number++)
        {
            // People come one after another and each has some jobs that they practise again and again; easy faults are common, odd ones rare.
            var at0 = (int)((long)number * people / answers);
            var person = persons[at0];
            var of = templates[(at0 + random.Next(JobsEach)) % templates.Count];
            var template = of[(int)(of.Count * Math.Pow(random.NextDouble(), 3))];
            var at = first + (now - first) * ((double)number / answers);
            var id = PracticeId.New(at);
            Insert(connection, "PracticeTries", ("Id", id.Value), ("PersonId", person.Id.Value), ("Key", Guid.NewGuid()), ("Scenario", template.Try.Scenario.Value),
                ("Kind", template.Try.Kind.ToString()), ("PublicationNumber", 1), ("Seed", template.Try.Seed), ("ScenarioHash", template.Try.ScenarioHash.Hex),
                ("ProcedureHash", template.Work.ProcedureHash.Hex), ("AnswerJson", AreAllDistinct ? Distinct(template.Try.AnswerJson, number) : template.Try.AnswerJson), ("Accepted", template.Try.Accepted ? 1 : 0),
                ("Safe", template.Try.Safe ? 1 : 0), ("Score", template.Try.Score.ToString(System.Globalization.CultureInfo.InvariantCulture)), ("At", at.ToUnixTimeTicks()), ("Language", person.Language));
            sheets.Count(template.Work with { Person = person.Id, Shop = person.Shop, Language = person.Language, At = at, Place = new(id.Value, 0) });
        }

        foreach (var sheet in made) Insert(connection, sheet);
        Papers(connection, people);
        await Runs(connection, persons, trainer, now);
        await change.CommitAsync();
        Tell(connection, "PRAGMA journal_mode = WAL; PRAGMA foreign_keys = ON;");
        await db.Database.CloseConnectionAsync();
        SqliteConnection.ClearAllPools();
        return new(trainer, shops[17], persons[17].Id, sheets.Tallies.Count, sheets.Orders.Count);
    }

    /// <summary>Answers to every scenario that asks for an order: a right one, and it spoilt in many ways, each judged once.</summary>
    private async Task<List<List<(PracticeTry Try, GradedWork Work)>>> Templates(IServiceProvider scope, Instant now)
    {
        var library = services.GetRequiredService<Library>().Current;
        var tallies = scope.GetRequiredService<Tallies>();
        var templates = new List<List<(PracticeTry, GradedWork)>>();
        foreach (var scenario in library.Content.Scenarios)
            foreach (var kind in scenario.Kinds.Where(kind => kind is QuestionKind.Order or QuestionKind.Finish))
            {
                var answers = new List<(PracticeTry, GradedWork)>();
                for (var number = 0; number < AnswersEach; number++)
                {
                    var question = (await services.GetRequiredService<Questions>().Draw(library, scenario.Id, kind, new(number))).Value;
                    var json = AnswerJson.Write(Spoilt(AnswerJson.Parse(question.RightAnswer()).Value, question, number));
                    var judged = question.Judge(json, "en");
                    var attempt = new PracticeTry
                    {
                        Id = default,
                        PersonId = default,
                        Key = default,
                        Scenario = scenario.Id,
                        Kind = kind,
                        PublicationNumber = 1,
                        Seed = number,
                        ScenarioHash = scenario.Text.File.Hash,
                        ProcedureHash = question.Written!.File.Hash,
                        AnswerJson = json,
                        Accepted = judged.Accepted,
                        Safe = judged.Safe,
                        Score = judged.Score,
                        At = now,
                    };
                    answers.Add((attempt, await tallies.WorkOf(new(default, null, null), JudgedWork.Of(WorkSource.Practice, question, judged, default)!, now)));
                }

                templates.Add(answers);
            }

        return templates;
    }

    private Answer Spoilt(Answer right, Question question, int number)
    {
        var entries = right.Entries.ToList();
        for (var change = 0; change < (number + 5) / 10; change++)
        {
            var (from, to) = (random.Next(entries.Count), random.Next(entries.Count));
            var moved = entries[from];
            entries.RemoveAt(from);
            if (random.Next(6) > 0) entries.Insert(Math.Min(to, entries.Count), moved);
            if (entries.Count < 2) return right;
        }

        var decoys = question.View("en").Offered.Where(offer => !offer.IsWait && right.Entries.All(entry => entry.Step != offer.Id)).ToList();
        if (number % 4 == 3 && decoys.Count > 0) entries.Insert(random.Next(entries.Count), new(decoys[random.Next(decoys.Count)].Id));
        return right with { Entries = entries };
    }

    /// <summary>The same answer in another text: white space before its end, which writes the number in twos.</summary>
    private static string Distinct(string json, int number) =>
        json[..^1] + string.Concat(Convert.ToString(number, 2).Select(digit => digit == '0' ? ' ' : '\t')) + "]";

    /// <summary>Runs that two examiners watched to their end; the second one sees one step less in every third.</summary>
    private async Task Runs(SqliteConnection connection, List<(PersonId Id, ShopId Shop, string Language)> persons, PersonId examiner, Instant now)
    {
        var library = services.GetRequiredService<Library>().Current;
        var procedure = library.Content.FindProcedure(new("isolate-chassis"))!;
        var variant = procedure.Procedure.Variants[0];
        var grader = await services.GetRequiredService<Graders>().For(procedure.File.Hash, variant);
        var right = grader.Grade(new([])).Value.Nearest;
        var (paper, second) = (PaperId.New(now), PersonId.New(now));
        for (var number = 0; number < RunsByTwo; number++)
        {
            var (run, person, at) = (RunId.New(now), persons[number % persons.Count], (now - Duration.FromMinutes(number)).ToUnixTimeTicks());
            Insert(connection, "Runs", ("Id", run.Value), ("TechnicianId", person.Id.Value), ("ShopId", person.Shop.Value), ("ExaminerId", examiner.Value), ("PaperId", paper.Value),
                ("Competency", "electrical-isolation"), ("Procedure", "isolate-chassis"), ("ProcedureHash", procedure.File.Hash.Hex), ("PublicationNumber", 1), ("Variant", variant.Value),
                ("Chassis", "L18"), ("StartedAt", at), ("EndedAt", at), ("SignedAt", at), ("Note", ""), ("Accepted", 1), ("Language", person.Language));
            Insert(connection, "BesideRuns", ("RunId", run.Value), ("ExaminerId", second.Value), ("BegunAt", at), ("EndedAt", at));
            foreach (var (place, entry) in right.Index())
            {
                Insert(connection, "Taps", ("RunId", run.Value), ("Number", place + 1), ("Id", Guid.NewGuid()), ("Step", entry.Step.Value), ("Seconds", $"{150 * (place + 1)}"), ("ReceivedAt", at));
                if (number % 3 > 0 || place != number % right.Count)
                    Insert(connection, "BesideTaps", ("RunId", run.Value), ("ExaminerId", second.Value), ("Number", place + 1), ("Id", Guid.NewGuid()), ("Step", entry.Step.Value), ("Seconds", $"{150 * (place + 1)}"));
            }
        }
    }

    private void Papers(SqliteConnection connection, int people)
    {
        var competency = services.GetRequiredService<Library>().Current.Content.FindCompetency(new("electrical-isolation"))!;
        var made = new List<object>();
        var sheets = new PaperSheets { Added = made.Add };
        for (var number = 0; number < people; number++)
            sheets.Add(new(competency.Id, competency.File.Hash, random.Next(4) > 0, [.. competency.Paper.Questions.SelectMany(draw =>
                draw.From.OrderBy(_ => random.Next()).Take(draw.Count).Select(scenario => (draw.Kind, scenario, random.Next(3) > 0)))]));
        foreach (var sheet in made) Insert(connection, sheet);
    }

    private static void Insert(SqliteConnection connection, object sheet)
    {
        (string, object?)[] row = sheet switch
        {
            TallySubject subject => [("Procedure", subject.Procedure.Value), ("Number", subject.Number), ("Kind", subject.Kind.ToString()), ("Subject", subject.Subject)],
            Tally tally => [("Procedure", tally.Procedure.Value), ("Source", tally.Source.ToString()), ("Cut", tally.Cut.ToString()), ("Group", tally.Group), ("People", Json(tally.People)), ("Wrong", Json(tally.Wrong))],
            FirstChances person => [("PersonId", person.PersonId.Value), ("Procedure", person.Procedure.Value), ("Source", person.Source.ToString()), ("Subjects", Json(person.Subjects)), ("Orders", Json(person.Orders))],
            WrongOrder order => [("Procedure", order.Procedure.Value), ("Source", order.Source.ToString()), ("Code", order.Code), ("Subjects", Json(order.Subjects)), ("People", order.People), ("Cost", order.Cost), ("ExampleId", order.ExampleId), ("ExampleNumber", order.ExampleNumber)],
            PaperSum sum => [("CompetencyHash", sum.CompetencyHash.Hex), ("Competency", sum.Competency.Value), ("Papers", sum.Papers), ("Passed", sum.Passed), ("Total", sum.Total), ("TotalSquares", sum.TotalSquares), ("RightAtPlace", Json(sum.RightAtPlace))],
            ItemSum item => [("CompetencyHash", item.CompetencyHash.Hex), ("Kind", item.Kind.ToString()), ("Scenario", item.Scenario.Value), ("Asked", item.Asked), ("Right", item.Right), ("Rest", item.Rest), ("RestSquares", item.RestSquares), ("RestWhereRight", item.RestWhereRight)],
            _ => throw new InvalidOperationException($"No table for {sheet}."),
        };
        Insert(connection, sheet switch { Tally => "Tallies", FirstChances => "FirstChances", _ => sheet.GetType().Name + "s" }, row);
    }

    private static void Tell(SqliteConnection connection, string pragmas)
    {
        using var command = connection.CreateCommand();
        command.CommandText = pragmas;
        command.ExecuteNonQuery();
    }

    private static string Json<T>(List<T> list) => JsonSerializer.Serialize(list);

    private static readonly Dictionary<string, SqliteCommand> Prepared = [];

    private static void Insert(SqliteConnection connection, string table, params (string Column, object? Value)[] row)
    {
        if (!Prepared.TryGetValue(table, out var command) || command.Connection != connection)
        {
            command = connection.CreateCommand();
            command.CommandText = $"INSERT INTO \"{table}\" ({string.Join(", ", row.Select(cell => $"\"{cell.Column}\""))}) VALUES ({string.Join(", ", row.Select((_, at) => $"$p{at}"))})";
            foreach (var (at, _) in row.Index()) command.Parameters.Add(new SqliteParameter { ParameterName = $"$p{at}" });
            Prepared[table] = command;
        }

        foreach (var (at, cell) in row.Index()) command.Parameters[at].Value = cell.Value ?? DBNull.Value;
        command.ExecuteNonQuery();
    }
}

/// <summary>What was filled in.</summary>
/// <param name="Trainer">A trainer.</param>
/// <param name="Shop">A shop.</param>
/// <param name="Technician">One of its people.</param>
/// <param name="Tallies">How many tallies there are.</param>
/// <param name="WrongOrders">How many kinds of wrong orders.</param>
internal sealed record Filled(PersonId Trainer, ShopId Shop, PersonId Technician, int Tallies, int WrongOrders);
