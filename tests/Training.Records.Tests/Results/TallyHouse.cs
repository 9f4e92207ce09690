using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Training.Content.Scenarios;
using Training.Records.Accounts;
using Training.Records.Results;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Results;

/// <summary>Ways to fill the tallies, and to see what stands in them.</summary>
internal static class TallyHouse
{
    public static readonly ScenarioId Plain = new("tray-plain");

    public const string RightBench =
        """[{"step":"key-off"},{"step":"rest","seconds":60},{"step":"lift-tray"},{"step":"bench"},{"step":"stow-boom"}]""";

    public static async Task<PracticeId> Practise(
        this TestWorld world, Actor person, string answer, ScenarioId? scenario = null, QuestionKind kind = QuestionKind.Order, string language = "en", long seed = 7)
    {
        var asked = Ok(await world.Practice(practice => practice.Draw(person, scenario ?? Plain, kind, seed)));
        return Ok(await world.Practice(practice => practice.HandIn(person, new(Guid.NewGuid(), asked.Ticket, answer), language))).Id;
    }

    public static async Task<List<Actor>> Technicians(this TestWorld world, int count, ShopId shop, string names)
    {
        var people = new List<Actor>();
        for (var number = 0; number < count; number++)
            people.Add(await world.Add($"{names} {(char)('A' + number)}", $"{names.ToLowerInvariant()}-{number}", shop, Roles.Technician));
        return people;
    }

    /// <summary>Some steps of those that a scenario offers, in any order and sometimes twice, with any waits.</summary>
    public static async Task PractiseAnything(this TestWorld world, Actor person, Random random, string language)
    {
        var (scenario, kind) = random.Next(4) == 0 ? ("tray-half", QuestionKind.Finish) : (random.Next(3) == 0 ? "tray-hurry" : "tray-plain", QuestionKind.Order);
        var asked = Ok(await world.Practice(practice => practice.Draw(person, new(scenario), kind, random.NextInt64())));
        var offered = asked.Question.Offered.ToArray();
        random.Shuffle(offered);
        var chosen = offered.Take(random.Next(offered.Length + 1)).ToList();
        if (chosen.Count > 0 && random.Next(4) == 0) chosen.Add(chosen[0]);
        var answer = "[" + string.Join(',', chosen.Select(step => step.IsWait
            ? string.Create(CultureInfo.InvariantCulture, $$"""{"step":"{{step.Id}}","seconds":{{random.Next(3) * 45}}}""")
            : $$"""{"step":"{{step.Id}}"}""")) + "]";
        Ok(await world.Practice(practice => practice.HandIn(person, new(Guid.NewGuid(), asked.Ticket, answer), language)));
    }

    /// <summary>Everything that is counted, in words: the numbers under which it is counted do not matter.</summary>
    public static Task<List<string>> Counted(this TestWorld world) => world.Db(async db =>
    {
        var subjects = (await db.TallySubjects.AsNoTracking().ToListAsync()).ToDictionary(subject => (subject.Procedure, subject.Number), subject => subject.Chance);
        var told = new List<string>();
        foreach (var tally in await db.Tallies.AsNoTracking().ToListAsync())
            told.AddRange(tally.People.Select((people, number) => (people, number)).Where(one => one.people > 0).Select(one =>
                $"{tally.Procedure} {tally.Source} {tally.Cut} {tally.Group} {subjects[(tally.Procedure, one.number)]}: {tally.Wrong[one.number]}/{one.people}"));
        foreach (var first in await db.FirstChances.AsNoTracking().ToListAsync())
            told.Add($"{first.PersonId} {first.Procedure} {first.Source}: {string.Join(' ', first.Subjects.Select(number => subjects[(first.Procedure, number)].ToString()).Order(StringComparer.Ordinal))}; {string.Join(' ', first.Orders)}");
        foreach (var order in await db.WrongOrders.AsNoTracking().ToListAsync())
            told.Add($"{order.Procedure} {order.Source} {order.Code}: {order.People} {order.Cost} {order.ExampleId}/{order.ExampleNumber} {string.Join(' ', order.Subjects.Select(number => subjects[(order.Procedure, number)].ToString()).Order(StringComparer.Ordinal))}");
        foreach (var sum in await db.PaperSums.AsNoTracking().ToListAsync())
            told.Add($"{sum.CompetencyHash}: {sum.Papers} {sum.Passed} {sum.Total} {sum.TotalSquares} {string.Join(' ', sum.RightAtPlace)}");
        foreach (var item in await db.ItemSums.AsNoTracking().ToListAsync())
            told.Add($"{item.CompetencyHash} {item.Kind} {item.Scenario}: {item.Asked} {item.Right} {item.Rest} {item.RestSquares} {item.RestWhereRight}");
        foreach (var pair in await db.JudgedPairs.AsNoTracking().ToListAsync())
            told.Add($"{pair.Procedure} {pair.What} {pair.First} {pair.Second}: {pair.Times}");
        return told.Order(StringComparer.Ordinal).ToList();
    });

    public static Task<int> CountAgain(this TestWorld world) => world.With<Recount, int>(recount => recount.Everything());

    public static Task<T> Results<T>(this TestWorld world, Func<RuleResults, Task<T>> ask) => world.With(ask);
}
