using System.Diagnostics;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Credentials;
using Training.Records.Accounts;
using Training.Records.Demo;

namespace Training.Browser.Tests;

/// <summary>An owner who has never been here has a proof of the shop's people in hand within two minutes, by few clicks.</summary>
public sealed class ProofWayTests(Chrome chrome)
{
    // The sign-in, the first page's button, the one that makes the proof, the one that takes it away.
    private const int MostClicks = 4;

    private const int FewestPeople = 6;

    [Fact]
    public async Task A_new_owner_takes_away_a_proof_of_all_the_shops_people_in_four_clicks()
    {
        await using var house = new OpenHouse(chrome);
        await house.InitializeAsync();
        await AddOwner(house);
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
        // Those who hold are ticked already.
        var people = await page.Locator("input[name=Records]:checked").CountAsync();
        await page.GetByLabel("For which customer").FillAsync("Larkfield Haulage");
        await Click(page.GetByRole(AriaRole.Button, new() { Name = "Make the proof", Exact = true }));
        await page.GetByRole(AriaRole.Link, new() { Name = "Download to check without a network" }).WaitForAsync();
        var download = await page.RunAndWaitForDownloadAsync(() => Click(page.GetByRole(AriaRole.Link, new() { Name = "Download to check without a network" })));
        var file = await File.ReadAllBytesAsync(await download.PathAsync(), TestContext.Current.CancellationToken);
        var took = Stopwatch.GetElapsedTime(began);
        TestContext.Current.SendDiagnosticMessage($"{clicks} clicks, {took.TotalSeconds:0.0} s by the browser, {people} people");
        Assert.InRange(people, FewestPeople, 20);
        Assert.Equal(MostClicks, clicks);
        Assert.Equal(people, ProofPack.Read(StrictJson.ReadObject(file).Value).Value.Credentials.Count);
        await page.GotoAsync(new Uri(await page.Locator("#link").InputValueAsync()).AbsolutePath);
        await page.Locator("h1.answer-yes").WaitForAsync();

        async Task Click(ILocator what)
        {
            clicks++;
            await what.ClickAsync();
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
