using System.Net;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Sittings;

[Collection(SharedHouse.Name)]
public sealed class SittingsTests(TrainingHouse house)
{
    [Fact]
    public async Task An_examiner_opens_a_sitting_admits_somebody_and_closes_it()
    {
        var renske = await house.SignedIn("renske");
        var sitting = await renske.Follow(await renske.Press((await renske.Get("/sittings")).Button("Open the sitting"), ("Place", "Bay 3")));
        Assert.Contains("Nobody yet", sitting.QuerySelector("#papers")!.TextContent, StringComparison.Ordinal);

        var admit = sitting.QuerySelectorAll("button[name=person]").First(button => button.TextContent.Contains("Mele", StringComparison.Ordinal));
        sitting = await renske.Follow(await renske.Press(admit));
        Assert.Contains("Mele Fonoti", sitting.QuerySelector("#papers")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("admitted, not begun", sitting.QuerySelector("#papers")!.TextContent, StringComparison.Ordinal);

        sitting = await renske.Follow(await renske.Press(sitting.Button("Close it now")));
        Assert.Equal("The sitting is closed.", sitting.Said());
        Assert.Contains("never begun", sitting.QuerySelector("#papers")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain(sitting.QuerySelectorAll("button"), button => button.TextContent.StartsWith("Admit", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_paper_that_is_handed_in_is_shown_to_the_examiner_with_a_verdict_for_each_question()
    {
        var renske = await house.SignedIn("renske");
        var joao = await house.SignedIn("joao");
        var opened = await renske.Press((await renske.Get("/sittings")).Button("Open the sitting"), ("Place", "Bay 4"));
        var address = opened.Headers.Location!.ToString();
        var sitting = await renske.Follow(opened);
        await renske.Press(sitting.QuerySelectorAll("button[name=person]").First(button => button.TextContent.Contains("João", StringComparison.Ordinal)));
        var paper = (await joao.Get("/next")).QuerySelector("a[href^='/papers/']")!.GetAttribute("href")!;
        var token = (await joao.Get("/password")).TokenIn();
        await joao.Post($"{paper}/beginning", token);

        Assert.Contains("writing until", (await renske.Get(address)).QuerySelector("#papers")!.TextContent, StringComparison.Ordinal);
        var inSitting = $"{address}{paper}";
        Assert.Empty((await renske.Get(inSitting)).QuerySelectorAll(".verdict-word"));

        await joao.Post($"{paper}/hand-in", token);
        var shown = await renske.Get(inSitting);
        Assert.Contains("Not passed", shown.QuerySelector(".verdict-word")!.TextContent, StringComparison.Ordinal);
        Assert.NotEmpty(shown.QuerySelectorAll("section[aria-labelledby^='question-'] .drawing svg"));
        Assert.Contains("not passed", (await renske.Get(address)).QuerySelector("#papers")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sitting_without_a_place_is_not_opened_and_the_form_says_why()
    {
        var renske = await house.SignedIn("renske");
        var answer = await renske.Press((await renske.Get("/sittings")).Button("Open the sitting"), ("Place", " "));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal("Say in up to 200 characters where the sitting is.", (await Visitor.Page(answer)).QuerySelector("#wrong")!.TextContent);
    }

    [Fact]
    public async Task An_examiner_is_told_first_who_waits_to_be_observed()
    {
        var told = (await (await house.SignedIn("mateo")).Get("/sittings")).QuerySelector("#runs-ahead a")!;
        Assert.Equal("/runs", told.GetAttribute("href"));
        Assert.Matches(@"(\d+ people wait|1 person waits) to be observed", told.TextContent);
    }

    [Fact]
    public async Task The_form_comes_before_what_is_closed_and_only_the_newest_closed_ones_are_unfolded()
    {
        var page = await (await house.SignedIn("mateo")).Get("/sittings");
        Assert.Equal(["open", "begin", "closed"], page.QuerySelectorAll("main h2").Select(heading => heading.Id));
        var closed = page.QuerySelector("section[aria-labelledby=closed]")!;
        Assert.Equal(5, closed.QuerySelectorAll(":scope > ul > li").Length);
        Assert.NotEmpty(closed.QuerySelectorAll("details > ul > li"));
    }

    [Fact]
    public async Task What_is_examined_is_told_in_the_readers_language()
    {
        var renske = await house.SignedIn("renske");
        await renske.Post("/language", (await renske.Get("/sittings")).TokenIn(), ("language", "es"));
        var spanish = (await renske.Get("/sittings")).QuerySelectorAll("#Competency option").Select(option => option.TextContent).ToList();
        await renske.Post("/language", (await renske.Get("/sittings")).TokenIn(), ("language", "en"));
        var english = (await renske.Get("/sittings")).QuerySelectorAll("#Competency option").Select(option => option.TextContent).ToList();
        Assert.Empty(spanish.Intersect(english));
    }

    [Fact]
    public async Task Whoever_was_admitted_by_mistake_is_taken_off_again_and_refused_once_they_have_begun()
    {
        var renske = await house.SignedIn("renske");
        var (visitor, person) = await house.NewTechnician();
        var opened = await renske.Press((await renske.Get("/sittings")).Button("Open the sitting"), ("Place", "Bay 6"));
        var address = opened.Headers.Location!.ToString();
        var token = (await renske.Get(address)).TokenIn();
        await renske.Post($"{address}/admissions", token, ("person", person.ToString()));
        var page = await renske.Follow(await renske.Press((await renske.Get(address)).QuerySelector($"#papers button[name=person][value='{person}']")!));
        Assert.StartsWith("Taken off the sitting.", page.Said(), StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector($"section[aria-labelledby=admit] button[value='{person}']"));

        await renske.Post($"{address}/admissions", token, ("person", person.ToString()));
        var paper = (await visitor.Get("/next")).QuerySelector("a[href^='/papers/']")!.GetAttribute("href")!;
        await visitor.Post($"{paper}/beginning", (await visitor.Get("/password")).TokenIn());
        Assert.Null((await renske.Get(address)).QuerySelector("#papers button[name=person]"));
        page = await renske.Follow(await renske.Post($"{address}/admission-endings", token, ("person", person.ToString())));
        Assert.EndsWith("has begun the paper and cannot be taken off the sitting any more.", page.Said(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Only_the_examiner_who_opened_a_sitting_admits_to_it()
    {
        var renske = await house.SignedIn("renske");
        var mateo = await house.SignedIn("mateo");
        var opened = await renske.Press((await renske.Get("/sittings")).Button("Open the sitting"), ("Place", "Bay 5"));
        var address = opened.Headers.Location!.ToString();
        var person = (await renske.Get(address)).QuerySelector("button[name=person]")!.GetAttribute("value")!;
        Assert.Null((await mateo.Get(address)).QuerySelector("button[name=person]"));
        var answer = await mateo.Post($"{address}/admissions", (await mateo.Get("/password")).TokenIn(), ("person", person));
        Assert.Equal("Only the examiner who opened the sitting admits to it.", (await mateo.Follow(answer)).Said());
    }
}
