using Training.Sequencing.Procedures;

namespace Training.Content.Procedures;

/// <summary>Reads procedures from YAML (or JSON, which is YAML).</summary>
public static class ProcedureFile
{
    /// <summary>Reads a procedure as far as an answer can be graded by it; its file's name does not matter.</summary>
    /// <param name="file">The file.</param>
    public static ProcedureReading Read(ContentFile file)
    {
        var draft = ProcedureDraft.Read(file, ProcedureDemands.ToGrade);
        return new(draft.Problems.HasErrors ? null : draft.Procedure, draft.Problems.All);
    }

    /// <summary>
    /// Reads a procedure that is to be published: the id is the file's name, every rule and decoy says why, and the
    /// listing is a right order for every kind of vehicle.
    /// </summary>
    /// <param name="file">The file.</param>
    public static ProcedureReading Check(ContentFile file)
    {
        var draft = ProcedureDraft.Read(file, ProcedureDemands.ToPublish);
        return new(draft.Problems.HasErrors ? null : draft.Procedure, draft.Problems.All);
    }
}

/// <summary>What a reading of a procedure's file gave.</summary>
/// <param name="Procedure">The procedure; null where any error stands.</param>
/// <param name="Problems">Everything that its author should know.</param>
public sealed record ProcedureReading(Procedure? Procedure, IReadOnlyList<ContentProblem> Problems);
