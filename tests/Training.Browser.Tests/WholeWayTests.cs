using Microsoft.Playwright;
using Training.Sequencing.Procedures;
using Training.Web.Startup;

namespace Training.Browser.Tests;

/// <summary>The main job, end to end, by the people who do it, on a phone and on a laptop.</summary>
public sealed class WholeWayTests(Chrome chrome)
{
    public static TheoryData<Screen> Screens => [Screen.Phone, Screen.Laptop];

    [Theory]
    [MemberData(nameof(Screens))]
    public async Task A_technician_learns_practises_is_examined_and_observed_and_a_customer_checks_the_record(Screen screen)
    {
        await using var house = new OpenHouse(chrome);
        await house.InitializeAsync();
        var right = new RightOrders(Path.Combine(House.FindRoot(AppContext.BaseDirectory), "content"));
        var technician = await house.Device(screen);
        var examiner = await house.Device(screen);
        await technician.SignIn(Newcomer);
        await technician.Sees("What to do next");

        await ReadsTheLesson(technician);
        await GetsAWrongOrderReplayed(technician, right);
        await examiner.SignIn(Examiner);
        await OpensASittingAndAdmits(examiner);
        await PassesThePaper(technician, right);
        await ObservesTheRun(house, examiner, right);
        await HasARecord(technician);

        var owner = await house.Device(screen);
        await owner.SignIn(Owner);
        var link = await MakesAProof(owner);
        var customer = await house.Device(screen);
        await customer.GotoAsync(link);
        await customer.Sees("Yes");
        await customer.Sees(NewcomerName);
        await customer.Sees("Electrical isolation of a chassis");
        await EndsTheProof(owner);
        var answer = await customer.GotoAsync(link);
        Assert.Equal(410, answer!.Status);
        Assert.DoesNotContain(NewcomerName, await customer.ContentAsync(), StringComparison.Ordinal);
    }

    private const string Newcomer = "amara";
    private const string NewcomerName = "Amara Okafor";
    private const string Examiner = "renske";
    private const string Owner = "hollis";

    private static async Task ReadsTheLesson(IPage page)
    {
        await page.Follow("Read it now");
        await page.Reaches("/modules/");
        await page.Press("I have read this lesson");
        await page.Sees("You have read this lesson");
    }

    private static async Task GetsAWrongOrderReplayed(IPage page, RightOrders right)
    {
        await page.GotoAsync("/scenarios/customer-waiting/practice?kind=order");
        var title = await page.Locator("h1").InnerTextAsync();
        var order = right.For(title).Where(step => !step.IsWait).ToList();
        foreach (var step in order) await page.Offered(step.Id.Value).ClickAsync();
        await page.Press("Hand in");
        await Assertions.Expect(page.Locator("svg[role=img]").First).ToBeVisibleAsync();
        await page.Sees("The least that mends it");
        await Assertions.Expect(page.Locator(".findings li").First).ToBeVisibleAsync();

        await page.Follow("Try again");
        await Answer(page, right.For(title));
        await page.Press("Hand in");
        await page.Sees("A right order");
    }

    private static async Task OpensASittingAndAdmits(IPage page)
    {
        await page.GotoAsync("/sittings");
        await page.GetByLabel("What is examined").SelectOptionAsync("electrical-isolation");
        await page.GetByLabel("Where", new() { Exact = true }).FillAsync("Training room");
        await page.Press("Open the sitting");
        await page.Press($"Admit {NewcomerName}");
        await page.Sees("admitted, not begun");
    }

    private static async Task PassesThePaper(IPage page, RightOrders right)
    {
        await page.GotoAsync("/next");
        await page.Follow("To the paper");
        await page.Press("Begin the paper");
        await page.Reaches("/papers/");
        var paper = page.Url;
        var questions = await page.Locator("ol.lines > li").CountAsync();
        Assert.True(questions >= 3, $"The paper asks {questions} questions.");
        for (var number = 1; number <= questions; number++)
        {
            await page.GotoAsync($"{paper}/questions/{number}");
            var title = await page.Locator("h1").InnerTextAsync();
            if (await page.Locator(".choices input[name=option]").CountAsync() > 0) await Choose(page, right.Choices(title));
            if (await page.Locator("#reading-value").CountAsync() > 0) await ReadOff(page, right.Readings(title));
            else if (await page.Locator(".offered").CountAsync() > 0) await Answer(page, right.For(title));
            await Assertions.Expect(page.Locator("[data-save-word]")).ToContainTextAsync("Saved");
        }

        await page.GotoAsync($"{paper}/hand-in");
        await page.Press("Hand in for good");
        await page.Sees("Passed");
        await page.GoBackAsync();
        await page.GotoAsync($"{paper}/questions/1");
        await Assertions.Expect(page.Locator(".offered")).ToHaveCountAsync(0);
    }

