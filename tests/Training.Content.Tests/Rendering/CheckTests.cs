using AngleSharp.Html.Parser;
using Training.Content.Modules;
using Training.Content.Rendering;

namespace Training.Content.Tests.Rendering;

public sealed class CheckTests
{
    private static readonly ContentLibrary Library = ContentReader.Read(ContentFolders.Good).Library!;
    private static readonly Module Tray = Library.FindModule(new("01-relay-tray"))!;
    private readonly LessonRenderer renderer = new(Library, new PlainDrawings());

    private LessonPart.Check Only(Module module, string language = "en") =>
        Assert.Single(renderer.Render(module, language).Parts.OfType<LessonPart.Check>());

    private static Module With(string markdown) => Tray with
    {
        Lesson = new("en", "x", new("modules/01-relay-tray/lesson.md", "---\ntitle: x\n---\n" + markdown)) { Sources = Tray.Lesson.Sources },
    };

    [Fact]
    public void A_check_is_shown_with_its_question_and_answers()
    {
        var check = Only(Tray);
        Assert.Equal("<p>The key is off. May you pull the tray <em>now</em>?</p>", check.QuestionHtml.Trim());
        Assert.Equal(["Yes, at once.", "After 60\u00a0s."], check.AnswersHtml);
    }

    [Fact]
    public void A_check_does_not_show_its_replies_nor_which_answer_is_right()
    {
        var page = renderer.Render(Tray, "en");
        var check = Only(Tray);
        var shown = page.Html + check.QuestionHtml + string.Concat(check.AnswersHtml);
        Assert.DoesNotContain("relays still hold", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("have let go", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("check 2", shown, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, false, "The relays still hold. Wait 60\u00a0s, see how it goes back.")]
    [InlineData(2, true, "Yes. The relays have let go.Source 1")]
    public void Whoever_answers_is_told_whether_it_is_right_and_why(int answer, bool isRight, string why)
    {
        var reply = renderer.Reply(Tray, "en", 1, answer)!;
        Assert.Equal(isRight, reply.IsRight);
        Assert.Equal(why, new HtmlParser().ParseDocument(reply.Html).Body!.TextContent.Trim());
    }

    [Fact]
    public void A_check_is_asked_and_answered_in_the_lessons_language()
    {
        Assert.Equal("Sí, enseguida.", Only(Tray, "es").AnswersHtml[0]);
        Assert.Contains("Los relés aún retienen", renderer.Reply(Tray, "es", 1, 1)!.Html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(2, 1)]
    [InlineData(1, 0)]
    [InlineData(1, 3)]
    public void There_is_no_reply_to_what_is_not_asked(int check, int answer) => Assert.Null(renderer.Reply(Tray, "en", check, answer));

    [Fact]
    public void The_text_goes_on_behind_a_check()
    {
        var parts = renderer.Render(With("a\n\n::: check 1\nq\n\n- x\n  - y\n- z\n  - w\n:::\n\nb"), "en").Parts;
        Assert.Equal(3, parts.Count);
        Assert.Contains("b", Assert.IsType<LessonPart.Text>(parts[2]).Html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("::: check 1\nq\n\n- secret\n:::")]
    [InlineData("::: notice\n::: check 1\nq\n\n- secret\n  - secret\n- secret\n  - secret\n:::\n:::")]
    [InlineData("- a\n  ::: check 1\n  q\n\n  - secret\n    - secret\n  :::")]
    public void A_check_that_is_not_sound_is_not_shown_at_all(string markdown)
    {
        var page = renderer.Render(With(markdown), "en");
        Assert.Empty(page.Parts.OfType<LessonPart.Check>());
        Assert.DoesNotContain("secret", page.Html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mark_is_the_number_of_its_source_and_leads_to_it()
    {
        var link = new HtmlParser().ParseDocument(renderer.Render(With("At least 60 s.[^key-off]"), "en").Html).QuerySelector("sup a")!;
        Assert.Equal(("#source_1", "Source 1"), (link.GetAttribute("href"), link.TextContent));
    }

    [Theory]
    [InlineData("[^nobody]", "[^nobody]")]
    [InlineData("[^key off]", "[^key off]")]
    [InlineData("[^]", "[^]")]
    [InlineData("[^key-off", "[^key-off")]
    public void What_marks_no_source_is_text(string markdown, string text) =>
        Assert.Equal(text, new HtmlParser().ParseDocument(renderer.Render(With(markdown), "en").Html).Body!.TextContent.Trim());
}
