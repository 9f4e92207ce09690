using System.Net;
using AngleSharp.Html.Dom;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Proofs;

[Collection(SharedHouse.Name)]
public sealed class ProofsTests(TrainingHouse house)
{
    [Fact]
    public async Task A_customer_sees_yes_and_the_chosen_people_alone_without_signing_in()
    {
        var link = await Made("Bao Nguyen");
        var answer = await house.Stranger().Ask(link);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains("noindex", string.Join(",", answer.Headers.GetValues("X-Robots-Tag")), StringComparison.Ordinal);
        Assert.True(answer.Headers.CacheControl!.NoStore);
        Assert.Equal(["no-referrer"], answer.Headers.GetValues("Referrer-Policy"));

        var page = await Visitor.Page(answer);
        Assert.StartsWith("Yes", page.QuerySelector("h1.answer-yes")!.TextContent.Trim(), StringComparison.Ordinal);
        var said = page.QuerySelector("main")!.TextContent;
        foreach (var word in new[] { "Bao Nguyen", "Quillmoor Coachworks", "Larkfield Haulage", "Since", "Until" })
            Assert.Contains(word, said, StringComparison.Ordinal);
        foreach (var other in new[] { "Pilar", "Sione", "Hollis" }) Assert.DoesNotContain(other, said, StringComparison.Ordinal);
        Assert.Null(page.QuerySelector(".rooms"));
        Assert.NotNull(page.QuerySelector(".qr svg title"));
    }

