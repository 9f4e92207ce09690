using System.Net;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Training.Records;
using Training.Records.Accounts;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Doors;

/// <summary>Whoever has an open paper finds every page shut that could answer a question of it, whatever their other roles are.</summary>
public sealed class OpenPaperDoorsTests(DoorsHouse doors) : IClassFixture<DoorsHouse>
{
    private const string PublicPage = "anybody may see it, signed in or not, and it names no step and no rule";
    private const string OfThePaper = "the paper itself; an open one says nothing that is right";
    private const string PeopleAlone = "people, shops, dates and records alone";

    private static readonly Dictionary<string, string> Open = new()
    {
        ["/"] = PublicPage,
        ["/.well-known/did.json"] = PublicPage,
        ["/did.json"] = PublicPage,
        ["/calendar/{token}.ics"] = PublicPage,
        ["/competencies/{competency}"] = PublicPage,
        ["/faults/{code:int}"] = PublicPage,
        ["/log/checkpoint"] = PublicPage,
        ["/log/entries/{index:long}"] = PublicPage,
        ["/log/export.jsonl"] = PublicPage,
        ["/log/extension"] = PublicPage,
        ["/p/{token}"] = PublicPage,
        ["/p/{token}/cards.pdf"] = PublicPage,
        ["/p/{token}/credentials/{credential}.json"] = PublicPage,
        ["/p/{token}/pack.json"] = PublicPage,
        ["/p/{token}/sheet.pdf"] = PublicPage,
        ["/set-up"] = PublicPage,
        ["/sign-in"] = PublicPage,
        ["/status/suspended/{number:int}"] = PublicPage,
        ["/status/withdrawn/{number:int}"] = PublicPage,
        ["/papers/{paper}/hand-in"] = OfThePaper,
        ["/papers/{paper}/questions/{number:int}"] = OfThePaper,
        ["/next"] = "it leads to the paper",
        ["/password"] = "one's own password",
        ["/coverage"] = PeopleAlone,
        ["/jobs"] = PeopleAlone,
        ["/jobs/{job}"] = PeopleAlone,
        ["/people"] = PeopleAlone,
        ["/people/file"] = PeopleAlone,
        ["/people/records.csv"] = PeopleAlone,
        ["/people/records.json"] = PeopleAlone,
        ["/people/{person}"] = PeopleAlone,
        ["/people/{person}/name-removal"] = PeopleAlone,
        ["/proofs"] = PeopleAlone,
        ["/proofs/{proof}"] = PeopleAlone,
        ["/records"] = PeopleAlone,
        ["/records/{record}"] = "it names the texts that a record was judged by, and shows none",
        ["/reminders"] = PeopleAlone,
        ["/shops"] = PeopleAlone,
        ["/signing-key"] = PeopleAlone,
        ["/sittings"] = PeopleAlone,
        ["/sittings/{sitting}"] = PeopleAlone,
    };

    [Fact]
    public async Task Every_page_is_shut_to_whoever_has_an_open_paper_or_stands_here_with_a_reason()
    {
        var (visitor, paper) = await WithEveryRoleAndAnOpenPaper();
        var (wrong, shut) = (new List<string>(), 0);
        foreach (var door in Door.All(doors.House.Services).Where(door => door.Method == "GET" && !Open.ContainsKey(door.Pattern)))
        {
            var answer = await visitor.Ask(door.Address(doors.Examples));
            if (answer.StatusCode == HttpStatusCode.Redirect && answer.Headers.Location!.ToString() == $"/papers/{paper}") shut++;
            else wrong.Add($"{door}: {(int)answer.StatusCode} {answer.Headers.Location}");
        }

        Assert.Empty(wrong);
        Assert.True(shut > 30, $"Only {shut} pages are shut.");
    }

    [Fact]
    public void The_list_names_no_page_that_is_gone() => Assert.Empty(
        Open.Keys.Except(Door.All(doors.House.Services).Where(door => door.Method == "GET").Select(door => door.Pattern)));

    [Fact]
    public async Task What_stays_open_tells_no_rule()
    {
        var (visitor, paper) = await WithEveryRoleAndAnOpenPaper();
        var secrets = new List<string>();
        foreach (var id in new[] { "isolate-chassis", "end-isolation", "remove-batteries", "refit-batteries", "unplug-control-units", "refit-control-units" })
            secrets.AddRange(Technicians.SecretsOf((await doors.House.Procedure(id)).Procedure));
        var own = new Dictionary<string, string>(doors.Examples) { ["paper"] = paper.ToString() };
        foreach (var door in Door.All(doors.House.Services).Where(door => door.Method == "GET" && Open.ContainsKey(door.Pattern)))
        {
            var answer = await visitor.Ask(door.Address(own));
            var text = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
            Assert.All(secrets, secret => Assert.False(text.Contains(secret, StringComparison.Ordinal), $"{door}: {secret}"));
        }
    }

    private async Task<(Visitor Visitor, PaperId Paper)> WithEveryRoleAndAnOpenPaper()
    {
        var (visitor, person) = await doors.House.NewTechnician();
        var name = await doors.House.With(async services =>
        {
            var users = services.GetRequiredService<UserManager<Person>>();
            var found = (await users.FindByIdAsync(person.ToString()))!;
            // No form gives all of them to one person; whoever gets them some day is held to the same.
            Assert.True((await users.AddToRolesAsync(found, Roles.All.Where(role => role != Roles.Technician))).Succeeded);
            return found.UserName!;
        });
        visitor = doors.House.Stranger();
        await visitor.Post("/sign-in", (await visitor.Get("/sign-in")).TokenIn(), ("UserName", name), ("Password", Technicians.Password));
        var (paper, _) = await doors.House.Admit(person);
        await visitor.Press((await visitor.Get($"/papers/{paper}")).Button("Begin the paper"));
        return (visitor, paper);
    }
}
