using System.Diagnostics;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Credentials;
using Training.Records.Accounts;
using Training.Records.Demo;
using Training.Records.Observing;
using Training.Sequencing.Procedures;
using Training.Web.Startup;

namespace Training.Browser.Tests;

/// <summary>An owner who has never been here has a proof of the shop's people in hand within two minutes, by few clicks.</summary>
public sealed class ProofWayTests(Chrome chrome)
{
    // The sign-in, the first page's button, the one that makes the proof, the one that takes it away; and the people who are not ticked yet.
    private const int MostClicks = 4;

    [Fact]
    public async Task A_new_owner_takes_away_a_proof_of_all_the_shops_people_in_four_clicks()
    {
        await using var house = new OpenHouse(chrome);
        await house.InitializeAsync();
        await AddOwner(house);
        await SignTheRunThatWaits(house);
        var page = await house.Device(Screen.Phone);
        await page.GotoAsync("/sign-in");
        var began = Stopwatch.GetTimestamp();
        await page.GetByLabel("Your name for signing in").FillAsync("ulla");
        await page.GetByLabel("Password").FillAsync(DemoWorld.Password);
        var clicks = 0;
        await Click(page.GetByRole(AriaRole.Button, new() { Name = "Sign in", Exact = true }));
        await page.Reaches("/coverage");
        await Click(page.GetByRole(AriaRole.Link, new() { Name = "Make a proof of these people" }).First);
        await page.Reaches("/proofs");
        // Those who hold are ticked; ticking the rest is what an owner does who wants everybody on it.
        var ticks = page.Locator("input[name=Records]");
        var ticked = 0;
        for (var person = 0; person < await ticks.CountAsync(); person++)
            if (!await ticks.Nth(person).IsCheckedAsync())
            {
                await ticks.Nth(person).CheckAsync();
                ticked++;
            }

        var people = await ticks.CountAsync();
        await page.GetByLabel("For which customer").FillAsync("Larkfield Haulage");
        await Click(page.GetByRole(AriaRole.Button, new() { Name = "Make the proof", Exact = true }));
        await page.GetByRole(AriaRole.Link, new() { Name = "Download to check without a network" }).WaitForAsync();
        var download = await page.RunAndWaitForDownloadAsync(() => Click(page.GetByRole(AriaRole.Link, new() { Name = "Download to check without a network" })));
        var file = await File.ReadAllBytesAsync(await download.PathAsync(), TestContext.Current.CancellationToken);
        var took = Stopwatch.GetElapsedTime(began);
        TestContext.Current.SendDiagnosticMessage($"{clicks} clicks and {ticked} ticks, {took.TotalSeconds:0.0} s by the browser, {people} people");
        Assert.Equal(6, people);
        Assert.Equal(MostClicks, clicks);
        Assert.Equal(people, ProofPack.Read(StrictJson.ReadObject(file).Value).Value.Credentials.Count);

        async Task Click(ILocator what)
        {
            clicks++;
            await what.ClickAsync();
        }
    }

    /// <summary>The sixth person of the shop earns a record: the demo leaves Rania's run to be done.</summary>
    private static async Task SignTheRunThatWaits(OpenHouse house)
    {
        await using var scope = house.Services.CreateAsyncScope();
        var runs = scope.ServiceProvider.GetRequiredService<Runs>();
        var users = scope.ServiceProvider.GetRequiredService<UserManager<Person>>();
        var mateo = (await scope.ServiceProvider.GetRequiredService<Training.Records.Accounts.People>().ActorOf((await users.FindByNameAsync("mateo"))!.Id))!;
        var rania = (await users.FindByNameAsync("rania"))!.Id;
        var right = new RightOrders(Path.Combine(House.FindRoot(AppContext.BaseDirectory), "content"));
        foreach (var toDo in (await runs.ToDo(mateo)).Value.Where(line => line.Technician == rania))
        {
            var variant = new VariantId("truck-k26");
            var run = (await runs.Start(mateo, new(rania, toDo.Competency, toDo.Procedure, variant, "K26 in bay 4"))).Value;
            var seconds = 0m;
            foreach (var step in right.For(toDo.Procedure, variant))
            {
                var takes = step.IsWait ? 100 : 30;
                seconds += takes;
                house.Clock.MoveOn(TimeSpan.FromSeconds(takes));
                Assert.True((await runs.Tap(mateo, run, new(Guid.NewGuid(), step.Id, seconds))).IsOk);
            }

            Assert.True((await runs.End(mateo, run)).IsOk);
            Assert.True((await runs.Sign(mateo, run, "Calm, in order.")).IsOk);
        }
    }

    private static async Task AddOwner(OpenHouse house)
    {
        await using var scope = house.Services.CreateAsyncScope();
        var people = scope.ServiceProvider.GetRequiredService<Training.Records.Accounts.People>();
        var users = scope.ServiceProvider.GetRequiredService<UserManager<Person>>();
        var administrator = (await people.ActorOf((await users.FindByNameAsync("ifeoma"))!.Id))!;
        var shop = (await people.Shops(administrator)).Single(known => known.Name.StartsWith("Quillmoor", StringComparison.Ordinal)).Id;
        var added = (await people.Add(administrator, new("Ulla Koskinen", "ulla", shop, [Roles.Owner]))).Value;
        var actor = (await people.ActorOf(added.Person))!;
        Assert.True((await people.ChoosePassword(actor, added.OneTimePassword, DemoWorld.Password)).IsOk);
    }
}
