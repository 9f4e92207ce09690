using System.Net;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.People;

[Collection(SharedHouse.Name)]
public sealed class PeopleTests(TrainingHouse house)
{
    [Fact]
    public async Task An_owner_sees_who_may_do_what_and_what_lapses_next_in_the_own_shop_alone()
    {
        var page = await (await house.SignedIn("hollis")).Get("/people");
        var table = page.QuerySelector(".people-table")!.TextContent;
        foreach (var word in new[] { "Bao Nguyen", "Current", "Due for renewal", "Expired", "Suspended", "No record" })
            Assert.Contains(word, table, StringComparison.Ordinal);
        Assert.DoesNotContain("Teixeira", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Pilar Etxeberria", page.QuerySelector("section[aria-labelledby=lapses]")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task On_a_day_in_the_future_the_table_says_who_will_still_hold()
    {
        var page = await (await house.SignedIn("hollis")).Get("/people?on=2040-01-01");
        Assert.Contains("1 Jan 2040", page.QuerySelector("h1")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("nobody", page.QuerySelector("section[aria-labelledby=may]")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_day_is_said_and_today_is_shown()
    {
        var answer = await (await house.SignedIn("hollis")).Ask("/people?on=soon");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await Visitor.Page(answer);
        Assert.Contains("“soon” is no day", page.Said(), StringComparison.Ordinal);
        Assert.Equal("Who may do what today", page.QuerySelector("h1")!.TextContent);
    }

    [Fact]
    public async Task The_way_of_somebody_is_told_in_the_readers_language()
    {
        var (_, person) = await house.NewTechnician();
        var (visitor, _) = await house.NewOwner();
        var english = Told(await visitor.Get($"/people/{person}"));
        await visitor.Post("/language", (await visitor.Get("/people")).TokenIn(), ("language", "es"), ("back", "/people"));
        Assert.Empty(english.Intersect(Told(await visitor.Get($"/people/{person}"))));

        // What stands behind the colon is the content's own title.
        static IEnumerable<string> Told(AngleSharp.Html.Dom.IHtmlDocument page) =>
            page.QuerySelectorAll("section > h2, .way-list li > span").Select(line => line.TextContent).Where(text => text.Contains(": ", StringComparison.Ordinal)).Select(text => text.Split(": ")[1]);
    }

    [Fact]
    public async Task Whoever_adds_somebody_by_pressing_twice_sees_the_password()
    {
        var hollis = await house.SignedIn("hollis");
        var add = (await hollis.Get("/people")).Button("Add");
        (string, string)[] typed = [("DisplayName", "Pressed Twice"), ("UserName", "pressed.twice")];
        var answers = await Task.WhenAll(hollis.Press(add, typed), hollis.Press(add, typed));
        Assert.Equal(answers[0].Headers.Location, answers[1].Headers.Location);
        var password = (await hollis.Follow(answers[1])).QuerySelector(".given-password");
        Assert.NotNull(password);
        var other = await hollis.Press(add, ("DisplayName", "Somebody Else"), ("UserName", "somebody.else"));
        Assert.NotEqual(answers[0].Headers.Location, other.Headers.Location);
    }

    [Fact]
    public async Task A_one_time_password_is_shown_once_and_must_be_replaced()
    {
        var hollis = await house.SignedIn("hollis");
        var added = await hollis.Press((await hollis.Get("/people")).Button("Add"), ("DisplayName", "Noor Aziz"), ("UserName", "noor.aziz"));
        var page = await hollis.Follow(added);
        var password = page.QuerySelector(".given-password")!.TextContent;
        Assert.Null((await hollis.Follow(added)).QuerySelector(".given-password"));

        var noor = house.Stranger();
        await noor.Post("/sign-in", (await noor.Get("/sign-in")).TokenIn(), ("UserName", "noor.aziz"), ("Password", password));
        Assert.Equal("/password", (await noor.Ask("/next")).Headers.Location!.ToString());
    }

    [Fact]
    public async Task A_name_that_is_taken_is_refused_and_what_was_typed_stays()
    {
        var hollis = await house.SignedIn("hollis");
        var answer = await hollis.Press((await hollis.Get("/people")).Button("Add"), ("DisplayName", "Bao the Second"), ("UserName", "bao"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await Visitor.Page(answer);
        Assert.NotEqual("", page.QuerySelector("#wrong")!.TextContent);
        Assert.Equal("Bao the Second", page.QuerySelector("#DisplayName")!.GetAttribute("value"));
    }

    [Fact]
    public async Task An_owner_cannot_add_an_administrator_by_changing_the_form()
    {
        var hollis = await house.SignedIn("hollis");
        var answer = await hollis.Press((await hollis.Get("/people")).Button("Add"),
            ("DisplayName", "Sly Fox"), ("UserName", "sly.fox"), ("Roles", "administrator"), ("Shop", ""));
        var page = await hollis.Follow(answer);
        Assert.Contains("technician", page.QuerySelector("section[aria-labelledby=about]")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("administrator", page.QuerySelector("section[aria-labelledby=about]")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_administrator_adds_people_with_any_role_to_any_shop()
    {
        var ifeoma = await house.SignedIn("ifeoma");
        var page = await ifeoma.Get("/people");
        var shop = page.QuerySelectorAll("#Shop option").First(option => option.TextContent == "Brackenhill Bodyworks").GetAttribute("value")!;
        page = await ifeoma.Follow(await ifeoma.Press(page.Button("Add"),
            ("DisplayName", "Tui Parata"), ("UserName", "tui"), ("Shop", shop), ("Roles", "owner"), ("Roles", "technician")));
        Assert.Contains("Brackenhill Bodyworks", page.QuerySelector("section[aria-labelledby=about]")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("owner", page.QuerySelector("section[aria-labelledby=about]")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_forgotten_password_is_replaced_by_a_new_one_that_is_shown_once()
    {
        var hollis = await house.SignedIn("hollis");
        var rania = (await hollis.Get("/people")).QuerySelectorAll(".people-table a").First(link => link.TextContent.StartsWith("Rania", StringComparison.Ordinal)).GetAttribute("href")!;
        var page = await hollis.Follow(await hollis.Press((await hollis.Get(rania)).Button("Give a new one")));
        Assert.NotEqual("", page.QuerySelector(".given-password")!.TextContent);
    }
}
