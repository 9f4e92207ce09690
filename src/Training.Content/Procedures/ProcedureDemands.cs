namespace Training.Content.Procedures;

/// <summary>How much is asked of a procedure's file.</summary>
internal enum ProcedureDemands
{
    /// <summary>Enough to grade answers by it.</summary>
    ToGrade,

    /// <summary>Also what a technician is told, and the file's name.</summary>
    ToPublish,
}
