using System.Globalization;
using System.Net;
using AngleSharp.Html.Dom;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Jobs;

[Collection(SharedHouse.Name)]
public sealed class JobsTests(TrainingHouse house)
{
    [Fact]
    public async Task A_job_is_planned_its_crew_confirmed_and_proved_in_one_press_each()
    {
        var hollis = await house.SignedIn("hollis");
        var page = await Planned(hollis, 5, 9, "2");
        Assert.Equal("The crew that we propose", page.QuerySelector("#crew")!.TextContent);
        Assert.Equal(2, page.QuerySelectorAll("input[name=Places]").Count(box => ((IHtmlInputElement)box).IsChecked));
        page = await hollis.Follow(await hollis.Press(page.Button("Confirm this crew")));
        Assert.Contains("Confirmed by Hollis Penrose", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        var proof = await hollis.Follow(await hollis.Press(page.Button("Make the proof for Larkfield Haulage")));
        Assert.Contains("Larkfield Haulage: K26-0142", proof.QuerySelector("h1")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(2, proof.QuerySelectorAll("section[aria-labelledby=shows] li").Length);
    }

    [Fact]
    public async Task A_crew_is_confirmed_and_proved_in_one_press_and_the_customer_sees_its_days()
    {
        var hollis = await house.SignedIn("hollis");
        var page = await Planned(hollis, -3, 4, "2");
        var proof = await hollis.Follow(await hollis.Press(page.Button("Confirm it and make the proof for Larkfield Haulage")));
        var link = new Uri(proof.QuerySelector("#link")!.GetAttribute("value")!).AbsolutePath;
        var customer = house.Stranger();
        var seen = await customer.Get(link);
        var days = seen.QuerySelector("section[aria-labelledby=job]")!;
        Assert.Equal(2, days.QuerySelectorAll("li").Count(line => line.TextContent.Contains("yes, on every day", StringComparison.Ordinal)));
        Assert.Contains("holds if nothing happens", days.TextContent, StringComparison.Ordinal);
        using var pdf = UglyToad.PdfPig.PdfDocument.Open(await customer.Client.GetByteArrayAsync($"{link}/sheet.pdf", TestContext.Current.CancellationToken));
        Assert.Equal(1, pdf.NumberOfPages);
        Assert.Contains("K26-0142", string.Join(' ', pdf.GetPage(1).GetWords().Select(word => word.Text)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_place_that_nobody_fills_says_who_comes_nearest_and_why()
    {
        var hollis = await house.SignedIn("hollis");
        var said = (await Planned(hollis, 35, 50, "10")).QuerySelector("form[action$='/crew']")!.TextContent;
        Assert.Contains("Pilar Etxeberria: the record ends on", said, StringComparison.Ordinal);
        Assert.Contains("Sione Tupou: the record is suspended.", said, StringComparison.Ordinal);
        Assert.Contains("Dmytro Kovalenko: the record ended on", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_day_says_who_of_the_crew_was_competent()
    {
        var hollis = await house.SignedIn("hollis");
        var page = await hollis.Follow(await hollis.Press((await Planned(hollis, -3, 3, "1")).Button("Confirm this crew")));
        var address = page.QuerySelector("form[method=get]")!.GetAttribute("action")!;
        var said = (await hollis.Get($"{address}?on={Day(0)}")).QuerySelector("section[aria-labelledby=then]")!.TextContent;
        Assert.Contains("yes", said, StringComparison.Ordinal);
        var early = (await hollis.Get($"{address}?on=2020-01-01")).QuerySelector("section[aria-labelledby=then]")!.TextContent;
        Assert.Contains("That is no day of this job.", early, StringComparison.Ordinal);
        Assert.Contains("No record", early, StringComparison.Ordinal);
        var answer = await hollis.Ask($"{address}?on=yesterday");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
    }

    [Fact]
    public async Task What_is_no_job_is_said_and_what_was_typed_stays()
    {
        var hollis = await house.SignedIn("hollis");
        var answer = await Plan(hollis, 5, 2, "1");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await Visitor.Page(answer);
        Assert.Equal("The last day is before the first.", page.QuerySelector("#wrong")!.TextContent);
        Assert.Equal("K26-0142", page.QuerySelector("#Chassis")!.GetAttribute("value"));
    }

    [Fact]
    public async Task Nobody_ticked_is_no_crew()
    {
        var hollis = await house.SignedIn("hollis");
        var page = await Planned(hollis, 5, 9, "1");
        var address = page.QuerySelector("form[action$='/crew']")!.GetAttribute("action")!;
        page = await hollis.Follow(await hollis.Post(address, page.TokenIn()));
        Assert.Contains("Choose at least one person.", page.Said(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_that_is_sent_twice_plans_one_job()
    {
        var hollis = await house.SignedIn("hollis");
        var page = await hollis.Get("/jobs");
        (string, string)[] fields =
        [
            ("Key", page.QuerySelector("input[name=Key]")!.GetAttribute("value")!),
            ("Customer", "Twice Freight"), ("Chassis", "K26-0150"), ("Kind", "truck-k26"), ("FirstDay", Day(5)), ("LastDay", Day(6)),
            ("Work", "A crane."), ("Competencies", "electrical-isolation"), ("People", "1"),
        ];
        var first = (await hollis.Post("/jobs", page.TokenIn(), fields)).Headers.Location;
        Assert.Equal(first, (await hollis.Post("/jobs", page.TokenIn(), fields)).Headers.Location);
        Assert.Single((await hollis.Get("/jobs")).QuerySelectorAll("section[aria-labelledby=jobs] li"), line => line.TextContent.Contains("Twice Freight", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_job_is_called_off_and_stays_in_the_list()
    {
        var hollis = await house.SignedIn("hollis");
        var page = await Planned(hollis, 5, 9, "1");
        page = await hollis.Follow(await hollis.Press(page.Button("Call it off")));
        Assert.Contains("Called off by Hollis Penrose", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain(page.QuerySelectorAll("button"), button => button.TextContent.Contains("Confirm", StringComparison.Ordinal));
        var address = page.QuerySelector("form[method=get]")!.GetAttribute("action");
        Assert.Contains("called off on", (await hollis.Get("/jobs")).QuerySelector($"a[href='{address}']")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1999-01-01")]
    [InlineData("2199-12-31")]
    public async Task A_day_in_another_age_is_a_slip_of_the_hand_and_said_to_be_one(string day)
    {
        var hollis = await house.SignedIn("hollis");
        var answer = await hollis.Post("/jobs", (await hollis.Get("/jobs")).TokenIn(),
            ("Customer", "Larkfield Haulage"), ("Chassis", "K26-0142"), ("Kind", "truck-k26"), ("FirstDay", day), ("LastDay", day),
            ("Work", "A crane."), ("Competencies", "electrical-isolation"), ("People", "1"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.StartsWith("The days of a job lie at most 10 years", (await Visitor.Page(answer)).QuerySelector("#wrong")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_demo_has_a_job_with_its_crew()
    {
        var page = await (await house.SignedIn("leila")).Get("/jobs");
        Assert.Contains("Larkfield Haulage", page.QuerySelector("section[aria-labelledby=jobs]")!.TextContent, StringComparison.Ordinal);
    }

    private static string Day(int fromToday) => DateTime.UtcNow.Date.AddDays(fromToday).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static async Task<IHtmlDocument> Planned(Visitor owner, int first, int last, string people) => await owner.Follow(await Plan(owner, first, last, people));

    private static async Task<HttpResponseMessage> Plan(Visitor owner, int first, int last, string people)
    {
        var page = await owner.Get("/jobs");
        return await owner.Post("/jobs", page.TokenIn(),
            ("Customer", "Larkfield Haulage"), ("Chassis", "K26-0142"), ("Kind", "truck-k26"), ("FirstDay", Day(first)), ("LastDay", Day(last)),
            ("Work", "A refrigerated box on a bare chassis."), ("Competencies", "electrical-isolation"), ("People", people));
    }
}
