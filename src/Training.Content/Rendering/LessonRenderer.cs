using System.Globalization;
using Markdig.Extensions.CustomContainers;
using Markdig.Extensions.Tables;
using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Renderers.Html.Inlines;
using Markdig.Syntax;
using Training.Content.Modules;
using Training.Content.Scenarios;
using Training.Content.Yaml;

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
        var html = Html(document, new(library, drawings, module, lesson.Language, ids.ToHashSet()));
        return new(lesson.Title, lesson.Language, html, sections);
    }

    /// <summary>Makes HTML of a scenario's situation in a language; in the default language where there is no translation.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="language">The language that is wished for, such as <c>es</c>.</param>
    public string RenderSituation(Scenario scenario, string language)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        var text = scenario.In(language);
        return Html(DocumentOf(text.File), new(library, drawings, null, text.Language, new HashSet<string>()));
    }

    private static MarkdownDocument DocumentOf(ContentFile file) =>
        LessonMarkdown.Parse(FrontMatter.Read(file, new(file.Path)).Body) ?? [];

    private static string Html(MarkdownDocument document, RenderContext context)
    {
        using var writer = new StringWriter(CultureInfo.InvariantCulture);
        var renderer = new HtmlRenderer(writer);
        renderer.ObjectRenderers.ReplaceOrAdd<ParagraphRenderer>(new PictureRenderer(context));
        renderer.ObjectRenderers.ReplaceOrAdd<LinkInlineRenderer>(new LinkRenderer(context));
        renderer.ObjectRenderers.ReplaceOrAdd<AutolinkInlineRenderer>(new AutolinkRenderer(context));
        renderer.ObjectRenderers.ReplaceOrAdd<HtmlTableRenderer>(new ScrollingTableRenderer());
        renderer.ObjectRenderers.ReplaceOrAdd<HtmlCustomContainerRenderer>(new OwnBlockRenderer(context));
        renderer.Render(document);
        return writer.ToString();
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
