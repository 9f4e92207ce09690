using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using AngleSharp.Html.Dom;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Training.Records.Accounts;
using Training.Records.Publishing;
using Training.Web.Features.Shared;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Drafts;

/// <summary>The trainer's desk without a script, and what a script asks of it.</summary>
public sealed class DraftsTests : IAsyncDisposable
{
    private const string Path = "procedures/isolate-chassis.yaml";
    private readonly TrainingHouse house = new();

    public async ValueTask DisposeAsync() => await house.DisposeAsync();

    [Fact]
    public async Task A_draft_is_begun_saved_changed_in_sentences_and_approved_by_another_trainer_without_a_script()
    {
        var tomasz = await house.SignedIn("tomasz");
        var address = await Begin(tomasz);
        var page = await tomasz.Get(address);
        var text = Text(page);
        var saved = await tomasz.Post(address, page.TokenIn(), ("version", "1"), ("text", text.Replace("revision: 1", "revision: 2", StringComparison.Ordinal)));
        Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);

        page = await tomasz.Get(address);
        Assert.Contains("revision: 2", Text(page), StringComparison.Ordinal);
        await tomasz.Post($"{address}/form", page.TokenIn(), ("version", "2"), ("text", Text(page)), ("edit", "set|Rule|told-first"),
            ("Rule|told-first|first", "tell-people"), ("Rule|told-first|then", "open-isolator-bus"), ("Rule|told-first|then", "open-isolator-truck"),
            ("Rule|told-first|because", "People must know"), ("Rule|told-first|harm", "people"), ("Rule|told-first|severity", "serious"));
        page = await tomasz.Get(address);
        Assert.Contains("because: People must know", Text(page), StringComparison.Ordinal);

