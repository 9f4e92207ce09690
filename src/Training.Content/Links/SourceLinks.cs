using Markdig.Syntax;
using Training.Content.Modules;
using Training.Content.Rendering;

namespace Training.Content.Links;

/// <summary>Every mark of a lesson leads to one of its sources, and every source that has a name is marked somewhere.</summary>
internal static class SourceLinks
{
    public static void Check(ModuleDraft module, LessonDraft lesson)
    {
        if (!lesson.HasHead || module.Lesson is not { HasHead: true } original) return;
        var named = original.SourceIds;
        SourceMark[] marks = [.. lesson.Document.Descendants<SourceMark>()];
        foreach (var mark in marks.Where(mark => !named.Contains(mark.Id)))
        {
            lesson.Problems.Hold(LessonText.PlaceOf(mark), $"No source has the id \"{mark.Id}\": "
                + (named.Count == 0 ? "give an entry of \"sources\" that id." : $"write one of {string.Join(", ", named)}."));
        }

        if (lesson != module.Lesson) return;
        foreach (var twice in named.GroupBy(id => id).Where(group => group.Count() > 1))
            lesson.Problems.Hold(lesson.SourcesPlace, $"Two sources have the id \"{twice.Key}\": give each its own.");
        foreach (var id in named.Distinct().Where(id => SourceMark.IsId(id) && !marks.Any(mark => mark.Id == id)))
            lesson.Problems.Remark(lesson.SourcesPlace, $"Nothing in the text is marked [^{id}]: mark what comes from that source, or take its id out.");
    }
}
