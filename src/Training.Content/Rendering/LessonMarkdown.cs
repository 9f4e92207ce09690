using Markdig;
using Markdig.Extensions.CustomContainers;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace Training.Content.Rendering;

/// <summary>Parses the Markdown of people who are not trusted: raw HTML is text, own blocks stand between <c>:::</c> fences.</summary>
internal static class LessonMarkdown
{
    private static readonly MarkdownPipeline Pipeline = MakePipeline();

    /// <summary>Parses a text.</summary>
    /// <param name="text">The text.</param>
    /// <returns>Null where it is nested too deep to be meant.</returns>
    public static MarkdownDocument? Parse(string text)
    {
        try
        {
            return Markdown.Parse(text, Pipeline);
        }
        catch (ArgumentException)
        {
            // The parser's only word for "nested too deep".
            return null;
        }
    }

    /// <summary>The words of a heading, a link or a picture without their marks.</summary>
    public static string PlainText(ContainerInline? inline)
    {
        if (inline is null) return "";
        return string.Concat(inline.Select(part => part switch
        {
            LiteralInline literal => literal.Content.ToString(),
            CodeInline code => code.Content,
            HtmlEntityInline entity => entity.Transcoded.ToString(),
            LineBreakInline => " ",
            AutolinkInline link => link.Url,
            ContainerInline container => PlainText(container),
            _ => "",
        })).Trim();
    }

    private static MarkdownPipeline MakePipeline()
    {
        var builder = new MarkdownPipelineBuilder().UsePipeTables().UsePreciseSourceLocation().DisableHtml();

        // The block alone: the library's extension would also make spans of ::text::.
        builder.BlockParsers.InsertBefore<Markdig.Parsers.ThematicBreakParser>(new CustomContainerParser());
        builder.InlineParsers.InsertBefore<Markdig.Parsers.Inlines.LinkInlineParser>(new SourceMarkParser());
        return builder.Build();
    }
}
