using System.Net;
using AngleSharp.Html.Dom;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Coverage;

[Collection(SharedHouse.Name)]
public sealed class CoverageTests(TrainingHouse house)
{
    [Fact]
    public async Task An_owner_is_led_to_who_may_do_what_and_sees_what_lapses_and_whom_to_send()
    {
        var hollis = await house.SignedIn("hollis");
        var page = await hollis.Follow(await hollis.Ask("/"));
        Assert.Equal("Who may do what today", page.QuerySelector("h1")!.TextContent);
        Assert.Contains("people", page.QuerySelector("section[aria-labelledby=today]")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Pilar Etxeberria", page.QuerySelector("section[aria-labelledby=lapses]")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Sione Tupou", page.QuerySelector("section[aria-labelledby=today]")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("Teixeira", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        var picture = page.QuerySelector("figure.coverage svg")!;
        Assert.Equal("img", picture.GetAttribute("role"));
        Assert.Contains(page.QuerySelectorAll("figure.coverage svg desc"), told => told.TextContent.Contains("8 people", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_need_is_saved_and_the_page_says_when_it_is_missed()
    {
        var leila = await house.SignedIn("leila");
        var page = await leila.Follow(await leila.Press((await leila.Get("/coverage")).Button("Save"), Needs(await leila.Get("/coverage"), "10")));
        Assert.Contains("Too few today: 8 of 10.", page.QuerySelector("section[aria-labelledby=today]")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("2 more people must earn it", page.QuerySelector("section[aria-labelledby=send]")!.TextContent, StringComparison.Ordinal);
        page = await leila.Follow(await leila.Press(page.Button("Save"), Needs(page, "8")));
        Assert.Contains("on too few, if nobody is sent", page.QuerySelector("section[aria-labelledby=today]")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Pilar Etxeberria", page.QuerySelector("section[aria-labelledby=send]")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("many", "Write whole numbers, such as 2; 0 where you need nobody.")]
    [InlineData("1000", "A shop needs from 0 to 200 people; write a whole number.")]
    public async Task What_is_no_need_is_said_beside_the_field_and_what_was_typed_stays(string typed, string sentence)
    {
        var hollis = await house.SignedIn("hollis");
        var opened = await hollis.Get("/coverage");
        var answer = await hollis.Press(opened.Button("Save"), Needs(opened, typed));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await Visitor.Page(answer);
        Assert.Equal(sentence, page.QuerySelector("#wrong")!.TextContent);
        Assert.Contains(typed, page.QuerySelectorAll("input[name=People]").Select(field => ((IHtmlInputElement)field).Value));
    }

    [Fact]
    public async Task A_form_that_lacks_a_number_changes_nothing()
    {
        var hollis = await house.SignedIn("hollis");
        var answer = await hollis.Post("/coverage/needs", (await hollis.Get("/coverage")).TokenIn(), ("Competencies", "electrical-isolation"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
    }

    /// <summary>The form's numbers, that of the isolation changed.</summary>
    private static (string, string)[] Needs(IHtmlDocument page, string isolation) =>
        [.. page.QuerySelectorAll("form[action='/coverage/needs'] .field").Select(field => ("People",
            field.QuerySelector("input[name=Competencies]")!.GetAttribute("value") == "electrical-isolation"
                ? isolation : ((IHtmlInputElement)field.QuerySelector("input[name=People]")!).Value))];

    [Fact]
    public async Task One_press_leads_to_a_proof_with_the_people_of_a_competency_ticked()
    {
        var hollis = await house.SignedIn("hollis");
        var link = (await hollis.Get("/coverage")).QuerySelector("a[href='/proofs?competency=electrical-isolation']")!.GetAttribute("href")!;
        var ticked = (await hollis.Get(link)).QuerySelectorAll("label.tick").Where(label => label.QuerySelector("input") is IHtmlInputElement { IsChecked: true })
            .Select(label => label.Closest(".choice-person")!.QuerySelector(".choice-name")!.TextContent);
        Assert.Equal(
            ["Bao Nguyen", "Ioana Marinescu", "Kwabena Osei", "Leila Haddad", "Nikau Paraone", "Pilar Etxeberria", "Tenzin Dolkar", "Yasmin Qureshi"],
            ticked.Order());
    }
}
