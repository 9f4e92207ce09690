using Training.Content.Competencies;
using Training.Records;
using Training.Records.Observing;
using Training.Sequencing.Procedures;

namespace Training.Web.Features.Runs;

/// <summary>The runs, and who is to be observed.</summary>
/// <param name="Reader">Who reads: an examiner goes on with their own runs alone.</param>
/// <param name="Runs">Open ones first, then the newest.</param>
/// <param name="ToDo">Who is to be observed.</param>
/// <param name="Form">What was typed to start a run.</param>
public sealed record RunsPage(
    PersonId Reader, IReadOnlyList<RunLine> Runs, IReadOnlyList<RunToDo> ToDo, StartRunForm Form)
{
    /// <summary>Runs that are not signed yet.</summary>
    public IEnumerable<RunLine> Open => Runs.Where(run => run.State is RunState.UnderWay or RunState.Ended);

    /// <summary>Runs that are signed or were given up.</summary>
    public IEnumerable<RunLine> Done => Runs.Where(run => run.State is RunState.Signed or RunState.Abandoned);

    /// <summary>Whether what was typed is about this line.</summary>
    /// <param name="line">The line.</param>
    public bool IsTyped(RunToDo line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return Form.Technician == line.Technician && Form.Competency == line.Competency.Value && Form.Procedure == line.Procedure.Value;
    }
}

/// <summary>What is chosen and typed to start a run.</summary>
public sealed class StartRunForm
{
    /// <summary>Who works.</summary>
    public PersonId Technician { get; init; }

    /// <summary>What it is to show.</summary>
    public string? Competency { get; init; }

    /// <summary>The job.</summary>
    public string? Procedure { get; init; }

    /// <summary>The kind of chassis.</summary>
    public string? Variant { get; init; }

    /// <summary>Which chassis.</summary>
    public string? Chassis { get; init; }

    /// <summary>The run.</summary>
    public NewRun Run() => new(Technician, new CompetencyId(Competency ?? ""), new ProcedureId(Procedure ?? ""),
        string.IsNullOrEmpty(Variant) ? null : new VariantId(Variant), Chassis ?? "");
}
