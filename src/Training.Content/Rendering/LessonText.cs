using Markdig.Extensions.CustomContainers;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Training.Content.Yaml;

namespace Training.Content.Rendering;

/// <summary>What can be said of a text by itself, before its links are followed.</summary>
internal static class LessonText
{
    private const int LargestSize = 256 * 1024;

    /// <summary>Parses the Markdown of a file; null, and reported, where it cannot be.</summary>
    public static MarkdownDocument? Parse(FrontMatter front, ProblemList problems)
    {
        if (problems.HasErrors && front.Body.Length == 0) return null;
        if (front.Body.Length > LargestSize)
        {
            problems.Error(Place.Start, "The text is larger than 256 KiB: split it.");
            return null;
        }

        var document = LessonMarkdown.Parse(front.Body);
        if (document is null) problems.Error(Place.Start, "The text is nested too deep: lists and quotes go a few levels down at most.");
        return document;
    }

    public static Place PlaceOf(MarkdownObject part) => new(part.Line + 1, part.Column + 1);

    /// <summary>
    /// The sections of a lesson: each heading of the second level with what stands below it up to the next; what stands
    /// before the first has no heading.
    /// </summary>
    public static IEnumerable<(HeadingBlock? Heading, IReadOnlyList<Block> Blocks)> Sections(MarkdownDocument document)
    {
        HeadingBlock? heading = null;
        List<Block> blocks = [];
        foreach (var block in document)
        {
            if (block is not HeadingBlock { Level: 2 } next)
            {
                blocks.Add(block);
                continue;
            }

            yield return (heading, blocks);
            (heading, blocks) = (next, []);
        }

        yield return (heading, blocks);
    }

    /// <summary>The source marks of a block.</summary>
    public static IEnumerable<SourceMark> MarksIn(Block block) =>
        block is LeafBlock leaf ? leaf.Inline?.Descendants<SourceMark>() ?? [] : block.Descendants<SourceMark>();

    /// <summary>Reports headings that are out of step: the title stands in the head, sections are ##, sub-sections ###.</summary>
    public static void CheckHeadings(LessonOutline outline, ProblemList problems)
    {
        var last = 1;
        foreach (var heading in outline.Headings)
        {
            if (heading.Level is not (2 or 3))
                problems.Hold(PlaceOf(heading), "A section is headed by ## and a sub-section by ###; the title stands in the head of the file.");
            else if (heading.Level > last + 1)
                problems.Hold(PlaceOf(heading), "A sub-section (###) stands before any section (##): make it a section.");
            if (LessonMarkdown.PlainText(heading.Inline).Length == 0) problems.Hold(PlaceOf(heading), "The heading is empty: write it, or remove it.");
            last = heading.Level;
        }
    }

    /// <summary>Reports own blocks that are unknown, open or empty.</summary>
    public static void CheckBlock(CustomContainer container, ProblemList problems)
    {
        var place = PlaceOf(container);
        if (OwnBlocks.Of(container) is not { } block)
        {
            problems.Hold(place, $"There is no block \"{Fields.Shown(container.Info ?? "")}\": write one of {Codes<OwnBlock>.All}.");
            return;
        }

        var name = Codes<OwnBlock>.Of(block);
        if (container.ClosingFencedCharCount == 0) problems.Hold(place, $"The block \"{name}\" is not closed: put a line of \":::\" behind it.");
        if (OwnBlocks.IsDrawn(block))
        {
            if (container.Count > 0) problems.Hold(PlaceOf(container[0]), $"A block \"{name}\" is drawn from its procedure: put the text behind its closing \":::\".");
            return;
        }

        if (block == OwnBlock.Check)
        {
            CheckQuestion.Read(container, problems);
            return;
        }

        if (container.Count == 0) problems.Hold(place, $"The block \"{name}\" is empty: write in it what the reader must know.");
        if (OwnBlocks.Arguments(container).Length > 0) problems.Hold(place, $"A block \"{name}\" takes nothing behind its name: put the text on the next line.");
    }

    /// <summary>Reports pictures that say nothing to those who cannot see them, or stand in running text.</summary>
    public static void CheckPicture(LinkInline picture, ProblemList problems)
    {
        if (LessonMarkdown.PlainText(picture).Length == 0)
            problems.Hold(PlaceOf(picture), "The picture has no text: say between the brackets what it shows, ![like this](pictures/name.svg).");
        if (picture.Parent?.ParentBlock is not ParagraphBlock paragraph || PictureRenderer.OnlyPictureOf(paragraph) != picture)
            problems.Hold(PlaceOf(picture), "A picture stands in a paragraph of its own: put an empty line before and behind it.");
    }
}
