using Markdig.Helpers;
using Markdig.Parsers;
using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Syntax.Inlines;

namespace Training.Content.Rendering;

/// <summary>A mark behind a fact that says which of the lesson's sources it comes from, written <c>[^id]</c>.</summary>
internal sealed class SourceMark : LeafInline
{
    private const int LongestId = 40;

    public required string Id { get; init; }

    /// <summary>Whether a text can name a source: letters, digits and hyphens.</summary>
    public static bool IsId(ReadOnlySpan<char> text)
    {
        if (text.Length is 0 or > LongestId) return false;
        foreach (var character in text)
            if (!char.IsAsciiLetterOrDigit(character) && character != '-') return false;
        return true;
    }
}

/// <summary>Reads <c>[^id]</c>. What stands in brackets otherwise is left to the links.</summary>
internal sealed class SourceMarkParser : InlineParser
{
    public SourceMarkParser() => OpeningCharacters = ['['];

    public override bool Match(InlineProcessor processor, ref StringSlice slice)
    {
        if (slice.PeekChar() != '^') return false;
        var rest = slice.AsSpan();
        var end = rest.IndexOf(']');
        if (end < 0 || !SourceMark.IsId(rest[2..end])) return false;
        var start = processor.GetSourcePosition(slice.Start, out var line, out var column);
        processor.Inline = new SourceMark
        {
            Id = rest[2..end].ToString(),
            Line = line,
            Column = column,
            Span = new(start, start + end),
        };
        slice.Start += end + 1;
        return true;
    }
}

/// <summary>Shows a mark as the number of its source, which leads to the list at the end of the lesson.</summary>
internal sealed class SourceMarkRenderer(RenderContext context) : HtmlObjectRenderer<SourceMark>
{
    protected override void Write(HtmlRenderer renderer, SourceMark mark)
    {
        for (var i = 0; i < context.Sources.Count; i++)
        {
            if (context.Sources[i].Id != mark.Id) continue;
            renderer.Write("<sup><a class=\"source-mark\" href=\"#").Write(LessonPage.SourceFragment(i + 1)).Write("\"><span class=\"unseen\">")
                .WriteEscape(context.Words.Source).Write(" </span>").Write((i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)).Write("</a></sup>");
            return;
        }

        renderer.WriteEscape($"[^{mark.Id}]");
    }
}