        var last = await tomasz.Get($"{address}/publication");
        Assert.Contains("Another trainer finds it", (await tomasz.Follow(await tomasz.Press(last.Button("Ask for approval")))).Said(), StringComparison.Ordinal);
        var keiko = await house.SignedIn("keiko");
        var approval = await keiko.Get($"{address}/publication");
        Assert.Contains("Published.", (await keiko.Follow(await keiko.Press(approval.Button("Approve and publish")))).Said(), StringComparison.Ordinal);
        Assert.Contains("Tomasz Zielinski wrote it, Keiko Arimura approved it.", await LastAct(tomasz), StringComparison.Ordinal);
        Assert.Contains("\\\"approver\\\"", await Log(tomasz), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_only_trainer_publishes_alone_and_the_public_log_says_so()
    {
        await using (var scope = house.Services.CreateAsyncScope())
        {
            var users = scope.ServiceProvider.GetRequiredService<UserManager<Person>>();
            await users.RemoveFromRoleAsync((await users.FindByNameAsync("keiko"))!, Roles.Trainer);
        }

        var tomasz = await house.SignedIn("tomasz");
        var address = await Begin(tomasz);
        var page = await tomasz.Get(address);
        await tomasz.Post(address, page.TokenIn(), ("version", "1"), ("text", Text(page).Replace("revision: 1", "revision: 2", StringComparison.Ordinal)));
        var last = await tomasz.Get($"{address}/publication");
        Assert.Contains("The public log will say that you published it alone", last.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Published.", (await tomasz.Follow(await tomasz.Press(last.Button("Publish")))).Said(), StringComparison.Ordinal);
        Assert.Contains("there was no other trainer", await LastAct(tomasz), StringComparison.Ordinal);
        Assert.Contains("\\\"alone\\\":true", await Log(tomasz), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_competency_is_shown_in_words_in_each_language_with_a_paper_that_could_be_drawn()
    {
        var tomasz = await house.SignedIn("tomasz");
        var address = await Begin(tomasz, "competencies/electrical-isolation.yaml");
        var page = await tomasz.Get($"{address}/preview");
        Assert.Equal("Electrical isolation of a chassis", page.QuerySelector("h1")!.TextContent);
        Assert.Contains("passed from 80 of 100 points", page.QuerySelector("section[aria-labelledby=asks]")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("24 months", page.QuerySelector("section[aria-labelledby=holds]")!.TextContent, StringComparison.Ordinal);
        var competency = house.Services.GetRequiredService<Library>().Current.Content.FindCompetency(new("electrical-isolation"))!;
        var drawn = Drawn(page);
        Assert.Equal(competency.Paper.Questions.Sum(draw => draw.Count), drawn.Count);
        var others = new List<string>();
        for (var paper = 2; paper < 8; paper++) others.AddRange(Drawn(await tomasz.Get($"{address}/preview?paper={paper}")));
        Assert.NotEmpty(others.Except(drawn));

        var spanish = await tomasz.Get($"{address}/preview?language=es");
        Assert.Equal(competency.TitleIn("es"), spanish.QuerySelector("h1")!.TextContent);
        Assert.Equal(WordBook.For("es")["What is asked"].Value, spanish.QuerySelector("#asks")!.TextContent);

        static List<string> Drawn(IHtmlDocument page) => [.. page.QuerySelectorAll("section[aria-labelledby=paper] li").Select(line => line.TextContent)];
    }

    [Fact]
    public async Task The_words_of_the_trade_are_shown_as_their_page_in_each_language()
    {
        var tomasz = await house.SignedIn("tomasz");
        var address = await Begin(tomasz, "glossary/es.yaml");
        var content = house.Services.GetRequiredService<Library>().Current.Content;
        Assert.Equal(content.TermsIn("es").Select(term => term.Word), Words(await tomasz.Get($"{address}/preview")));
        Assert.Equal(content.TermsIn("en").Select(term => term.Word), Words(await tomasz.Get($"{address}/preview?language=en")));

        static IEnumerable<string> Words(IHtmlDocument page) => page.QuerySelectorAll("dl.words dt").Select(word => word.TextContent);
    }

    [Fact]
    public async Task A_competency_that_cannot_be_read_shows_its_problems()
    {
        var tomasz = await house.SignedIn("tomasz");
        var address = await Begin(tomasz, "competencies/electrical-isolation.yaml");
        var page = await tomasz.Get(address);
        await tomasz.Post(address, page.TokenIn(), ("version", "1"), ("text", Text(page).Replace("pass-mark: 80", "pass-mark: lots", StringComparison.Ordinal)));
        Assert.Contains("competencies/electrical-isolation.yaml:", (await tomasz.Get($"{address}/preview")).QuerySelector(".problems")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_translation_is_begun_from_the_page_of_a_draft_and_a_second_trainer_is_told()
    {
        var tomasz = await house.SignedIn("tomasz");
        var desk = await tomasz.Get("/desk");
        var address = (await tomasz.Post("/desk/drafts/new", desk.TokenIn(), ("sort", "Procedure"), ("name", "fit-lift"), ("title", "Fit a tail lift"))).Headers.Location!.ToString();
        var page = await tomasz.Get(address);
        var begun = await tomasz.Post("/desk/translations", page.TokenIn(), ("path", "procedures/fit-lift.yaml"), ("language", "es"));
        page = await tomasz.Follow(begun);
        Assert.Contains("title: Fit a tail lift", Text(page), StringComparison.Ordinal);
        Assert.Contains("translate it", page.QuerySelector("[data-check]")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Say why it must be so", page.QuerySelector("section[aria-labelledby=english] pre")!.TextContent, StringComparison.Ordinal);
        var keiko = await house.SignedIn("keiko");
        var told = await keiko.Follow(await keiko.Post("/desk/translations", (await keiko.Get("/desk")).TokenIn(), ("path", "procedures/fit-lift.yaml"), ("language", "es")));
        Assert.Contains("Tomasz Zielinski has begun this text already", told.Said(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_in_every_language_is_offered_in_none_and_refused_with_a_sentence()
    {
        var tomasz = await house.SignedIn("tomasz");
        Assert.Null((await tomasz.Get("/modules/03-batteries")).QuerySelector("form[action='/desk/translations']"));
        var refused = await tomasz.Post("/desk/translations", (await tomasz.Get("/desk")).TokenIn(), ("path", "modules/03-batteries/lesson.md"), ("language", "es"));
        Assert.Contains("modules/03-batteries/lesson.es.md already", (await tomasz.Follow(refused)).Said(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await tomasz.Post("/desk/translations", (await tomasz.Get("/desk")).TokenIn(), ("path", Path), ("language", "xx"))).StatusCode);
    }

    [Fact]
    public async Task A_script_is_told_what_became_of_a_text_and_what_is_to_be_said_of_it()
    {
        var tomasz = await house.SignedIn("tomasz");
        var address = await Begin(tomasz);
        var page = await tomasz.Get(address);
        tomasz.Client.DefaultRequestHeaders.Accept.Add(new MediaTypeWithQualityHeaderValue("application/json"));
        var first = await tomasz.Post(address, page.TokenIn(), ("version", "1"), ("text", "one: 1"));
        Assert.Equal(2, JsonDocument.Parse(await first.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement.GetProperty("version").GetInt32());
        var late = await tomasz.Post(address, page.TokenIn(), ("version", "1"), ("text", "late: 1"));
        Assert.True(JsonDocument.Parse(await late.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement.GetProperty("isBeside").GetBoolean());
        tomasz.Client.DefaultRequestHeaders.Accept.Clear();
        page = await tomasz.Get(address);
        Assert.Equal("one: 1", Text(page));
        Assert.Contains("late: 1", page.QuerySelector("#beside")!.TextContent, StringComparison.Ordinal);

        var part = await Visitor.Page(await tomasz.Post($"{address}/check", page.TokenIn(), ("version", "2"), ("text", "id: isolate-chassis\nsteps: 1"), ("part", "true")));
        Assert.Null(part.QuerySelector("header.top"));
        Assert.Contains(part.QuerySelectorAll("[data-line]"), line => line.GetAttribute("data-level") == "bad");
        Assert.Equal("one: 1", Text(await tomasz.Get(address)));
    }

    [Fact]
    public async Task A_draft_with_an_error_is_not_published_and_says_why()
    {
        var tomasz = await house.SignedIn("tomasz");
        var address = await Begin(tomasz);
        var page = await tomasz.Get(address);
        await tomasz.Post(address, page.TokenIn(), ("version", "1"), ("text", Text(page).Replace("first: [note-lamps]", "first: [nothing]", StringComparison.Ordinal)));
        page = await tomasz.Get($"{address}/publication");
        Assert.Contains("nothing", page.QuerySelector(".problems")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("It cannot be published yet", page.QuerySelector("#missing")!.TextContent);
        var version = page.QuerySelector("input[name=drafts]")!.GetAttribute("value")!;
        var refused = await tomasz.Post($"{address}/publication", page.TokenIn(), ("drafts", version));
        Assert.Contains("error", (await tomasz.Follow(refused)).QuerySelector(".said-wrong")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lesson_that_its_translations_do_not_follow_is_told_where_it_is_written_and_where_it_is_offered()
    {
        var tomasz = await house.SignedIn("tomasz");
        const string more = "\n\n## What is new\n\nOne more thing.\n";
        var address = await Begin(tomasz, "modules/03-batteries/lesson.md");
        await Append(tomasz, address, more);
        var page = await tomasz.Get(address);
        Assert.Equal("No error here, but a translation is out of step", page.QuerySelector("#check")!.TextContent);
        Assert.Contains("modules/03-batteries/lesson.es.md", page.QuerySelector("[data-check]")!.TextContent, StringComparison.Ordinal);

        var last = await tomasz.Get($"{address}/publication");
        Assert.Equal("It cannot be published yet", last.QuerySelector("#missing")!.TextContent);
        Assert.Contains("With it, modules/03-batteries/lesson.es.md would have an error", (await tomasz.Follow(await tomasz.Press(last.Button("Ask for approval")))).Said(), StringComparison.Ordinal);

        foreach (var language in new[] { "es", "hi" })
            await Append(tomasz, await Begin(tomasz, $"modules/03-batteries/lesson.{language}.md"), more.Replace("new", "nuevo", StringComparison.Ordinal).Replace("One more thing", "Otra cosa", StringComparison.Ordinal));
        last = await tomasz.Get($"{address}/publication");
        Assert.Equal("Not by itself", last.QuerySelector("#missing")!.TextContent);
        Assert.Contains("Another trainer finds it", (await tomasz.Follow(await tomasz.Press(last.Button("Ask for approval")))).Said(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_draft_is_previewed_though_a_colleagues_has_an_error()
    {
        var keiko = await house.SignedIn("keiko");
        await Append(keiko, await Begin(keiko), "\nnot: [yaml");
        var tomasz = await house.SignedIn("tomasz");
        var page = await tomasz.Get($"{await Begin(tomasz, "modules/03-batteries/lesson.md")}/preview");
        Assert.NotNull(page.QuerySelector("article.lesson"));
        Assert.Contains(Path, page.Said(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_very_long_text_is_numbered_as_far_as_a_browser_bears_it()
    {
        var tomasz = await house.SignedIn("tomasz");
        var address = await Begin(tomasz, "modules/03-batteries/lesson.md");
        await Append(tomasz, address, new string('\n', 60_000));
        Assert.Equal(20_000, (await tomasz.Get(address)).QuerySelectorAll("[data-gutter] span").Length);
    }

    [Fact]
    public async Task A_procedure_that_nobody_could_follow_is_checked_without_its_orders_and_sentences()
    {
        var tomasz = await house.SignedIn("tomasz");
        var address = await Begin(tomasz);
        var page = await tomasz.Get(address);
        Assert.NotNull(page.QuerySelector(".procedure-form"));
        var steps = string.Concat(Enumerable.Range(0, 300).Select(step => $"  - {{ id: more-{step}, do: Do one more thing {step} }}\n"));
        await tomasz.Post(address, page.TokenIn(), ("version", "1"), ("text", Text(page).Replace("steps:\n", "steps:\n" + steps, StringComparison.Ordinal)));
        page = await tomasz.Get(address);
        Assert.Null(page.QuerySelector(".procedure-form"));
        Assert.Null(page.QuerySelector("#kind-0"));
        Assert.Contains("too long for its orders to be looked at", page.QuerySelector("[data-check]")!.TextContent, StringComparison.Ordinal);
    }

    private static async Task Append(Visitor visitor, string address, string text)
    {
        var page = await visitor.Get(address);
        var saved = await visitor.Post(address, page.TokenIn(), ("version", page.QuerySelector("input[name=version]")!.GetAttribute("value")!), ("text", Text(page) + text));
        Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
    }

    private static async Task<string> Begin(Visitor visitor, string path = Path)
    {
        var desk = await visitor.Get("/desk");
        return (await visitor.Post("/desk/drafts", desk.TokenIn(), ("path", path))).Headers.Location!.ToString();
    }

    private static async Task<string> LastAct(Visitor visitor) =>
        (await visitor.Get("/desk")).QuerySelector("section[aria-labelledby=log] li")!.TextContent;

    private static async Task<string> Log(Visitor visitor) =>
        await (await visitor.Ask("/log/export.jsonl")).Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

    // A form's first line end is the browser's own.
    private static string Text(AngleSharp.Html.Dom.IHtmlDocument page) => page.QuerySelector("textarea#text")!.TextContent.TrimStart('\n');
}
