using System.Diagnostics.CodeAnalysis;
using NodaTime;
using Training.Content;
using Training.Content.Competencies;
using Training.Records.Asking;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Records.Observing;

/// <summary>A run to be started.</summary>
/// <param name="Technician">Who works.</param>
/// <param name="Competency">What it is to show.</param>
/// <param name="Procedure">The job; one of those that the competency wants observed.</param>
/// <param name="Variant">The kind of vehicle; null where the procedure tells none apart.</param>
/// <param name="Chassis">Which vehicle, in the shop's own words.</param>
public sealed record NewRun(PersonId Technician, CompetencyId Competency, ProcedureId Procedure, VariantId? Variant, string Chassis);

/// <summary>A tap to be noted.</summary>
/// <param name="Id">A GUID that the device made for this tap, so that a tap sent again counts once.</param>
/// <param name="Step">The step or decoy that was just done.</param>
/// <param name="Seconds">When, in seconds since the start of the run, by the device's own count.</param>
public sealed record NewTap(Guid Id, StepId Step, decimal Seconds);

/// <summary>Somebody who is to be observed.</summary>
/// <param name="Technician">The technician.</param>
/// <param name="Name">Their name.</param>
/// <param name="Shop">Their shop's name.</param>
/// <param name="Competency">What they are to show.</param>
/// <param name="CompetencyTitle">What that is called.</param>
/// <param name="Procedure">The job.</param>
/// <param name="ProcedureTitle">What the job is called.</param>
/// <param name="Variants">The kinds of vehicle that the job tells apart.</param>
/// <param name="Until">The last day for it.</param>
/// <param name="OpenRun">The run under way, if there is one.</param>
public sealed record RunToDo(
    PersonId Technician,
    string Name,
    string Shop,
    CompetencyId Competency,
    string CompetencyTitle,
    ProcedureId Procedure,
    string ProcedureTitle,
    IReadOnlyList<VariantId> Variants,
    LocalDate Until,
    RunId? OpenRun);

/// <summary>How far a run has come.</summary>
public enum RunState
{
    /// <summary>Steps are tapped.</summary>
    UnderWay,

    /// <summary>The work is done; the examiner has not signed.</summary>
    Ended,

    /// <summary>The examiner has signed; the verdict stands.</summary>
    [SuppressMessage("Naming", "CA1720", Justification = "The trade's word: an examiner signs.")]
    Signed,

    /// <summary>It was given up and counts for nothing.</summary>
    Abandoned,
}

/// <summary>A run in a list.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Technician">Who works.</param>
/// <param name="Name">Their name.</param>
/// <param name="Shop">Their shop's name.</param>
/// <param name="Examiner">Who observes.</param>
/// <param name="ExaminerName">The examiner's name.</param>
/// <param name="Competency">What it is to show.</param>
/// <param name="CompetencyTitle">What that is called.</param>
/// <param name="Procedure">The job.</param>
/// <param name="ProcedureTitle">What the job is called.</param>
/// <param name="Variant">The kind of vehicle.</param>
/// <param name="Chassis">Which vehicle.</param>
/// <param name="StartedAt">When it was started, by the server's clock.</param>
/// <param name="State">How far it has come.</param>
/// <param name="Passed">Whether it was accepted; null before it is signed.</param>
public sealed record RunLine(
    RunId Id,
    PersonId Technician,
    string Name,
    string Shop,
    PersonId Examiner,
    string ExaminerName,
    CompetencyId Competency,
    string CompetencyTitle,
    ProcedureId Procedure,
    string ProcedureTitle,
    VariantId? Variant,
    string Chassis,
    Instant StartedAt,
    RunState State,
    bool? Passed);

/// <summary>A run in full.</summary>
/// <param name="Run">The run.</param>
/// <param name="Revision">The procedure's revision.</param>
/// <param name="ProcedureHash">The hash of the procedure's text.</param>
/// <param name="Offered">What can be tapped: the steps for this kind of vehicle in their listed order, then the decoys.</param>
/// <param name="Taps">What was tapped, in order, with what was taken back.</param>
/// <param name="ElapsedSeconds">Seconds since the start, by the server's clock; for a run that has ended, until its end.</param>
/// <param name="Note">What the examiner wrote on signing; null before.</param>
/// <param name="Reason">Why it was abandoned; null where it was not.</param>
/// <param name="EndedAt">When it ended; null while it is under way.</param>
/// <param name="SignedAt">When it was signed; null before.</param>
/// <param name="Judged">The verdict; null before the run has ended, and for one that was abandoned under way.</param>
/// <param name="Record">The competency record that was issued with it, if one was.</param>
public sealed record RunView(
    RunLine Run,
    int Revision,
    ContentHash ProcedureHash,
    IReadOnlyList<OfferedView> Offered,
    IReadOnlyList<TapView> Taps,
    decimal ElapsedSeconds,
    string? Note,
    string? Reason,
    Instant? EndedAt,
    Instant? SignedAt,
    JudgedRunView? Judged,
    RecordId? Record);

/// <summary>A run as it was judged.</summary>
/// <param name="Answer">The order with its real times.</param>
/// <param name="Verdict">The verdict.</param>
/// <param name="Procedure">The procedure as it was judged by.</param>
public sealed record JudgedRunView(Answer Answer, Verdict Verdict, Procedure Procedure);

/// <summary>A tap.</summary>
/// <param name="Id">The device's id of it.</param>
/// <param name="Number">Its number within the run, from 1, counting what was taken back.</param>
/// <param name="Step">What was tapped.</param>
/// <param name="Do">What it says.</param>
/// <param name="Seconds">When, in seconds since the start.</param>
/// <param name="IsUndone">Whether it was taken back.</param>
public sealed record TapView(Guid Id, int Number, StepId Step, string Do, decimal Seconds, bool IsUndone);

/// <summary>What signing a run led to.</summary>
/// <param name="Run">The run.</param>
/// <param name="Passed">Whether it was accepted.</param>
/// <param name="Record">The competency record that was issued with it; null where something is still to be shown.</param>
public sealed record SignedRun(RunId Run, bool Passed, RecordId? Record);
