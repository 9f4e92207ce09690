using System.Net;
using AngleSharp.Html.Dom;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Records;

public sealed class RecordConfirmationsTests(TrainingHouse house) : IClassFixture<TrainingHouse>
{
    [Fact]
    public async Task An_owner_is_led_to_the_record_confirms_it_and_its_end_moves_while_the_log_holds()
    {
        var hollis = await house.SignedIn("hollis");
        var link = (await hollis.Get("/reminders")).QuerySelectorAll("section[aria-labelledby=shop] a[href^='/records/']")
            .Single(line => line.TextContent.Contains("Ioana Marinescu: confirm by", StringComparison.Ordinal)).GetAttribute("href")!;
        var record = link.Split('#')[0];
        var page = await hollis.Get(record);
        Assert.NotNull(page.GetElementById(link.Split('#')[1]));
        var before = Of(page, "To be confirmed by");
        Assert.Equal(before, Of(page, "Until"));
        var promised = page.QuerySelector("form[action$='/confirmation'] p")!.TextContent;

        page = await hollis.Follow(await hollis.Press(page.Button("Confirm it"), ("work", "Made L18-0427 ready for the new door, May.")));
        var after = Of(page, "To be confirmed by");
        Assert.NotEqual(before, after);
        Assert.Contains(after, promised, StringComparison.Ordinal);
        Assert.Contains("by Hollis Penrose", Of(page, "Confirmed"), StringComparison.Ordinal);
        Assert.Contains("Made L18-0427 ready for the new door, May.", page.QuerySelector("section[aria-labelledby=events-title]")!.TextContent, StringComparison.Ordinal);
        var number = page.QuerySelectorAll("section[aria-labelledby=events-title] a")[^1].GetAttribute("href")!.Split('/')[^1];
        var log = await (await hollis.Ask("/log/export.jsonl")).Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        var logged = log.Split('\n').Single(line => line.Contains("record-confirmed", StringComparison.Ordinal) && line.EndsWith($"\"index\":{number}}}", StringComparison.Ordinal));
        foreach (var said in new[] { "Ioana", "Hollis", "L18" }) Assert.DoesNotContain(said, logged, StringComparison.Ordinal);

        var again = await hollis.Follow(await hollis.Press(page.Button("Confirm it"), ("work", "Once more.")));
        Assert.Equal(after, Of(again, "To be confirmed by"));
        Assert.DoesNotContain("Once more.", again.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_person_themself_is_told_who_confirms_and_may_not()
    {
        var kwabena = await house.SignedIn("kwabena");
        var record = await HotWork(kwabena);
        var page = await kwabena.Get(record);
        Assert.Contains("Somebody else must confirm", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Null(page.QuerySelector("form[action$='/confirmation']"));
        Assert.Equal(HttpStatusCode.Forbidden, (await kwabena.Post($"{record}/confirmation", page.TokenIn(), ("work", "I do it daily."))).StatusCode);
        var leila = await house.SignedIn("leila");
        var own = (await leila.Get("/records")).QuerySelector(".record-card a[href^='/records/']")!.GetAttribute("href")!;
        var answer = await leila.Post($"{own}/confirmation", (await leila.Get(own)).TokenIn(), ("work", "I do it daily."));
        Assert.Equal("Nobody decides about their own record.", (await leila.Follow(answer)).Said());
    }

    [Fact]
    public async Task Another_shops_owner_gets_the_answer_of_what_is_not_there_and_the_providers_examiner_may()
    {
        var record = await HotWork(await house.SignedIn("kwabena"));
        var signe = await house.SignedIn("signe");
        var token = (await signe.Get("/people")).TokenIn();
        var others = await signe.Post($"{record}/confirmation", token, ("work", "Seen."));
        var nothing = await signe.Post($"/records/{Guid.NewGuid()}/confirmation", token, ("work", "Seen."));
        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.NotFound), (others.StatusCode, nothing.StatusCode));
        Assert.Equal((await Visitor.Page(others)).Said(), (await Visitor.Page(nothing)).Said());
        var mateo = await house.SignedIn("mateo");
        var page = await mateo.Follow(await mateo.Press((await mateo.Get(record)).Button("Confirm it"), ("work", "Was beside K26-0131 in the bay.")));
        Assert.Contains("by Mateo Quispe", Of(page, "Confirmed"), StringComparison.Ordinal);
        Assert.Contains("by Hollis Penrose", Of(page, "Confirmed"), StringComparison.Ordinal);
    }

    private static async Task<string> HotWork(Visitor technician) => (await technician.Get("/records")).QuerySelectorAll(".record-card")
        .Single(card => card.QuerySelector("h2")!.TextContent.StartsWith("Before and after welding", StringComparison.Ordinal))
        .QuerySelector("a[href^='/records/']")!.GetAttribute("href")!;

    /// <summary>What stands beside a word in the record's list.</summary>
    private static string Of(IHtmlDocument page, string word) =>
        page.QuerySelectorAll(".record-card dt").Single(term => term.TextContent == word).NextElementSibling!.TextContent.Trim();
}
