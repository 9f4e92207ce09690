using System.Net;
using System.Net.Http.Headers;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Modules;

[Collection(SharedHouse.Name)]
public sealed class ModulesTests(TrainingHouse house)
{
    private const string Lesson = "/modules/02-shut-down-and-isolate";

    [Fact]
    public async Task A_lesson_shows_its_contents_its_blocks_and_its_sources()
    {
        var page = await (await house.SignedIn("bao")).Get(Lesson);
        foreach (var link in page.QuerySelectorAll(".contents a"))
            Assert.NotNull(page.GetElementById(link.GetAttribute("href")![1..]));
        Assert.NotEmpty(page.QuerySelectorAll(".contents a"));
        Assert.NotEmpty(page.QuerySelectorAll(".line-plan svg[role=img]"));
        Assert.NotEmpty(page.QuerySelectorAll(".two-lists"));
        Assert.NotEmpty(page.QuerySelectorAll("aside.signal .signal-word"));
        var sources = page.QuerySelectorAll("section[aria-labelledby=sources-title] small").Select(small => small.TextContent).ToList();
        Assert.Contains(sources, text => text.StartsWith("published", StringComparison.Ordinal));
        Assert.Contains(sources, text => text.StartsWith("common practice, no published source", StringComparison.Ordinal));
        Assert.Contains(sources, text => text.StartsWith("from memory", StringComparison.Ordinal));
    }

    [Fact]
    public async Task No_two_parts_of_a_lesson_share_an_id()
    {
        var visitor = await house.SignedIn("bao");
        foreach (var link in (await visitor.Get("/modules")).QuerySelectorAll("main .lines a"))
        {
            var page = await visitor.Get(link.GetAttribute("href")!);
            var ids = page.QuerySelectorAll("[id]").Select(part => part.Id).ToList();
            Assert.Equal(ids.Distinct().Count(), ids.Count);
        }
    }

    [Fact]
    public async Task A_lesson_leads_to_the_practice_of_its_scenarios()
    {
        var visitor = await house.SignedIn("bao");
        var links = (await visitor.Get(Lesson)).QuerySelectorAll("section[aria-labelledby=practise-title] a").Select(link => link.GetAttribute("href")!).ToList();
        Assert.Contains("/scenarios/customer-waiting/practice?kind=order", links);
        foreach (var link in links) await visitor.Follow(await visitor.Ask(link));
    }

    [Fact]
    public async Task A_picture_comes_as_svg_that_may_do_nothing_and_is_not_sent_twice()
    {
        var visitor = await house.SignedIn("bao");
        var picture = (await visitor.Get(Lesson)).QuerySelector(".lesson figure img")!.GetAttribute("src")!;
        var answer = await visitor.Ask(picture);
        Assert.Equal("image/svg+xml", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal("sandbox; default-src 'none'; style-src 'unsafe-inline'", answer.Headers.GetValues("Content-Security-Policy").Single());
        using var again = new HttpRequestMessage(HttpMethod.Get, picture);
        again.Headers.IfNoneMatch.Add(new EntityTagHeaderValue(answer.Headers.ETag!.Tag));
        Assert.Equal(HttpStatusCode.NotModified, (await visitor.Client.SendAsync(again, TestContext.Current.CancellationToken)).StatusCode);
    }

    [Fact]
    public async Task A_picture_has_the_words_of_the_lessons_language_and_a_tag_of_its_own()
    {
        var visitor = await house.SignedIn("bao");
        var address = (await visitor.Get(Lesson + "?language=es")).QuerySelector(".lesson figure img[src*=drawbridge]")!.GetAttribute("src")!;
        Assert.Equal(Lesson + "/pictures/drawbridge.svg?words=es", address);
        var (spanish, english) = (await visitor.Ask(address), await visitor.Ask(Lesson + "/pictures/drawbridge.svg"));
        Assert.Contains(">abierto<", await spanish.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.NotEqual(english.Headers.ETag, spanish.Headers.ETag);
        Assert.Equal("sandbox; default-src 'none'; style-src 'unsafe-inline'", spanish.Headers.GetValues("Content-Security-Policy").Single());
        using var again = new HttpRequestMessage(HttpMethod.Get, address);
        again.Headers.IfNoneMatch.Add(new EntityTagHeaderValue(spanish.Headers.ETag!.Tag));
        Assert.Equal(HttpStatusCode.NotModified, (await visitor.Client.SendAsync(again, TestContext.Current.CancellationToken)).StatusCode);
        foreach (var other in new[] { "xx", "en", "..%2F..%2Fetc" })
            Assert.Equal(english.Headers.ETag, (await visitor.Ask(Lesson + "/pictures/drawbridge.svg?words=" + other)).Headers.ETag);
    }

    [Fact]
    public async Task The_names_of_sources_are_told_in_the_lessons_language()
    {
        var page = await (await house.SignedIn("bao")).Get(Lesson + "?language=es");
        Assert.NotEmpty(page.QuerySelectorAll(".sources li"));
        Assert.All(page.QuerySelectorAll(".sources [lang]"), part => Assert.Equal("es", part.GetAttribute("lang")));
        Assert.Contains("las cinco reglas de seguridad", page.QuerySelector(".sources")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_not_there_is_not_found()
    {
        var visitor = await house.SignedIn("bao");
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Ask("/modules/99-nothing")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Ask(Lesson + "/pictures/nothing.svg")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Ask(Lesson + "/pictures/..%2Flesson.md")).StatusCode);
    }

    [Fact]
    public async Task I_have_read_this_is_noted_once_and_said()
    {
        var (visitor, _) = await house.NewTechnician();
        var page = await visitor.Get(Lesson);
        page = await visitor.Follow(await visitor.Press(page.Button("I have read this lesson")));
        Assert.Contains("you have read this lesson", page.Said(), StringComparison.Ordinal);
        Assert.DoesNotContain(page.QuerySelectorAll("button"), button => button.TextContent.Contains("I have read", StringComparison.Ordinal));
        Assert.Equal("read", await WordOfTheLesson(visitor));
    }

    [Fact]
    public async Task A_form_without_its_token_changes_nothing()
    {
        var (visitor, _) = await house.NewTechnician();
        Assert.Equal(HttpStatusCode.BadRequest, (await visitor.Post(Lesson + "/readings", null)).StatusCode);
        Assert.Equal("not read yet", await WordOfTheLesson(visitor));
    }

    [Fact]
    public async Task A_trainer_reads_lessons_and_is_not_asked_to_have_read_them()
    {
        var page = await (await house.SignedIn("tomasz")).Get(Lesson);
        Assert.DoesNotContain(page.QuerySelectorAll("main button"), button => button.Closest("form[data-check]") is null);
    }

    [Fact]
    public async Task A_lesson_in_a_language_that_it_is_not_written_in_says_so()
    {
        var page = await (await house.SignedIn("bao")).Get(Lesson + "?language=sw");
        Assert.Contains("not translated yet", page.Said(), StringComparison.Ordinal);
        Assert.Equal("en", page.QuerySelector("article.lesson")!.GetAttribute("lang"));
    }

    private static async Task<string> WordOfTheLesson(Visitor visitor) =>
        (await visitor.Get("/modules")).QuerySelectorAll("main .lines > li").Single(line => line.QuerySelector($"a[href='{Lesson}']") is not null)
            .QuerySelector(".way-word")!.TextContent.Trim();
}
