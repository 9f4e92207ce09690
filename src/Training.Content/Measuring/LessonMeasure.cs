using Markdig.Extensions.CustomContainers;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Training.Content.Modules;
using Training.Content.Rendering;
using Training.Content.Yaml;

namespace Training.Content.Measuring;

/// <summary>How much there is to read in a lesson, and how heavy it reads.</summary>
/// <param name="Words">The words of its prose; not those of headings, pictures and what is drawn from procedures.</param>
/// <param name="Sentences">The sentences; an entry of a list and a cell of a table are at least one each.</param>
/// <param name="LongestParagraph">The words of the longest paragraph.</param>
/// <param name="Pictures">The pictures.</param>
/// <param name="Checks">The check questions.</param>
public sealed record LessonMeasure(int Words, int Sentences, int LongestParagraph, int Pictures, int Checks)
{
    /// <summary>The most words that a sentence may have on average: 20.</summary>
    public const int MostWordsASentence = 20;

    /// <summary>The most words that a paragraph may have: 90.</summary>
    public const int MostWordsAParagraph = 90;

    // Slow on purpose: a reader in a second language who looks at the vehicle in between, thinks about each question and
    // looks at each picture. Common practice, no published source.
    private const double WordsAMinute = 120;
    private const double MinutesACheck = 0.4;
    private const double MinutesAPicture = 0.25;

    /// <summary>The words of a sentence on average; 0 where there is none.</summary>
    public double WordsASentence => Sentences == 0 ? 0 : (double)Words / Sentences;

    /// <summary>How many minutes it takes: 120 words, 2.5 check questions or 4 pictures a minute; begun minutes counted.</summary>
    public int Minutes => (int)Math.Ceiling((Words / WordsAMinute) + (Checks * MinutesACheck) + (Pictures * MinutesAPicture));

    /// <summary>Measures a lesson in its own language.</summary>
    /// <param name="lesson">The lesson.</param>
    public static LessonMeasure Of(Lesson lesson)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        return Of(LessonMarkdown.Parse(FrontMatter.Read(lesson.File, new(lesson.File.Path)).Body) ?? []);
    }

    internal static LessonMeasure Of(MarkdownDocument document)
    {
        Prose[] prose = [.. Prose.Of(document)];
        return new(
            prose.Sum(paragraph => paragraph.Words),
            prose.Sum(paragraph => paragraph.Sentences),
            prose.Select(paragraph => paragraph.Words).DefaultIfEmpty(0).Max(),
            document.Descendants<LinkInline>().Count(link => link.IsImage),
            document.Descendants<CustomContainer>().Count(block => OwnBlocks.Of(block) == OwnBlock.Check));
    }
}