    private static async Task ObservesTheRun(OpenHouse house, IPage page, RightOrders right)
    {
        await page.GotoAsync("/runs");
        var line = page.GetByRole(AriaRole.Listitem).Filter(new() { HasText = NewcomerName }).First;
        await line.GetByText("Start the run").ClickAsync();
        await line.GetByText("truck K26").ClickAsync();
        await line.GetByLabel("Which chassis").FillAsync("K26-0417");
        await line.GetByRole(AriaRole.Button, new() { Name = "Start the clock" }).ClickAsync();
        foreach (var step in right.For(new ProcedureId("isolate-chassis"), new VariantId("truck-k26")))
        {
            if (step.IsWait)
            {
                await Assertions.Expect(page.Locator("[data-save-word]")).ToContainTextAsync("All is with the server");
                house.Clock.MoveOn(TimeSpan.FromSeconds(95));
                await page.ReloadAsync();
            }

            await page.Locator($"[data-row='{step.Id}'] button.tap").ClickAsync();
        }

        await Assertions.Expect(page.Locator("[data-save-word]")).ToContainTextAsync("All is with the server");
        await page.Press("The work is done");
        await page.Sees("A right order");
        await page.Press("Sign it");
        await page.Sees("The competency record that was issued with it");
    }

    private static async Task HasARecord(IPage page)
    {
        await page.GotoAsync("/records");
        await page.Sees("Electrical isolation of a chassis");
        await page.Sees("Current until");
    }

    private static async Task<string> MakesAProof(IPage page)
    {
        await page.GotoAsync("/proofs");
        await page.GetByRole(AriaRole.Group, new() { Name = NewcomerName }).GetByRole(AriaRole.Checkbox).First.CheckAsync();
        await page.GetByLabel("For which customer").FillAsync("Larkfield Haulage");
        await page.Press("Make the proof");
        return await page.GetByLabel("Link").InputValueAsync();
    }

    private static async Task EndsTheProof(IPage page)
    {
        await page.GetByText("End this proof").ClickAsync();
        await page.Press("End it");
        await page.Sees("was ended");
    }

    private static async Task ReadOff(IPage page, RightReadings right)
    {
        var (value, decision) = right.Of(await page.Locator(".instrument desc").AllTextContentsAsync());
        await page.Locator("#reading-value").FillAsync(value);
        if (decision >= 0) await page.Locator(".choice").Nth(decision).ClickAsync();
    }

    private static async Task Choose(IPage page, RightChoices right)
    {
        var about = page.Locator(".asked-about strong");
        var chosen = right.Of(
            await page.Locator(".choices legend").InnerTextAsync(),
            await page.Locator(".answer-sheet h2 + .placed > li > span:last-child").AllInnerTextsAsync(),
            await about.CountAsync() > 0 ? await about.InnerTextAsync() : null,
            await page.Locator(".answer-sheet p + .placed > li > span:last-child").AllInnerTextsAsync(),
            await page.Locator(".choice > span:last-child").AllInnerTextsAsync());
        var several = await page.Locator(".choice input[type=checkbox]").CountAsync() > 0;
        foreach (var option in several ? chosen : chosen.Take(1)) await page.Locator(".choice").Nth(option).ClickAsync();
    }

    private static async Task Answer(IPage page, IReadOnlyList<Step> order)
    {
        foreach (var step in order)
        {
            await page.Offered(step.Id.Value).ClickAsync();
            if (step.IsWait) await page.GetByLabel("For how long?").Last.FillAsync("120");
        }
    }
}
