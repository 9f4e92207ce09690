using Training.Sequencing.Procedures;

namespace Training.Content.Procedures;

/// <summary>Reads procedures from YAML (or JSON, which is YAML).</summary>
public static class ProcedureFile
{
    /// <summary>Reads a procedure as far as an answer can be graded by it.</summary>
    /// <param name="file">The file; its name does not matter.</param>
    public static ProcedureReading Read(ContentFile file) => throw new NotImplementedException();

    /// <summary>Reads a procedure that is to be published: the id is the file's name, and every rule and decoy says why.</summary>
    /// <param name="file">The file.</param>
    public static ProcedureReading Check(ContentFile file) => throw new NotImplementedException();
}

/// <summary>What a reading of a procedure's file gave.</summary>
/// <param name="Procedure">The procedure; null where any error stands.</param>
/// <param name="Problems">Everything that its author should know, by line.</param>
public sealed record ProcedureReading(Procedure? Procedure, IReadOnlyList<ContentProblem> Problems);
