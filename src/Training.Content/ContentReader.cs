using Training.Content.Links;
using Training.Sequencing.Analysis;

namespace Training.Content;

/// <summary>Reads content files into a library, and says everything that an author must mend, all at once.</summary>
public static class ContentReader
{
    /// <summary>Reads the files of one content folder. Pure: the same files give the same reading.</summary>
    /// <param name="files">The files, in any order.</param>
    public static ContentReading Read(IReadOnlyList<ContentFile> files) => Read(files, AnalysisLimits.Default);

    /// <summary>Reads the files of one content folder, looking at no more orders than a limit allows. Pure: the same files give the same reading.</summary>
    /// <param name="files">The files, in any order.</param>
    /// <param name="limits">How much may be looked at for each procedure that scenarios ask for.</param>
    public static ContentReading Read(IReadOnlyList<ContentFile> files, AnalysisLimits limits)
    {
        ArgumentNullException.ThrowIfNull(files);
        var drafts = ContentDrafts.Read(files);
        ProcedureLinks.Check(drafts);
        LessonLinks.Check(drafts);
        LabelLinks.Check(drafts);
        ScenarioLinks.Check(drafts, limits);
        CompetencyLinks.Check(drafts);
        GlossaryLinks.Check(drafts);
        ContentProblem[] problems = [.. drafts.Problems.SelectMany(list => list.All)
            .OrderBy(problem => problem.File, StringComparer.Ordinal)
            .ThenBy(problem => problem.Line)
            .ThenBy(problem => problem.Column)];
        return new(problems.Any(problem => problem.Level == ProblemLevel.Error) ? null : drafts.ToLibrary(), problems);
    }
}
