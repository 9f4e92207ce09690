using Microsoft.Playwright;
using Training.Web.Startup;

namespace Training.Browser.Tests;

/// <summary>The trainer's page of the papers, walked as it is written there.</summary>
public sealed class TrainersDeskTests(Chrome chrome)
{
    private const string Lesson = "modules/06-added-loads/lesson.md";

    [Fact]
    public async Task A_newcomer_writes_a_procedure_is_told_two_mistakes_mends_them_publishes_and_sees_results()
    {
        await using var house = new OpenHouse(chrome);
        await house.InitializeAsync();
        var page = await house.DeviceOf("tomasz", Screen.Laptop);

        await Begin(page, "Procedure", "Fit a warning beacon", "fit-beacon");
        var procedure = page.Url;
        await Write(page, await TextOfThePaper());
        await Sees(page, "These rules run in a circle");
        await Sees(page, "The rule sheet-before-drill says nothing new");

        await Write(page, Without(await page.Locator("#text").InputValueAsync(), "try-before-seat"));
        await Sees(page, "Right orders");
        await page.ReloadAsync();
        await page.Locator("#Rule-sheet-before-drill summary").ClickAsync();
        await page.Locator("#Rule-sheet-before-drill").GetByRole(AriaRole.Button, new() { Name = "Take this rule out" }).ClickAsync();
        await Assertions.Expect(page.Locator("#Rule-sheet-before-drill")).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator("#text")).Not.ToHaveValueAsync(new System.Text.RegularExpressions.Regex("sheet-before-drill"));
        await Sees(page, "No module teaches");

        await page.GotoAsync("/desk");
        await page.GetByLabel("File", new() { Exact = true }).SelectOptionAsync(Lesson);
        await page.Press("Take it up");
        await page.Reaches("/drafts/");
        var lesson = await page.Locator("#text").InputValueAsync();
        await Write(page, lesson.Replace("procedures: [add-load, take-load-off]", "procedures: [add-load, take-load-off, fit-beacon]", StringComparison.Ordinal));
        await Begin(page, "Scenario", "A beacon before noon", "beacon-before-noon");
        var scenario = await page.Locator("#text").InputValueAsync();
        await Write(page, scenario.Replace("name-of-the-procedure", "fit-beacon", StringComparison.Ordinal));
        await Sees(page, "No error");

        await page.GotoAsync(procedure);
        await Sees(page, "No error");
        await page.Follow("Publish");
        await page.Reaches("/publication");
        await page.Press("Publish");
        await page.Sees("Published.");
        await page.Sees("there was no other trainer");

        var technician = await house.DeviceOf("amara", Screen.Phone);
        await technician.GotoAsync("/scenarios/beacon-before-noon/practice?kind=order");
        await technician.Offered("drill").ClickAsync();
        await technician.Press("Hand in");
        await technician.Sees("The least that mends it");

        await page.GotoAsync("/results");
        await page.Sees("Fit a warning beacon");
    }

    private static async Task Begin(IPage page, string sort, string title, string name)
    {
        await page.GotoAsync("/desk");
        await page.GetByLabel("What it is", new() { Exact = true }).SelectOptionAsync(sort);
        await page.GetByLabel("What it is called").FillAsync(title);
        await page.GetByLabel("Its short name").FillAsync(name);
        await page.Press("Begin");
        await page.Reaches("/drafts/");
    }

    /// <summary>Writes as somebody who types does, and waits until the text is kept and looked at.</summary>
    private static async Task Write(IPage page, string text)
    {
        var before = await page.Locator("input[name=version]").InputValueAsync();
        await page.RunAndWaitForResponseAsync(() => page.Locator("#text").FillAsync(text), answer => answer.Url.EndsWith("/check", StringComparison.Ordinal));
        await Assertions.Expect(page.Locator("input[name=version]")).Not.ToHaveValueAsync(before);
    }

    private static Task Sees(IPage page, string text) => Assertions.Expect(page.Locator("[data-check]")).ToContainTextAsync(text);

    private static async Task<string> TextOfThePaper()
    {
        var paper = await File.ReadAllTextAsync(Path.Combine(House.FindRoot(AppContext.BaseDirectory), "docs", "trainer.md"));
        return paper.Split("```yaml\n")[1].Split("```")[0];
    }

    private static string Without(string text, string rule)
    {
        var start = text.IndexOf($"  - id: {rule}\n", StringComparison.Ordinal);
        var end = text.IndexOf("  - id: ", start + 4, StringComparison.Ordinal);
        return end < 0 ? text[..start] : text.Remove(start, end - start);
    }
}
