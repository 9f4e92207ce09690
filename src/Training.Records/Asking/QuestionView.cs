using Training.Content.Scenarios;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Records.Asking;

/// <summary>
/// A question as it is put: what may be shown before the answer is in. It says which things are offered, in shuffled
/// order, never which of them are right.
/// </summary>
/// <param name="Kind">How it is put.</param>
/// <param name="Scenario">The scenario that it is about.</param>
/// <param name="Title">What the scenario is called.</param>
/// <param name="Situation">The scenario, for <see cref="Training.Content.Rendering.LessonRenderer.RenderSituation"/>; its file as text is not for the browser, since it names decoys.</param>
/// <param name="ProcedureTitle">What the job is called.</param>
/// <param name="Variant">The kind of vehicle; null where the job tells none apart.</param>
/// <param name="Start">What a colleague has already done, in order; empty where the job is untouched.</param>
/// <param name="Offered">What can be chosen, steps and decoys alike, in the order in which it is shown.</param>
public sealed record QuestionView(
    QuestionKind Kind,
    ScenarioId Scenario,
    string Title,
    Scenario Situation,
    string ProcedureTitle,
    VariantId? Variant,
    IReadOnlyList<DoneView> Start,
    IReadOnlyList<OfferedView> Offered);

/// <summary>Something that can be chosen for an answer.</summary>
/// <param name="Id">Its id, as answers name it.</param>
/// <param name="Do">What the technician reads.</param>
/// <param name="IsWait">Whether a length of time is to be stated with it.</param>
public sealed record OfferedView(StepId Id, string Do, bool IsWait);

/// <summary>Something that was done: by a colleague before, or by the person who answered.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Do">What it says.</param>
/// <param name="Stated">How long the wait was; null for what is no wait.</param>
public sealed record DoneView(StepId Id, string Do, Duration? Stated);

/// <summary>An answer with what is said of it. Shown only once the answer is in (a paper's: once the sitting is closed).</summary>
/// <param name="Question">The question.</param>
/// <param name="Answer">The answer as it was judged, its start included.</param>
/// <param name="Verdict">The verdict.</param>
/// <param name="Procedure">The procedure as it was judged by, for the words of its steps and rules.</param>
public sealed record JudgedAnswerView(QuestionView Question, Answer Answer, Verdict Verdict, Procedure Procedure);
