using Training.Sequencing;
using Training.Sequencing.Analysis;
using Training.Sequencing.Procedures;

namespace Training.Content.Procedures;

/// <summary>Reads procedures from YAML (or JSON, which is YAML).</summary>
public static class ProcedureFile
{
    /// <summary>
    /// Reads what a file says, as far as an answer can be graded by it: its name and the texts for technicians do not
    /// matter. Whether a right order exists is asked by <see cref="ReadGrader"/>.
    /// </summary>
    /// <param name="file">The file.</param>
    public static ProcedureReading Read(ContentFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var draft = ProcedureDraft.Read(file, ProcedureDemands.ToGrade);
        return new(draft.Problems.HasErrors ? null : draft.Procedure, draft.Problems.Sorted);
    }

    /// <summary>Reads a file and makes a grader of it for one kind of vehicle.</summary>
    /// <param name="file">The file; its name does not matter.</param>
    /// <param name="variant">The kind of vehicle; null takes the first listed.</param>
    public static GraderReading ReadGrader(ContentFile file, VariantId? variant)
    {
        ArgumentNullException.ThrowIfNull(file);
        var draft = ProcedureDraft.Read(file, ProcedureDemands.ToGrade);
        if (draft.Problems.HasErrors) return new(null, draft.Problems.Sorted);
        var grader = Grader.For(draft.Procedure!, variant);
        if (grader.IsOk) return new(grader.Value, draft.Problems.Sorted);
        draft.Report(grader.Fault.Problems);
        return new(null, draft.Problems.Sorted);
    }

    /// <summary>
    /// Reads a file and analyses the procedure for one kind of vehicle. Where there is an order behind its rules it is
    /// analysed, whatever else its author has to mend.
    /// </summary>
    /// <param name="file">The file; its name does not matter.</param>
    /// <param name="variant">The kind of vehicle; null takes the first listed.</param>
    /// <param name="find">Finds the file of the procedure that this one undoes; null where there is none to be had.</param>
    public static AnalysisReading Analyse(ContentFile file, VariantId? variant, Func<ProcedureId, ContentFile?> find)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(find);
        var draft = ProcedureDraft.Read(file, ProcedureDemands.ToGrade);
        if (draft.Problems.HasErrors) return new(null, draft.Problems.Sorted);
        var grader = Grader.For(draft.Procedure!, variant);
        if (!grader.IsOk)
        {
            draft.Report(grader.Fault.Problems);
            return new(null, draft.Problems.Sorted);
        }

        var report = ProcedureAnalysis.Of(grader.Value, Mirrored(draft, find));
        draft.Report(report.Problems);
        draft.Report(report.Remarks);
        return new(report, draft.Problems.Sorted);
    }

    private static Procedure? Mirrored(ProcedureDraft draft, Func<ProcedureId, ContentFile?> find)
    {
        if (draft.Procedure!.Mirror is not { } mirror) return null;
        if (find(mirror.Of) is not { } file)
            draft.Problems.Remark(draft.Places.Mirror, $"The procedure \"{mirror.Of}\" is not there: whether this one undoes it was not looked at.");
        else if (Read(file).Procedure is { } mirrored)
            return mirrored;
        else
            draft.Problems.Remark(draft.Places.Mirror, $"The procedure \"{mirror.Of}\" cannot be read: whether this one undoes it was not looked at.");
        return null;
    }

    /// <summary>
    /// Reads a procedure that is to be published: the id is the file's name, every rule and decoy says why and what
    /// happens, and the listing is a right order for every kind of vehicle.
    /// </summary>
    /// <param name="file">The file.</param>
    public static ProcedureReading Check(ContentFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var draft = ProcedureDraft.Read(file, ProcedureDemands.ToPublish);
        return new(draft.Problems.HasErrors ? null : draft.Procedure, draft.Problems.Sorted);
    }
}

/// <summary>What a reading of a procedure's file gave.</summary>
/// <param name="Procedure">The procedure; null where any error stands.</param>
/// <param name="Problems">Everything that its author should know, by line.</param>
public sealed record ProcedureReading(Procedure? Procedure, IReadOnlyList<ContentProblem> Problems);

/// <summary>What an attempt to grade by a procedure's file gave.</summary>
/// <param name="Grader">The grader; null where any error stands.</param>
/// <param name="Problems">Everything that its author should know, by line.</param>
public sealed record GraderReading(Grader? Grader, IReadOnlyList<ContentProblem> Problems);

/// <summary>What an attempt to analyse a procedure's file gave.</summary>
/// <param name="Report">What was found; null where an error leaves the procedure without an order.</param>
/// <param name="Problems">Everything that its author should know, by line; errors may stand beside a report.</param>
public sealed record AnalysisReading(AnalysisReport? Report, IReadOnlyList<ContentProblem> Problems);
