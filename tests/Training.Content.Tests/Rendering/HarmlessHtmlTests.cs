using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using CsCheck;
using Training.Content.Modules;
using Training.Content.Rendering;

namespace Training.Content.Tests.Rendering;

/// <summary>Whatever is written in a lesson, the page that is shown runs nothing and leads nowhere unasked.</summary>
public sealed class HarmlessHtmlTests
{
    private static readonly ContentLibrary Library = ContentReader.Read(ContentFolders.Good).Library!;

    private static readonly string[] Elements =
    [
        "a", "aside", "blockquote", "br", "code", "div", "em", "figcaption", "figure", "h1", "h2", "h3", "h4", "h5", "h6", "hr", "img", "li", "ol", "p",
        "pre", "section", "span", "strong", "sup", "svg", "table", "tbody", "td", "th", "thead", "title", "tr", "ul",
    ];

    private static readonly string[] Attributes =
        ["align", "alt", "class", "height", "href", "id", "loading", "role", "src", "start", "style", "tabindex", "title", "type", "width"];

    private static readonly string[] Attacks =
    [
        "<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "<svg/onload=alert(1)>", "<iframe src=\"javascript:alert(1)\"></iframe>",
        "<!--><script>alert(1)</script>-->", "<style>@import'//x'</style>", "<a href=\"javascript:alert(1)\">x</a>", "<base href=//x>", "<form action=//x><input autofocus onfocus=alert(1)>",
        "[x](javascript:alert(1))", "[x](JaVaScRiPt:alert(1))", "[x](java&#10;script:alert(1))", "[x](javascript&colon;alert(1))", "[x](&#106;avascript:alert(1))",
        "[x](<java\tscript:alert(1)>)", "[x](\u0001javascript:alert(1))", "[x](data:text/html;base64,PHNjcmlwdD4=)", "[x](vbscript:msgbox(1))", "[x](//example.org)", "[x](\\\\example.org)",
        "[x](/admin)", "[x](file:///etc/passwd)", "<javascript:alert(1)>", "<data:text/html,x>", "![x](javascript:alert(1))", "![x](https://example.org/spy.png)",
        "![x\" onerror=\"alert(1)](pictures/tray.svg)", "![x](pictures/tray.svg \"y\" onload=\"alert(1)\")", "![x](pictures/tray.svg 'a\" onload=\"alert(1)')",
        "[x](https://example.org/\"onmouseover=\"alert(1))", "[x](https://example.org 'a\" onmouseover=\"alert(1)')", "[x]: javascript:alert(1)\n\n[x]",
        "```\"><script>alert(1)</script>\nx\n```", "``` x\" onload=\"alert(1)\nx\n```", "::: danger {onclick=alert(1)}\nx\n:::", "::: danger\" onclick=\"alert(1)\nx\n:::", "::: <script>\nx\n:::",
        "::: line-plan \"><script>\n:::", "::: two-lists <b>\n:::", "## x {#y onclick=alert(1)}", "## <img src=x onerror=alert(1)>", "| <script> | b |\n| --- | --- |\n| [x](javascript:1) | c |",
        "`<script>`", "&lt;script&gt;alert(1)&lt;/script&gt;", "[a](#what' onclick='alert(1))", "[![x](javascript:alert(1))](javascript:alert(2))", "[^<script>]", "[^key-off](javascript:alert(1))",
        "::: check 1\n<script>alert(1)</script>\n\n- <img src=x onerror=alert(1)>\n  - [x](javascript:alert(1))\n- <svg/onload=alert(1)>\n  - ![x](javascript:alert(1))\n:::", "<http://example.org/?a=\"onclick=alert(1)>",
    ];

    public static TheoryData<string> EachAttack => [.. Attacks];

    [Theory]
    [MemberData(nameof(EachAttack))]
    public void An_attack_comes_out_harmless(string attack) => AssertHarmless(attack);

    [Fact]
    public void Attacks_in_any_mixture_come_out_harmless() =>
        Gen.OneOf(Gen.OneOf(Attacks), Gen.OneOf("\n", "\n\n", "> ", "- ", "**", "[", "](", ")", "<", ">", "\"", "`", "|", "::: notice\n", "::: check 1\nx\n", ":::\n", "- x\n  - ", "![", "&"), Gen.String[0, 8])
            .Array[1, 12].Select(string.Concat).Sample(AssertHarmless, iter: 400);

    [Theory]
    [InlineData("[x](https://example.org/a?b=c&d=e)", "https://example.org/a?b=c&d=e")]
    [InlineData("[x](mailto:school@example.org)", "mailto:school@example.org")]
    [InlineData("<school@example.org>", "mailto:school@example.org")]
    [InlineData("[x](../02-refit/lesson.es.md)", "/modules/02-refit")]
    [InlineData("[x](../02-refit/)", "/modules/02-refit")]
    [InlineData("[x](./pictures/tray.svg)", "/modules/01-relay-tray/pictures/tray.svg")]
    public void A_link_that_is_allowed_stays_a_link(string text, string address) =>
        Assert.Equal(address, Body(text).QuerySelector("a")!.GetAttribute("href"));

    [Theory]
    [InlineData(">")]
    [InlineData("[")]
    [InlineData("![")]
    [InlineData("*a **b ")]
    [InlineData("- ")]
    [InlineData("::::\n")]
    [InlineData("`")]
    [InlineData("|")]
    [InlineData("<a")]
    [InlineData("## a\n")]
    public void A_text_that_goes_on_without_end_is_shown_or_told(string piece)
    {
        var text = Head + string.Concat(Enumerable.Repeat(piece, 100_000 / piece.Length));
        var path = "modules/02-refit/lesson.md";
        Assert.All(ContentReader.Read(ContentFolders.With(path, text)).Problems, problem => Assert.NotEmpty(problem.Sentence));
        AssertHarmless(text);
    }

    private const string Head = "---\ntitle: x\nminutes: 1\n---\n";

    private static IElement Body(string markdown)
    {
        var tray = Library.FindModule(new("01-relay-tray"))!;
        var lesson = new Lesson("en", "x", new("modules/01-relay-tray/lesson.md", Head + markdown)) { Sources = tray.Lesson.Sources };
        return new HtmlParser().ParseDocument(Everything(tray with { Lesson = lesson })).Body!;
    }

    // The questions too, and what is replied to each of their answers.
    private static string Everything(Module module)
    {
        var renderer = new LessonRenderer(Library, new PlainDrawings());
        return string.Concat(renderer.Render(module, "en").Parts.Select(part => part is LessonPart.Check check
            ? check.QuestionHtml + string.Concat(check.AnswersHtml.Select((answer, i) => answer + renderer.Reply(module, "en", check.Number, i + 1)!.Html))
            : ((LessonPart.Text)part).Html));
    }

    private static void AssertHarmless(string markdown)
    {
        foreach (var element in Body(markdown).QuerySelectorAll("*"))
        {
            Assert.Contains(element.LocalName, Elements);
            foreach (var attribute in element.Attributes)
            {
                Assert.Contains(attribute.Name, Attributes);
                if (attribute.Name == "href")
                    Assert.Matches(@"\A(https?://|mailto:|#|/modules/)", attribute.Value);
                if (attribute.Name == "src")
                    Assert.StartsWith("/modules/01-relay-tray/pictures/", attribute.Value, StringComparison.Ordinal);
                if (attribute.Name == "style")
                    Assert.Matches(@"\A(text-align: (left|center|right);|width:[0-9.]+%;?)\z", attribute.Value);
            }
        }
    }
}
