using System.Globalization;
using Markdig.Extensions.CustomContainers;
using Markdig.Extensions.Tables;
using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Renderers.Html.Inlines;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Training.Content.Measuring;
using Training.Content.Modules;
using Training.Content.Scenarios;
using Training.Content.Yaml;
using Training.Sequencing.Procedures;

namespace Training.Content.Rendering;

/// <summary>Makes HTML that is safe to show of lessons and situations, whoever wrote them.</summary>
/// <param name="library">What the lessons belong to.</param>
/// <param name="drawings">Where drawings and addresses come from.</param>
public sealed class LessonRenderer(ContentLibrary library, ILessonDrawings drawings)
{
    /// <summary>Makes the page of a module's lesson in a language; in the default language where there is no translation.</summary>
    /// <param name="module">The module.</param>
    /// <param name="language">The language that is wished for, such as <c>es</c>.</param>
    public LessonPage Render(Module module, string language)
    {
        ArgumentNullException.ThrowIfNull(module);
        var lesson = module.In(language);
        var document = DocumentOf(lesson.File);
        var headings = LessonOutline.Of(document).Headings;
        var ids = lesson == module.Lesson ? LessonOutline.Of(document).Ids : LessonOutline.Of(DocumentOf(module.Lesson.File)).Ids;
        LessonSection[] sections = [.. headings.Zip(ids, (heading, id) => new LessonSection(id, LessonMarkdown.PlainText(heading.Inline), heading.Level))];
        foreach (var (heading, id) in headings.Zip(ids)) heading.GetAttributes().Id = id;
        var parts = Parts(document, new(library, drawings, module, lesson.Language, ids.ToHashSet(), lesson.Sources));
        return new(lesson.Title, lesson.Language, parts, sections);
    }

    /// <summary>
    /// The section of a module's lesson that teaches something about steps of a procedure; found by what it says in the
    /// default language, so that a translation leads to the same place. Null where none does.
    /// </summary>
    /// <param name="module">The module.</param>
    /// <param name="procedure">The procedure, as it is written in the default language.</param>
    /// <param name="sides">The steps, each side by itself: of an order rule the earlier ones and the later ones.</param>
    /// <param name="language">The language of the heading.</param>
    public LessonSection? Teaching(Module module, Procedure procedure, IReadOnlyList<IReadOnlyList<StepId>> sides, string language)
    {
        ArgumentNullException.ThrowIfNull(module);
        ArgumentNullException.ThrowIfNull(procedure);
        ArgumentNullException.ThrowIfNull(sides);
        return TeachingSection.Find(DocumentOf(module.Lesson.File), procedure, sides) is { } heading
            ? Render(module, language).Sections.ElementAtOrDefault(heading)
            : null;
    }

    /// <summary>What somebody is told who answers a check question of a lesson.</summary>
    /// <param name="module">The module.</param>
    /// <param name="language">The language that is wished for, such as <c>es</c>.</param>
    /// <param name="check">The question's number in the lesson, from 1.</param>
    /// <param name="answer">The answer's place, from 1.</param>
    /// <returns>Null where there is no such question or answer.</returns>
    public CheckReply? Reply(Module module, string language, int check, int answer)
    {
        ArgumentNullException.ThrowIfNull(module);
        var lesson = module.In(language);
        var document = DocumentOf(lesson.File);
        if (check < 1 || ChecksOf(document).ElementAtOrDefault(check - 1) is not { } container) return null;
        if (CheckQuestion.Read(container, new(lesson.File.Path)) is not { } question || answer < 1 || answer > question.Answers.Count) return null;
        var ids = LessonOutline.Of(DocumentOf(module.Lesson.File)).Ids.ToHashSet();
        var html = Html(question.Answers[answer - 1].Reply, new(library, drawings, module, lesson.Language, ids, lesson.Sources));
        return new(answer == question.Right, html);
    }

