using Markdig.Extensions.CustomContainers;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Training.Content.Rendering;
using Training.Content.Yaml;

namespace Training.Content.Modules;

/// <summary>
/// Holds a translated lesson against the lesson: the same headings and the same own blocks in the same order, so that
/// no section and, above all, no caution is lost on the way.
/// </summary>
internal static class TranslationCheck
{
    public static void Check(LessonDraft lesson, LessonDraft translation)
    {
        var problems = translation.Problems;
        Untranslated.Report(translation.Title, lesson.Title?.Text, problems);
        CheckWords(lesson.Document, translation.Document, problems);
        CheckHeadings(lesson, translation, problems);
        CheckBlocks(lesson, translation, problems);
        if (!lesson.Problems.HasErrors)
        {
            CheckPictures(lesson, translation, problems);
            if (lesson.Outline.Headings.Select(heading => heading.Level).SequenceEqual(translation.Outline.Headings.Select(heading => heading.Level)))
                CheckMarks(lesson, translation, problems);
        }

        if (translation.Minutes is { } minutes && minutes != lesson.Minutes)
            problems.Hold(translation.MinutesPlace, "\"minutes\" differs from the lesson's: make them the same, or leave the key out here.");
        if (translation.Procedures.Count > 0
            && !translation.Procedures.Select(id => id.Text).SequenceEqual(lesson.Procedures.Select(id => id.Text)))
            problems.Hold(translation.ProceduresPlace, "\"procedures\" differs from the lesson's: make them the same, or leave the key out here.");
        CheckSources(lesson, translation, problems);
    }

    // A translation has the words of the sources alone; what sort they are and in which order they stand is the lesson's.
    private static void CheckSources(LessonDraft lesson, LessonDraft translation, ProblemList problems)
    {
        if (!lesson.HasHead) return;
        HashSet<string> seen = new(StringComparer.Ordinal);
        foreach (var entry in translation.SourceEntries)
        {
            if (entry.Id is null) continue;
            if (!lesson.SourceIds.Contains(entry.Id.Text))
                problems.Hold(entry.Id.Place, $"The lesson has no source \"{Fields.Shown(entry.Id.Text)}\": mend the id, or write the source there first.");
            else if (!seen.Add(entry.Id.Text))
                problems.Hold(entry.Id.Place, $"The source \"{entry.Id.Text}\" is here twice: keep one.");
            else if (entry.Kind is { } kind && lesson.SourceEntries.First(other => other.Id?.Text == entry.Id.Text).Kind != kind)
                problems.Hold(entry.Place, "\"kind\" differs from the lesson's: make it the same, or leave the key out here.");
        }

        var named = translation.SourceEntries.Count(entry => entry.Id is not null);
        if (named < translation.SourceEntries.Count && (named > 0 || translation.SourceEntries.Count != lesson.SourceEntries.Count))
            problems.Hold(translation.SourcesPlace, "\"sources\" must name each by the id that it has in the lesson: add the ids.");
    }

    /// <summary>Reports each paragraph and heading that is still in the language of the lesson.</summary>
    public static void CheckWords(MarkdownDocument original, MarkdownDocument translation, ProblemList problems)
    {
        var texts = original.Descendants<LeafBlock>().Select(WordsOf).Where(Untranslated.IsLong).ToHashSet(StringComparer.Ordinal);
        foreach (var block in translation.Descendants<LeafBlock>())
            if (texts.Contains(WordsOf(block))) problems.Hold(LessonText.PlaceOf(block), Untranslated.Sentence);
    }

    private static string WordsOf(LeafBlock block) => LessonMarkdown.PlainText(block.Inline);

    private static void CheckHeadings(LessonDraft lesson, LessonDraft translation, ProblemList problems)
    {
        var (mine, theirs) = (translation.Outline.Headings, lesson.Outline.Headings);
        for (var i = 0; i < Math.Max(mine.Count, theirs.Count); i++)
        {
            if (i >= mine.Count)
            {
                problems.Hold(
                    mine.Count > 0 ? LessonText.PlaceOf(mine[^1]) : Place.Start,
                    $"The translation lacks the heading \"{Fields.Shown(LessonMarkdown.PlainText(theirs[i].Inline))}\" of the lesson behind this place: the headings are the same in both, in the same order.");
                return;
            }

            if (i < theirs.Count && mine[i].Level == theirs[i].Level) continue;
            problems.Hold(LessonText.PlaceOf(mine[i]), i >= theirs.Count
                ? "The lesson has no heading that this one could translate: the headings are the same in both, in the same order."
                : $"Here the lesson has the heading \"{Fields.Shown(LessonMarkdown.PlainText(theirs[i].Inline))}\" of another level: the headings are the same in both, in the same order.");
            return;
        }
    }

