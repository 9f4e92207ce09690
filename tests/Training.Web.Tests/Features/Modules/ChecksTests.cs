using System.Net;
using System.Text.Json;
using AngleSharp.Dom;
using Training.Content;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Modules;

public sealed class ChecksTests(HouseWithChecks house) : IClassFixture<HouseWithChecks>
{
    private const string Lesson = "/modules/99-relays";

    private static IElement FirstCheck(IParentNode page) => page.QuerySelector("form[data-check]")!;

    [Fact]
    public async Task An_answer_brings_the_page_back_at_the_question_with_the_reply()
    {
        var visitor = await house.House.SignedIn("bao");
        var check = FirstCheck(await visitor.Get(Lesson));
        Assert.Equal("", check.QuerySelector("[role=status]")!.TextContent.Trim());
        var rights = 0;
        var answers = check.QuerySelectorAll("button[name=answer]");
        Assert.InRange(answers.Length, 2, 4);
        foreach (var button in answers)
        {
            var answer = await visitor.Press(button);
            Assert.EndsWith("#" + check.Id, answer.Headers.Location!.ToString(), StringComparison.Ordinal);
            var back = (await visitor.Follow(answer)).GetElementById(check.Id!)!;
            Assert.NotEqual("", back.QuerySelector("[role=status]")!.TextContent.Trim());
            Assert.Equal(button.TextContent.Trim(), Assert.Single(back.QuerySelectorAll("[aria-pressed=true]")).TextContent.Trim());
            rights += back.QuerySelectorAll("[role=status] .right").Length;
        }

        Assert.Equal(1, rights);
    }

    [Fact]
    public async Task No_reply_stands_on_the_page_before_somebody_answers()
    {
        var visitor = await house.House.SignedIn("bao");
        var page = await visitor.Get(Lesson);
        var whole = page.DocumentElement.OuterHtml;
        foreach (var check in page.QuerySelectorAll("form[data-check]"))
        {
            foreach (var button in check.QuerySelectorAll("button[name=answer]"))
            {
                var reply = await Reply(visitor, check, button.GetAttribute("value")!, page.TokenIn());
                Assert.DoesNotContain(reply.GetProperty("html").GetString()!.Trim(), whole, StringComparison.Ordinal);
            }
        }

        Assert.Empty(page.QuerySelectorAll(".is-right, .is-wrong"));
    }

    [Fact]
    public async Task A_script_gets_the_reply_alone()
    {
        var visitor = await house.House.SignedIn("amara");
        var page = await visitor.Get(Lesson);
        var reply = await Reply(visitor, FirstCheck(page), "1", page.TokenIn());
        Assert.Equal(["heading", "html", "isRight"], reply.EnumerateObject().Select(part => part.Name).Order());
    }

    [Theory]
    [InlineData("/checks/1", "9")]
    [InlineData("/checks/99", "1")]
    [InlineData("/checks/1", "x")]
    public async Task What_is_not_asked_is_not_found(string check, string answer)
    {
        var visitor = await house.House.SignedIn("bao");
        var token = (await visitor.Get("/password")).TokenIn();
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Post(Lesson + check, token, ("answer", answer))).StatusCode);
    }

    [Fact]
    public async Task The_words_of_the_trade_are_listed_and_say_which_language_they_are_in()
    {
        var visitor = await house.House.SignedIn("bao");
        var page = await visitor.Get("/glossary");
        Assert.Equal("isolator", page.GetElementById("isolator")!.QuerySelector("dt")!.TextContent);
        page = await visitor.Get("/glossary?language=sw");
        Assert.Contains("not translated yet", page.Said(), StringComparison.Ordinal);
        Assert.Equal("en", page.GetElementById("isolator")!.GetAttribute("lang"));
    }

    private static async Task<JsonElement> Reply(Visitor visitor, IElement check, string answer, string token)
    {
        var said = await visitor.Send(check.GetAttribute("action")!, token, ("answer", answer));
        return JsonDocument.Parse(await said.Content.ReadAsStringAsync()).RootElement;
    }
}

/// <summary>A house whose content has one more lesson, with check questions that stay as they are here.</summary>
public sealed class HouseWithChecks : IDisposable
{
    private const string Lesson = """
        ---
        title: Relays
        minutes: 5
        ---
        ## What they are

        A relay is a switch.

        ::: check 2
        What moves the switch of a relay?

        - A hand.
          - No hand reaches it: look **inside** again.
        - A small current.
          - A small current makes a magnet, and the magnet moves the switch.
        :::

        ## How they end

        ::: check 1
        What do you hear?

        - A click.
          - The switch has moved.
        - A bang.
          - That was no relay.
        - Nothing.
          - Then it did not move: measure.
        :::
        """;

    private readonly string folder = Directory.CreateTempSubdirectory("training-web-content-").FullName;

    public HouseWithChecks()
    {
        var shipped = ContentFolder.Read(Path.Combine(Root(), "content"));
        foreach (var file in shipped.Append(new("modules/99-relays/lesson.md", Lesson)))
        {
            var path = Path.Combine(folder, "content", file.Path);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, file.Text);
        }

        House = new() { ContentRoot = folder };
    }

    public TrainingHouse House { get; }

    public void Dispose()
    {
        House.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    private static string Root()
    {
        var here = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(here.FullName, "Training.sln"))) here = here.Parent!;
        return here.FullName;
    }
}
