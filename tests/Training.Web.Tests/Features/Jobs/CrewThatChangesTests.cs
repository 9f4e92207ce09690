using System.Globalization;
using AngleSharp.Html.Dom;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Jobs;

public sealed class CrewThatChangesTests(TrainingHouse house) : IClassFixture<TrainingHouse>
{
    [Fact]
    public async Task A_crew_with_somebody_suspended_meanwhile_is_refused_by_name_with_the_ticks_kept()
    {
        var hollis = await house.SignedIn("hollis");
        var page = await Planned(hollis, "Refused Freight");
        await Suspend(hollis, "Yasmin Qureshi");
        // Not those that are proposed, so that it is seen whose choice stays.
        page = await hollis.Follow(await hollis.Press(page.Button("Confirm this crew"), Places(page, "Yasmin Qureshi", "Tenzin Dolkar")));
        Assert.StartsWith("Yasmin Qureshi may not do this on all the days, the record is suspended", page.Said(), StringComparison.Ordinal);
        Assert.Equal(["Tenzin Dolkar"], Ticked(page));
        Assert.DoesNotContain("Confirmed by", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_list_says_that_somebody_of_a_crew_may_no_longer_do_it()
    {
        var hollis = await house.SignedIn("hollis");
        var page = await Planned(hollis, "Listed Freight");
        await hollis.Follow(await hollis.Press(page.Button("Confirm this crew"), Places(page, "Kwabena Osei", "Bao Nguyen")));
        Assert.DoesNotContain("may no longer", await Line(), StringComparison.Ordinal);
        await Suspend(hollis, "Kwabena Osei");
        Assert.Contains("1 of them may no longer do it", await Line(), StringComparison.Ordinal);

        async Task<string> Line() => (await hollis.Get("/jobs")).QuerySelectorAll("section[aria-labelledby=jobs] li")
            .Single(line => line.TextContent.Contains("Listed Freight", StringComparison.Ordinal)).TextContent;
    }

    [Fact]
    public async Task Who_has_left_the_trade_is_offered_neither_for_a_crew_nor_for_a_proof()
    {
        var hollis = await house.SignedIn("hollis");
        var ifeoma = await house.SignedIn("ifeoma");
        var nikau = await PersonOf(hollis, "Nikau Paraone");
        await ifeoma.Follow(await ifeoma.Post($"{nikau}/name-removal", (await ifeoma.Get($"{nikau}/name-removal")).TokenIn(), ("sure", "yes")));
        var page = await Planned(hollis, "Later Freight", "20");
        Assert.DoesNotContain("Name removed", page.QuerySelector("form[action$='/crew']")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("Name removed", (await hollis.Get("/proofs")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("Name removed", (await hollis.Get("/proofs?competency=electrical-isolation")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    private static async Task<IHtmlDocument> Planned(Visitor owner, string customer, string people = "2") => await owner.Follow(await owner.Post(
        "/jobs", (await owner.Get("/jobs")).TokenIn(), ("Customer", customer), ("Chassis", "K26-0160"), ("Kind", "truck-k26"),
        ("FirstDay", Day(5)), ("LastDay", Day(9)), ("Work", "A crane."), ("Competencies", "electrical-isolation"), ("People", people)));

    private static string Day(int fromToday) => DateTime.UtcNow.Date.AddDays(fromToday).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>The boxes of those people, and no other.</summary>
    private static (string, string)[] Places(IHtmlDocument page, params string[] names) =>
        [.. page.QuerySelectorAll("label.tick-tall").Where(label => names.Contains(label.QuerySelector("strong")!.TextContent))
            .Select(label => ("Places", label.QuerySelector("input")!.GetAttribute("value")!))];

    private static IEnumerable<string> Ticked(IHtmlDocument page) => page.QuerySelectorAll("label.tick-tall")
        .Where(label => label.QuerySelector("input") is IHtmlInputElement { IsChecked: true }).Select(label => label.QuerySelector("strong")!.TextContent);

    private static async Task<string> PersonOf(Visitor owner, string name) => (await owner.Get("/people")).QuerySelectorAll(".people-table a")
        .First(link => link.TextContent.StartsWith(name, StringComparison.Ordinal)).GetAttribute("href")!;

    private static async Task Suspend(Visitor owner, string name)
    {
        var page = await owner.Get(await PersonOf(owner, name));
        foreach (var form in page.QuerySelectorAll("form[action$='/suspension']"))
            await owner.Follow(await owner.Post(form.GetAttribute("action")!, page.TokenIn(), ("reason", "Sick leave.")));
    }
}
