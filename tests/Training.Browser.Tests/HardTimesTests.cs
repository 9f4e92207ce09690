using Microsoft.Playwright;
using Training.Web.Startup;

namespace Training.Browser.Tests;

/// <summary>A phone without script, and one without a connection.</summary>
public sealed class HardTimesTests(OpenHouse house) : IClassFixture<OpenHouse>
{
    private readonly RightOrders right = new(Path.Combine(House.FindRoot(AppContext.BaseDirectory), "content"));

    // Practice is shut to whoever has an open paper, and the tests of a class run in any order: whoever sits one practises in none.
    private const string Practising = "amara";

    [Fact]
    public async Task A_right_order_is_put_together_and_graded_without_script()
    {
        var page = await house.Device(Screen.Phone, script: false);
        await page.SignIn(Practising);
        await page.GotoAsync("/scenarios/units-half-off/practice?kind=finish");
        var placed = page.Locator("li[data-placed]");
        foreach (var step in right.For(await page.Locator("h1").InnerTextAsync()))
        {
            var before = await placed.CountAsync();
            await page.Offered(step.Id.Value).ClickAsync();
            await Assertions.Expect(placed).ToHaveCountAsync(before + 1);
            if (step.IsWait) await page.GetByLabel("For how long?").Last.FillAsync("120");
        }

        await page.Press("Hand in");
        await page.Sees("A right order");
    }

    [Fact]
    public async Task What_is_tapped_without_a_connection_is_saved_once_there_is_one()
    {
        await Admit("Bao Nguyen");
        var page = await house.DeviceOf("bao", Screen.Phone);
        await page.GotoAsync("/next");
        await page.GotoAsync("/records");
        await page.Follow("you may begin");
        await page.Press("Begin the paper");
        await page.Reaches("/papers/");
        var paper = page.Url;
        await page.GotoAsync($"{paper}/questions/1");
        var offered = page.Locator(".offered button");
        await offered.Nth(0).ClickAsync();
        await Assertions.Expect(page.Locator("[data-save-word]")).ToContainTextAsync("Saved");
        await page.Context.SetOfflineAsync(true);
        await offered.Nth(1).ClickAsync();
        await Assertions.Expect(page.Locator("[data-save-word]")).ToContainTextAsync("Kept on this device");
        await page.Context.SetOfflineAsync(false);
        await Assertions.Expect(page.Locator("[data-save-word]")).ToContainTextAsync("Saved");

        var elsewhere = await house.DeviceOf("bao", Screen.Laptop);
        await elsewhere.GotoAsync($"{paper}/questions/1");
        await Assertions.Expect(elsewhere.Locator("li[data-placed]")).ToHaveCountAsync(2);
    }

    [Fact]
    public async Task A_practice_page_that_the_phone_drops_comes_back_with_the_same_offer_and_the_order_so_far_until_it_is_handed_in()
    {
        var page = await house.DeviceOf(Practising, Screen.Phone);
        await page.GotoAsync("/scenarios/customer-waiting/practice?kind=order");
        var offered = await page.Locator(".offered .text").AllInnerTextsAsync();
        await page.Locator(".offered button").Nth(2).ClickAsync();
        await page.Locator(".offered button").Nth(0).ClickAsync();
        await page.ReloadAsync();
        Assert.Equal(offered, await page.Locator(".offered .text").AllInnerTextsAsync());
        await Assertions.Expect(page.Locator("li[data-placed] .text")).ToHaveTextAsync([offered[2], offered[0]]);

        var here = page.Url;
        foreach (var time in await page.Locator("li[data-placed] .how-long input").AllAsync()) await time.FillAsync("5");
        await page.Press("Hand in");
        await page.Sees("What happened, step by step");
        await page.GotoAsync(here);
        await Assertions.Expect(page.Locator("li[data-placed]")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Nothing_about_rules_or_right_orders_reaches_the_browser_with_a_question()
    {
        var page = await house.DeviceOf(Practising, Screen.Phone);
        await page.GotoAsync("/scenarios/customer-waiting/practice?kind=order");
        await Assertions.Expect(page.Locator(".offered button").First).ToBeVisibleAsync();
        var text = await page.ContentAsync();
        foreach (var secret in new[] { "ninety-seconds", "wait-before-isolator", "The pump that empties", "decoy", "Reducing agent dries" })
            Assert.DoesNotContain(secret, text, StringComparison.OrdinalIgnoreCase);
    }

    private async Task Admit(string name)
    {
        var examiner = await house.DeviceOf("renske", Screen.Laptop);
        await examiner.GotoAsync("/sittings");
        await examiner.GetByLabel("What is examined").SelectOptionAsync("electrical-isolation");
        await examiner.GetByLabel("Where", new() { Exact = true }).FillAsync("Bay 3");
        await examiner.Press("Open the sitting");
        await examiner.Press($"Admit {name}");
        await examiner.Sees("admitted, not begun");
    }
}
