using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Training.Web.Startup;

namespace Training.Browser.Tests;

/// <summary>The trainer's page of the docs, walked as it is written there.</summary>
public sealed class TrainersDeskTests(Chrome chrome)
{
    private const string Lesson = "modules/06-added-loads/lesson.md";

    [Fact]
    public async Task A_newcomer_writes_a_procedure_is_told_two_mistakes_mends_them_has_it_approved_and_sees_what_ten_people_make_of_it()
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
        await Assertions.Expect(page.Locator("#text")).Not.ToHaveValueAsync(new Regex("sheet-before-drill"));
        await Sees(page, "No module teaches");

        await page.GotoAsync("/desk");
        await page.GetByLabel("File", new() { Exact = true }).SelectOptionAsync(Lesson);
        await page.Press("Take it up");
        await page.Reaches("/drafts/");
        var teaching = page.Url;
        var lesson = await page.Locator("#text").InputValueAsync();
        await Write(page, lesson.Replace("procedures: [add-load, take-load-off]", "procedures: [add-load, take-load-off, fit-beacon]", StringComparison.Ordinal));
        await Begin(page, "Scenario", "A beacon before noon", "beacon-before-noon");
        var asking = page.Url;
        var scenario = await page.Locator("#text").InputValueAsync();
        await Write(page, scenario.Replace("name-of-the-procedure", "fit-beacon", StringComparison.Ordinal));
        await Sees(page, "No error");

        foreach (var draft in new[] { procedure, teaching, asking })
        {
            await page.GotoAsync(draft);
            await Sees(page, "No error");
            await page.Follow("Publish");
            await page.Reaches("/publication");
            await page.Press("Ask for approval");
            await page.Sees("Another trainer finds it on the desk");
        }

        var other = await house.DeviceOf("keiko", Screen.Laptop);
        await other.GotoAsync("/desk");
        await other.Sees("Tomasz Zielinski asks for approval.");
        await other.Follow("procedures/fit-beacon.yaml");
        await other.Follow("Publish");
        await other.Reaches("/publication");
        await other.Press("Approve and publish");
        await other.Sees("Published.");
        await other.Sees("Tomasz Zielinski wrote it, Keiko Arimura approved it.");

        var technician = await house.DeviceOf("amara", Screen.Phone);
        await technician.GotoAsync("/scenarios/beacon-before-noon/practice?kind=order");
        foreach (var step in BeginnersWork.DrillsLive) await technician.Offered(step).ClickAsync();
        await technician.Press("Hand in");
        await technician.Sees("The drill goes into a live cable");

        var beginners = new BeginnersWork(house);
        foreach (var name in new[] { "bao", "pilar", "dmytro" }) await beginners.Practises(name, BeginnersWork.DrillsLive);
        await page.GotoAsync("/results/fit-beacon");
        await Assertions.Expect(Line(page, "dead-before-drill")).ToContainTextAsync("Fewer than five people: not shown");

        await beginners.Practises("sione", BeginnersWork.DrillsLive);
        foreach (var name in new[] { "rania", "joao" }) await beginners.Practises(name, BeginnersWork.PlugsLive);
        foreach (var name in new[] { "leila", "mele", await beginners.Newcomer("Nadia Brandt", "nadia") }) await beginners.Practises(name, BeginnersWork.Right);
        await page.GotoAsync("/results");
        await page.Follow("Fit a warning beacon");
        // Wilson's interval of 5 of 10 is 23.7 to 76.3 %, of 2 of 10 5.7 to 51.0 %.
        await Assertions.Expect(Line(page, "dead-before-drill")).ToContainTextAsync(new Regex(@"5 of 10: 50\s% \(between 24\s% and 76\s%\)"));
        await Assertions.Expect(Line(page, "plug-before-supply")).ToContainTextAsync(new Regex(@"2 of 10: 20\s% \(between 6\s% and 51\s%\)"));
        await Assertions.Expect(Line(page, "gasket-on-paint")).ToContainTextAsync("0 of 10");

        await page.GotoAsync(procedure);
        await Sees(page, "People gave this order most often.");
    }

    private static ILocator Line(IPage page, string rule) =>
        page.GetByRole(AriaRole.Listitem).Filter(new() { Has = page.Locator($"a[href*='/rule/{rule}']") });

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
