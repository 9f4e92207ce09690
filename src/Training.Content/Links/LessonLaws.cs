using System.Globalization;
using Training.Content.Measuring;
using Training.Content.Modules;
using Training.Content.Rendering;
using Training.Sequencing.Procedures;

namespace Training.Content.Links;

/// <summary>
/// What every lesson owes its readers: sentences that are not too long, no wall of text, a source beside every quantity,
/// and a caution where the work can hurt somebody.
/// </summary>
internal static class LessonLaws
{
    public static void Check(ModuleDraft module, LessonDraft lesson, ContentDrafts drafts)
    {
        CheckLength(lesson);
        if (lesson != module.Lesson) return;
        CheckSources(lesson);
        CheckCautions(lesson, drafts);
    }

    private static void CheckLength(LessonDraft lesson)
    {
        Prose[] prose = [.. Prose.Of(lesson.Document)];
        foreach (var paragraph in prose.Where(paragraph => paragraph.Words > LessonMeasure.MostWordsAParagraph))
        {
            lesson.Problems.Hold(
                LessonText.PlaceOf(paragraph.Block),
                $"This paragraph has {paragraph.Words} words: at most {LessonMeasure.MostWordsAParagraph} can be taken in at one look. Break it up.");
        }

        var mean = LessonMeasure.Of(lesson.Document).WordsASentence;
        if (mean <= LessonMeasure.MostWordsASentence) return;
        var longest = prose.MaxBy(paragraph => (double)paragraph.Words / paragraph.Sentences)!;
        lesson.Problems.Hold(LessonText.PlaceOf(longest.Block), string.Create(
            CultureInfo.InvariantCulture,
            $"A sentence of this lesson has {mean:0.0} words on average: at most {LessonMeasure.MostWordsASentence} can be followed by somebody who reads in a second language. Begin here, where they are longest."));
    }

    private static void CheckSources(LessonDraft lesson)
    {
        foreach (var (heading, blocks) in LessonText.Sections(lesson.Document))
        {
            if (heading is null || blocks.Any(block => LessonText.MarksIn(block).Any())) continue;
            foreach (var paragraph in blocks.SelectMany(Prose.Of))
            {
                if (Quantity.FirstIn(paragraph.Text) is not { } quantity) continue;
                lesson.Problems.Hold(
                    LessonText.PlaceOf(paragraph.Block),
                    $"\"{quantity}\" stands in the section \"{Yaml.Fields.Shown(LessonMarkdown.PlainText(heading.Inline))}\", which says no source: put [^id] behind it, with the id of an entry of \"sources\".");
                break;
            }
        }
    }

    private static void CheckCautions(LessonDraft lesson, ContentDrafts drafts)
    {
        if (lesson.Outline.Blocks.Any(block => OwnBlocks.Of(block) is OwnBlock.Danger or OwnBlock.Warning or OwnBlock.Caution)) return;
        foreach (var id in lesson.Procedures)
        {
            if (!drafts.Procedures.TryGetValue(id.Text, out var draft) || draft.Procedure is not { } procedure) continue;
            if (procedure.Steps.FirstOrDefault(step => step.Stakes is { Harm: Harm.People, Severity: >= Severity.Serious }) is not { } step) continue;
            lesson.Problems.Hold(id.Place, $"The step \"{step.Id}\" of \"{id.Text}\" can hurt somebody, and the lesson holds no caution: add a block \"::: danger\", \"::: warning\" or \"::: caution\".");
            return;
        }
    }
}
