using AngleSharp.Html.Dom;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Records;

public sealed class RecordActsTests(TrainingHouse house) : IClassFixture<TrainingHouse>
{
    [Fact]
    public async Task An_owner_suspends_and_reinstates_a_record_with_a_reason()
    {
        var hollis = await house.SignedIn("hollis");
        var record = await RecordOf(hollis, "Bao");
        var page = await hollis.Follow(await hollis.Press((await hollis.Get(record)).Button("Suspend it"), ("reason", "Off work for a month.")));
        Assert.Contains("Suspended", page.QuerySelector(".record-card .state")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Off work for a month.", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);

        page = await hollis.Follow(await hollis.Press(page.Button("Reinstate it"), ("reason", "Back again.")));
        Assert.Contains("Current", page.QuerySelector(".record-card .state")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_reason_nothing_is_done()
    {
        var hollis = await house.SignedIn("hollis");
        var record = await RecordOf(hollis, "Pilar");
        var page = await hollis.Follow(await hollis.Press((await hollis.Get(record)).Button("Suspend it"), ("reason", "  ")));
        Assert.Equal("Say in up to 500 characters why.", page.Said());
        Assert.Contains("Due", page.QuerySelector(".record-card .state")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nobody_is_offered_to_act_on_their_own_record_or_does()
    {
        var leila = await house.SignedIn("leila");
        var record = await RecordOf(leila, "Leila");
        var page = await leila.Get(record);
        Assert.DoesNotContain(page.QuerySelectorAll("form"), form => ((IHtmlFormElement)form).Action.Contains("suspension", StringComparison.Ordinal));
        var answer = await leila.Post($"{record}/suspension", page.TokenIn(), ("reason", "Because I can."));
        Assert.Equal("Nobody decides about their own record.", (await leila.Follow(answer)).Said());
    }

    [Fact]
    public async Task An_administrator_withdraws_for_good_only_with_the_tick()
    {
        var ifeoma = await house.SignedIn("ifeoma");
        var record = await RecordOf(ifeoma, "Dmytro");
        var token = (await ifeoma.Get(record)).TokenIn();
        var page = await ifeoma.Follow(await ifeoma.Post($"{record}/withdrawal", token, ("reason", "A forged run.")));
        Assert.StartsWith("Set the tick first", page.Said(), StringComparison.Ordinal);
        Assert.Contains("Expired", page.QuerySelector(".record-card .state")!.TextContent, StringComparison.Ordinal);

        page = await ifeoma.Follow(await ifeoma.Post($"{record}/withdrawal", token, ("reason", "A forged run."), ("sure", "yes")));
        Assert.Contains("Withdrawn", page.QuerySelector(".record-card .state")!.TextContent, StringComparison.Ordinal);
        Assert.Null(page.QuerySelector("form[action$=withdrawal]"));
    }

    private static async Task<string> RecordOf(Visitor reader, string name)
    {
        var person = (await reader.Get("/people")).QuerySelectorAll(".people-table a").First(link => link.TextContent.StartsWith(name, StringComparison.Ordinal));
        return (await reader.Get(person.GetAttribute("href")!)).QuerySelector("a[href^='/records/']")!.GetAttribute("href")!;
    }
}