    /// <summary>Makes HTML of a scenario's situation in a language; in the default language where there is no translation.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="language">The language that is wished for, such as <c>es</c>.</param>
    public string RenderSituation(Scenario scenario, string language)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        var text = scenario.In(language);
        return Html(DocumentOf(text.File), new(library, drawings, null, text.Language, new HashSet<string>(), []));
    }

    private static MarkdownDocument DocumentOf(ContentFile file) =>
        LessonMarkdown.Parse(FrontMatter.Read(file, new(file.Path)).Body) ?? [];

    private static IEnumerable<CustomContainer> ChecksOf(MarkdownDocument document) =>
        document.OfType<CustomContainer>().Where(container => OwnBlocks.Of(container) == OwnBlock.Check);

    private static List<LessonPart> Parts(MarkdownDocument document, RenderContext context)
    {
        List<LessonPart> parts = [];
        var number = 0;
        var (writer, renderer) = Begin();
        foreach (var block in document)
        {
            if (block is not CustomContainer container || OwnBlocks.Of(container) != OwnBlock.Check)
            {
                renderer.Render(block);
                continue;
            }

            number++;
            if (CheckQuestion.Read(container, new("")) is not { } check) continue;
            parts.Add(new LessonPart.Text(writer.ToString()));
            parts.Add(new LessonPart.Check(
                number,
                string.Concat(check.Question.Select(part => Html(part, context))),
                [.. check.Answers.Select(answer => InlineHtml(answer.Text, context))]));
            (writer, renderer) = Begin();
        }

        parts.Add(new LessonPart.Text(writer.ToString()));
        return [.. parts.Where(part => part is not LessonPart.Text { Html: "" })];

        (StringWriter Writer, HtmlRenderer Renderer) Begin()
        {
            var begun = new StringWriter(CultureInfo.InvariantCulture);
            return (begun, RendererTo(begun, context));
        }
    }

    private static string Html(MarkdownObject part, RenderContext context)
    {
        using var writer = new StringWriter(CultureInfo.InvariantCulture);
        RendererTo(writer, context).Render(part);
        return writer.ToString();
    }

    private static string InlineHtml(LeafBlock block, RenderContext context)
    {
        using var writer = new StringWriter(CultureInfo.InvariantCulture);
        RendererTo(writer, context).WriteLeafInline(block);
        return writer.ToString();
    }

    private static HtmlRenderer RendererTo(StringWriter writer, RenderContext context)
    {
        var renderer = new HtmlRenderer(writer);
        renderer.ObjectRenderers.ReplaceOrAdd<ParagraphRenderer>(new PictureRenderer(context));
        renderer.ObjectRenderers.ReplaceOrAdd<LiteralInlineRenderer>(new TextRenderer());
        renderer.ObjectRenderers.ReplaceOrAdd<LinkInlineRenderer>(new LinkRenderer(context));
        renderer.ObjectRenderers.ReplaceOrAdd<AutolinkInlineRenderer>(new AutolinkRenderer(context));
        renderer.ObjectRenderers.ReplaceOrAdd<HtmlTableRenderer>(new ScrollingTableRenderer());
        renderer.ObjectRenderers.ReplaceOrAdd<HtmlCustomContainerRenderer>(new OwnBlockRenderer(context));
        renderer.ObjectRenderers.Add(new SourceMarkRenderer(context));
        return renderer;
    }

    /// <summary>Text in which a number stays on one line with its unit.</summary>
    private sealed class TextRenderer : LiteralInlineRenderer
    {
        protected override void Write(HtmlRenderer renderer, LiteralInline literal)
        {
            var text = Quantity.KeptTogether(literal.Content.ToString());
            if (renderer.EnableHtmlEscape) renderer.WriteEscape(text);
            else renderer.Write(text);
        }
    }

    /// <summary>A table that scrolls by itself on a narrow screen, by finger or by key.</summary>
    private sealed class ScrollingTableRenderer : HtmlTableRenderer
    {
        protected override void Write(HtmlRenderer renderer, Table table)
        {
            renderer.EnsureLine();
            renderer.WriteLine("<div class=\"table\" tabindex=\"0\">");
            base.Write(renderer, table);
            renderer.WriteLine("</div>");
        }
    }
}
