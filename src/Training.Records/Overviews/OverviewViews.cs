using NodaTime;
using Training.Content.Competencies;
using Training.Content.Modules;
using Training.Content.Scenarios;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Examining;
using Training.Sequencing.Procedures;

namespace Training.Records.Overviews;

/// <summary>A technician's way to one competency.</summary>
/// <param name="Competency">The competency.</param>
/// <param name="Title">What it is called.</param>
/// <param name="Next">The one thing to do next; null where nothing is to be done.</param>
/// <param name="Steps">The whole way, in order.</param>
/// <param name="Record">The newest record; null where there is none.</param>
public sealed record CompetencyPath(
    CompetencyId Competency, string Title, PathStep? Next, IReadOnlyList<PathStep> Steps, RecordLine? Record);

/// <summary>Something on the way to a competency record.</summary>
/// <param name="IsDone">Whether it is done.</param>
public abstract record PathStep(bool IsDone)
{
    /// <summary>Read a module's lesson.</summary>
    /// <param name="Module">The module.</param>
    /// <param name="Title">What it is called.</param>
    /// <param name="Minutes">How long it takes.</param>
    /// <param name="IsDone">Whether it was read as it is served now.</param>
    public sealed record Read(ModuleId Module, string Title, int Minutes, bool IsDone) : PathStep(IsDone);

    /// <summary>Practise a scenario that the paper may ask.</summary>
    /// <param name="Scenario">The scenario.</param>
    /// <param name="Title">What it is called.</param>
    /// <param name="Kind">How it is put.</param>
    /// <param name="Tries">How often it was tried.</param>
    /// <param name="IsDone">Whether a try was right.</param>
    public sealed record Practise(ScenarioId Scenario, string Title, QuestionKind Kind, int Tries, bool IsDone) : PathStep(IsDone);

    /// <summary>Sit the paper.</summary>
    /// <param name="Paper">The paper that the technician was admitted to, has open or sat last; null where there is none.</param>
    /// <param name="State">How far that paper has come.</param>
    /// <param name="NotBefore">The time before which there is no admission, after a failed paper.</param>
    /// <param name="IsDone">Whether a paper is passed and its time for the runs is not over.</param>
    public sealed record SitPaper(PaperId? Paper, PaperState? State, Instant? NotBefore, bool IsDone) : PathStep(IsDone);

    /// <summary>Be observed at a vehicle.</summary>
    /// <param name="Procedure">The job.</param>
    /// <param name="Title">What it is called.</param>
    /// <param name="Run">The last run of it for the paper; null where there is none.</param>
    /// <param name="Until">The last day for it; null before the paper is passed.</param>
    /// <param name="IsDone">Whether a run was passed.</param>
    public sealed record BeObserved(ProcedureId Procedure, string Title, RunId? Run, LocalDate? Until, bool IsDone) : PathStep(IsDone);
}

/// <summary>People × competencies.</summary>
/// <param name="Competencies">The columns, as they are served now and as records name them.</param>
/// <param name="Rows">The people, by shop and name.</param>
public sealed record CompetencyTable(IReadOnlyList<CompetencyColumn> Competencies, IReadOnlyList<CompetencyRow> Rows);

/// <summary>A competency in the table.</summary>
/// <param name="Competency">The competency.</param>
/// <param name="Title">What it is called.</param>
public sealed record CompetencyColumn(CompetencyId Competency, string Title);

/// <summary>A person in the table.</summary>
/// <param name="Person">The person.</param>
/// <param name="Name">Their name.</param>
/// <param name="Shop">Their shop.</param>
/// <param name="On">The day that the states are of.</param>
/// <param name="Records">One cell a column: the record that counts on that day; null where there is none.</param>
public sealed record CompetencyRow(PersonId Person, string Name, ShopView Shop, LocalDate On, IReadOnlyList<RecordLine?> Records);
