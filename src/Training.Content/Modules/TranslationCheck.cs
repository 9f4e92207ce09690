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
        CheckHeadings(lesson, translation, problems);
        CheckBlocks(lesson, translation, problems);
        if (translation.Minutes is { } minutes && minutes != lesson.Minutes)
            problems.Error(translation.MinutesPlace, "\"minutes\" differs from the lesson's: make them the same, or leave the key out here.");
        if (translation.Procedures.Count > 0
            && !translation.Procedures.Select(id => id.Text).SequenceEqual(lesson.Procedures.Select(id => id.Text)))
            problems.Error(translation.ProceduresPlace, "\"procedures\" differs from the lesson's: make them the same, or leave the key out here.");
        if (translation.Sources.Count > 0
            && !translation.Sources.Select(source => source.Kind).SequenceEqual(lesson.Sources.Select(source => source.Kind)))
            problems.Error(translation.SourcesPlace, "\"sources\" has others than the lesson, or in another order: make them the same, or leave the key out here.");
    }

    private static void CheckHeadings(LessonDraft lesson, LessonDraft translation, ProblemList problems)
    {
        var (mine, theirs) = (translation.Outline.Headings, lesson.Outline.Headings);
        for (var i = 0; i < Math.Max(mine.Count, theirs.Count); i++)
        {
            if (i >= mine.Count)
            {
                problems.Error(
                    mine.Count > 0 ? LessonText.PlaceOf(mine[^1]) : Place.Start,
                    $"The translation lacks the heading \"{Fields.Shown(LessonMarkdown.PlainText(theirs[i].Inline))}\" of the lesson behind this place: the headings are the same in both, in the same order.");
                return;
            }

            if (i < theirs.Count && mine[i].Level == theirs[i].Level) continue;
            problems.Error(LessonText.PlaceOf(mine[i]), i >= theirs.Count
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
            if (i < mine.Count && i < theirs.Count && mine[i].Info == theirs[i].Info && mine[i].Arguments == theirs[i].Arguments) continue;
            var wanted = i < theirs.Count ? $"the block \"{$"{theirs[i].Info} {theirs[i].Arguments}".Trim()}\"" : "no further block";
            problems.Error(
                i < mine.Count ? LessonText.PlaceOf(mine[i]) : mine.Count > 0 ? LessonText.PlaceOf(mine[^1]) : Place.Start,
                $"The lesson has {wanted} {(i < mine.Count ? "here" : "behind this place")}: cautions, plans, lists and readings are the same in both, in the same order.");
            return;
        }
    }
}