    [Fact]
    public async Task One_record_that_does_not_hold_makes_it_no()
    {
        var page = await house.Stranger().Get(await Made("Bao Nguyen", "Sione Tupou"));
        Assert.StartsWith("No", page.QuerySelector("h1.answer-no")!.TextContent.Trim(), StringComparison.Ordinal);
        Assert.Contains("only 1 of these 2 records hold", page.QuerySelector("h1")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_customer_can_ask_how_it_stood_on_an_earlier_day()
    {
        var page = await house.Stranger().Get(await Made("Bao Nguyen") + "?on=2020-01-01");
        Assert.Contains("1 Jan 2020", page.QuerySelector("h1.answer-no")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2090-01-01", "1 Jan 2090 is yet to come: a proof speaks of today or of a day before. This is ")]
    [InlineData("yesterday", "“yesterday” is no day; this is today. Write a day as 2026-03-14.")]
    public async Task A_day_that_cannot_be_shown_is_said_first(string day, string sentence)
    {
        var answer = await house.Stranger().Ask($"{await Made("Bao Nguyen")}?on={day}");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await Visitor.Page(answer);
        Assert.StartsWith(sentence, page.QuerySelector(".wrong")!.TextContent, StringComparison.Ordinal);
        // Whoever reads the answer has read before it that it is one to another day.
        Assert.Equal(page.QuerySelector("main [role=alert]"), page.QuerySelector("main .reading-width")!.FirstElementChild);
    }

    [Fact]
    public async Task A_sheet_of_a_day_that_cannot_be_shown_leads_to_the_page_that_says_so()
    {
        var link = await Made("Bao Nguyen");
        var answer = await house.Stranger().Ask($"{link}/sheet.pdf?on=2090-01-01");
        Assert.Equal($"{link}?on=2090-01-01", answer.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task What_cannot_be_printed_is_said_on_the_customers_page()
    {
        var stranger = house.Stranger();
        var link = await Made("Sione Tupou");
        var answer = await stranger.Ask($"{link}/cards.pdf");
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Contains("there is no card to print", (await stranger.Get(link)).QuerySelector(".said-wrong")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nothing_of_the_house_is_for_machines_that_gather_pages()
    {
        var answer = await house.Stranger().Ask("/robots.txt");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("User-agent: *\nDisallow: /\n", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task An_ended_proof_says_so_and_names_nobody()
    {
        var hollis = await house.SignedIn("hollis");
        var link = await Made("Bao Nguyen");
        var mine = (await hollis.Get("/proofs")).QuerySelector("a[href^='/proofs/']")!.GetAttribute("href")!;
        await hollis.Press((await hollis.Get(mine)).Button("End it"));
        var answer = await house.Stranger().Ask(link);
        Assert.Equal(HttpStatusCode.Gone, answer.StatusCode);
        var said = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("This proof was ended", said, StringComparison.Ordinal);
        foreach (var word in new[] { "Bao", "Quillmoor", "Larkfield" }) Assert.DoesNotContain(word, said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_unknown_link_leads_to_a_plain_page()
    {
        var answer = await house.Stranger().Ask("/p/nothing-of-the-kind");
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("There is no proof under this link", (await Visitor.Page(answer)).Said(), StringComparison.Ordinal);
        Assert.Contains("noindex", string.Join(",", answer.Headers.GetValues("X-Robots-Tag")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_proof_of_nobody_is_not_made_and_the_customers_name_stays()
    {
        var hollis = await house.SignedIn("hollis");
        var answer = await hollis.Press((await hollis.Get("/proofs")).Button("Make the proof"), ("ForWhom", "Larkfield Haulage"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await Visitor.Page(answer);
        Assert.StartsWith("Choose at least one record", page.QuerySelector("#wrong[autofocus]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Larkfield Haulage", page.QuerySelector("#ForWhom")!.GetAttribute("value"));
    }

    [Fact]
    public async Task Looking_for_somebody_keeps_what_is_ticked_and_shows_it_first()
    {
        var hollis = await house.SignedIn("hollis");
        var page = await hollis.Get("/proofs");
        var pilar = page.QuerySelectorAll("label.tick").First(label => label.TextContent.Contains("Pilar", StringComparison.Ordinal)).QuerySelector("input")!.GetAttribute("value")!;
        page = await Visitor.Page(await hollis.Post("/proofs/choice", page.TokenIn(), ("Records", pilar), ("ForWhom", "Larkfield Haulage"), ("Find", "bao")));
        Assert.Equal(["Pilar Etxeberria", "Bao Nguyen"], page.QuerySelectorAll(".choice-name").Select(name => name.TextContent));
        Assert.Equal(pilar, Assert.Single(page.QuerySelectorAll("input[name=Records][checked]")).GetAttribute("value"));
        Assert.Equal("Larkfield Haulage", page.QuerySelector("#ForWhom")!.GetAttribute("value"));
    }

    [Theory]
    [InlineData("ETXEBERRIA", new[] { "Pilar Etxeberria" })]
    [InlineData("bao, pilar", new[] { "Bao Nguyen", "Pilar Etxeberria" })]
    [InlineData("joao", new string[0])]
    public async Task People_are_found_by_parts_of_their_names(string find, string[] names)
    {
        var page = await (await house.SignedIn("hollis")).Get($"/proofs?find={find}");
        Assert.Equal(names, page.QuerySelectorAll(".choice-name").Select(name => name.TextContent));
        Assert.Equal(names.Length == 0, page.QuerySelector(".choice [role=status]") is not null);
    }

    [Fact]
    public async Task People_are_found_by_what_they_may_do()
    {
        var page = await (await house.SignedIn("hollis")).Get("/proofs?find=isolation");
        Assert.Contains("Bao Nguyen", page.QuerySelectorAll(".choice-name").Select(name => name.TextContent));
    }

    [Fact]
    public async Task Records_that_hold_stand_before_those_that_do_not()
    {
        var page = await (await house.SignedIn("hollis")).Get("/proofs");
        Assert.Empty(page.QuerySelectorAll(".choice > .choice-person .state:not(.state-current, .state-due)"));
        Assert.NotEmpty(page.QuerySelectorAll(".choice > details .state-suspended"));
    }

    [Fact]
    public async Task A_mail_scanner_that_asks_for_the_head_alone_finds_the_proof()
    {
        var link = await Made("Bao Nguyen");
        using var request = new HttpRequestMessage(HttpMethod.Head, link);
        var answer = await house.Stranger().Client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("text/html", answer.Content.Headers.ContentType!.MediaType);
        Assert.Empty(await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
    }

    private async Task<string> Made(params string[] names)
    {
        var hollis = await house.SignedIn("hollis");
        var page = await hollis.Get("/proofs");
        var ticks = page.QuerySelectorAll("label.tick").Where(label => names.Any(name => label.TextContent.Contains(name, StringComparison.Ordinal)))
            .Select(label => ("Records", label.QuerySelector("input")!.GetAttribute("value")!));
        var proof = await hollis.Follow(await hollis.Press(page.Button("Make the proof"), [("ForWhom", "Larkfield Haulage"), .. ticks]));
        return new Uri(((IHtmlInputElement)proof.QuerySelector("#link")!).Value).PathAndQuery;
    }
}
