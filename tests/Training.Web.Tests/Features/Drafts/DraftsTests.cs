using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Drafts;

/// <summary>The trainer's desk without a script, and what a script asks of it.</summary>
public sealed class DraftsTests : IAsyncDisposable
{
    private const string Path = "procedures/isolate-chassis.yaml";
    private readonly TrainingHouse house = new();

    public async ValueTask DisposeAsync() => await house.DisposeAsync();

    [Fact]
    public async Task A_draft_is_begun_saved_changed_in_sentences_and_published_without_a_script()
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
        var version = last.QuerySelector("input[name=drafts]")!.GetAttribute("value")!;
        var published = await tomasz.Post($"{address}/publication", last.TokenIn(), ("drafts", version));
        Assert.Contains("Published.", (await tomasz.Follow(published)).Said(), StringComparison.Ordinal);
        Assert.Contains("there was no other trainer", (await tomasz.Get("/desk")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
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
        var version = page.QuerySelector("input[name=drafts]")!.GetAttribute("value")!;
        var refused = await tomasz.Post($"{address}/publication", page.TokenIn(), ("drafts", version));
        Assert.Contains("error", (await tomasz.Follow(refused)).QuerySelector(".said-wrong")!.TextContent, StringComparison.Ordinal);
    }

    private static async Task<string> Begin(Visitor visitor)
    {
        var desk = await visitor.Get("/desk");
        return (await visitor.Post("/desk/drafts", desk.TokenIn(), ("path", Path))).Headers.Location!.ToString();
    }

    // A form's first line end is the browser's own.
    private static string Text(AngleSharp.Html.Dom.IHtmlDocument page) => page.QuerySelector("textarea#text")!.TextContent.TrimStart('\n');
}