    private static void CheckBlocks(LessonDraft lesson, LessonDraft translation, ProblemList problems)
    {
        var (mine, theirs) = (translation.Outline.Blocks, lesson.Outline.Blocks);
        for (var i = 0; i < Math.Max(mine.Count, theirs.Count); i++)
        {
            if (i < mine.Count && i < theirs.Count && mine[i].Info == theirs[i].Info && mine[i].Arguments == theirs[i].Arguments)
            {
                CheckAnswers(theirs[i], mine[i], problems);
                continue;
            }

            var wanted = i < theirs.Count ? $"the block \"{$"{theirs[i].Info} {theirs[i].Arguments}".Trim()}\"" : "no further block";
            problems.Hold(
                i < mine.Count ? LessonText.PlaceOf(mine[i]) : mine.Count > 0 ? LessonText.PlaceOf(mine[^1]) : Place.Start,
                $"The lesson has {wanted} {(i < mine.Count ? "here" : "behind this place")}: cautions, plans, lists and readings are the same in both, in the same order.");
            return;
        }
    }

    // A picture whose words are translated is another file: pictures/name.es.svg in place of pictures/name.svg.
    private static void CheckPictures(LessonDraft lesson, LessonDraft translation, ProblemList problems)
    {
        var (mine, theirs) = (PicturesOf(translation), PicturesOf(lesson));
        for (var i = 0; i < Math.Max(mine.Length, theirs.Length); i++)
        {
            if (i < mine.Length && i < theirs.Length && Plain(mine[i]) == Plain(theirs[i])) continue;
            problems.Hold(
                i < mine.Length ? LessonText.PlaceOf(mine[i]) : mine.Length > 0 ? LessonText.PlaceOf(mine[^1]) : Place.Start,
                i < theirs.Length
                    ? $"The lesson has the picture {Fields.Shown(theirs[i].Url ?? "")} {(i < mine.Length ? "here" : "behind this place")}: the pictures are the same in both, in the same order."
                    : "The lesson has no picture here: the pictures are the same in both, in the same order.");
            return;
        }

        string Plain(LinkInline picture) => (picture.Url ?? "").Replace($".{translation.Language}.svg", ".svg", StringComparison.Ordinal);
        static LinkInline[] PicturesOf(LessonDraft draft) => [.. draft.Document.Descendants<LinkInline>().Where(link => link.IsImage)];
    }

    private static void CheckMarks(LessonDraft lesson, LessonDraft translation, ProblemList problems)
    {
        foreach (var (mine, theirs) in LessonText.Sections(translation.Document).Zip(LessonText.Sections(lesson.Document)))
        {
            if (MarksOf(theirs.Blocks).Except(MarksOf(mine.Blocks)).FirstOrDefault() is not { } lost) continue;
            problems.Remark(
                mine.Heading is { } heading ? LessonText.PlaceOf(heading) : Place.Start,
                $"The lesson marks a fact of this section [^{lost}], and the translation does not: put the mark behind the same fact.");
        }

        static IEnumerable<string> MarksOf(IEnumerable<Block> blocks) =>
            blocks.SelectMany(LessonText.MarksIn).Select(mark => mark.Id);
    }

    private static void CheckAnswers(CustomContainer lesson, CustomContainer translation, ProblemList problems)
    {
        if (OwnBlocks.Of(lesson) != OwnBlock.Check
            || CheckQuestion.Read(lesson, new("")) is not { Answers.Count: var theirs }
            || CheckQuestion.Read(translation, new("")) is not { Answers.Count: var mine }
            || mine == theirs)
            return;
        problems.Hold(LessonText.PlaceOf(translation), $"The check has {mine} answers here and {theirs} in the lesson: write the same ones, in the same order.");
    }
}
