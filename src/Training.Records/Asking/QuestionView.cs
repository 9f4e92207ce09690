using Training.Content.Scenarios;
using Training.Sequencing.Answers;
using Training.Sequencing.Json;
using Training.Sequencing.Procedures;
using Training.Sequencing.Questions;
using Training.Sequencing.Verdicts;

namespace Training.Records.Asking;

/// <summary>
/// A question as it is put: what may be shown before the answer is in. It never says which of the things that it shows
/// are right.
/// </summary>
public sealed record QuestionView
{
    internal QuestionView(QuestionKind kind, Scenario scenario, string language)
    {
        (Kind, Scenario, Title) = (kind, scenario.Id, scenario.In(language).Title);
        Situation = scenario with
        {
            Show = null,
            Start = [],
            Text = scenario.Text with { Absent = [] },
            Translations = [.. scenario.Translations.Select(text => text with { Absent = [] })],
        };
    }

    /// <summary>How it is put.</summary>
    public QuestionKind Kind { get; }

    /// <summary>The scenario that it is about.</summary>
    public ScenarioId Scenario { get; }

    /// <summary>What the scenario is called.</summary>
    public string Title { get; }

    /// <summary>
    /// The scenario, for <see cref="Training.Content.Rendering.LessonRenderer.RenderSituation"/>; its file as text is not
    /// for the browser, since it names decoys.
    /// </summary>
    public Scenario Situation { get; }

    /// <summary>What the job is called; for a reading, what is found.</summary>
    public required string ProcedureTitle { get; init; }

    /// <summary>The kind of vehicle; null where the job tells none apart.</summary>
    public VariantId? Variant { get; init; }

    /// <summary>What was done before the moment that is asked about, in order; empty where the job is untouched.</summary>
    public IReadOnlyList<DoneView> Start { get; init; } = [];

    /// <summary>Where an order is asked for: what it is made of, steps and decoys alike, in the order in which it is shown.</summary>
    public IReadOnlyList<OfferedView> Offered { get; init; } = [];

    /// <summary>The options, where there are any to choose from; otherwise null.</summary>
    public ChoiceView? Choice { get; init; }

    /// <summary>The reading to be taken, where there is one; otherwise null.</summary>
    public ReadingView? Reading { get; init; }
}

/// <summary>Something that can be chosen for an order.</summary>
/// <param name="Id">Its id, as answers name it.</param>
/// <param name="Do">What the technician reads.</param>
/// <param name="IsWait">Whether a length of time is to be stated with it.</param>
public sealed record OfferedView(StepId Id, string Do, bool IsWait);

/// <summary>Something that was done: by a colleague before, or by the person who answered.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Do">What it says.</param>
/// <param name="Stated">How long the wait was; null for what is no wait.</param>
public sealed record DoneView(StepId Id, string Do, Duration? Stated);

/// <summary>Options to choose from.</summary>
/// <param name="Options">The options, in the order in which they are shown.</param>
/// <param name="TakesSeveral">Whether several may be chosen; otherwise just one is.</param>
public sealed record ChoiceView(IReadOnlyList<OptionView> Options, bool TakesSeveral)
{
    /// <summary>What is done now, or waited with; null where the question is about none.</summary>
    public string? About { get; init; }

    /// <summary>What is done after the wait that is asked about, up to what had to be waited for.</summary>
    public IReadOnlyList<DoneView> Then { get; init; } = [];
}

/// <summary>An option.</summary>
/// <param name="Id">Its id within the question, as answers name it.</param>
/// <param name="Text">What it says.</param>
public sealed record OptionView(string Id, string Text);

/// <summary>An order of work with what is said of it.</summary>
/// <param name="Answer">The order as it was judged, its start included.</param>
/// <param name="Verdict">The verdict.</param>
/// <param name="Procedure">The procedure as it was judged by, for the words of its steps and rules.</param>
public sealed record GradedOrder(Answer Answer, Verdict Verdict, Procedure Procedure);

/// <summary>An answer with what is said of it. Shown only once the answer is in (a paper's: once the sitting is closed).</summary>
/// <param name="Question">The question.</param>
public abstract record JudgedAnswerView(QuestionView Question)
{
    /// <summary>Whether it is wholly right.</summary>
    public abstract bool Accepted { get; }

    /// <summary>Whether whoever works by it hurts nobody seriously and does nothing critical.</summary>
    public abstract bool Safe { get; }

    /// <summary>From 0 to 100, two decimals.</summary>
    public abstract decimal Score { get; }

    /// <summary>What was found, as it is kept: <c>accepted</c>, <c>safe</c>, <c>score</c>, <c>findings</c> and what else the kind has.</summary>
    internal abstract string ToJson();
}

/// <summary>An order that somebody gave.</summary>
/// <param name="Question">The question.</param>
/// <param name="Order">The order and its verdict.</param>
public sealed record JudgedOrderView(QuestionView Question, GradedOrder Order) : JudgedAnswerView(Question)
{
    /// <inheritdoc/>
    public override bool Accepted => Order.Verdict.Accepted;

    /// <inheritdoc/>
    public override bool Safe => Order.Verdict.Safe;

    /// <inheritdoc/>
    public override decimal Score => Order.Verdict.Score;

    internal override string ToJson() => VerdictJson.Write(Order.Verdict);
}

/// <summary>Options that somebody chose.</summary>
/// <param name="Question">The question.</param>
/// <param name="Chosen">The ids of the options that were chosen; none where it was not answered.</param>
/// <param name="Judgement">What that is worth, and which options are right.</param>
/// <param name="Replay">What happens, as an order of work with its verdict; null where there is none to show.</param>
/// <param name="Procedure">The procedure as it was judged by, for the words of its steps and rules.</param>
public sealed record JudgedChoiceView(
    QuestionView Question, IReadOnlyList<string> Chosen, Judgement Judgement, GradedOrder? Replay, Procedure Procedure) : JudgedAnswerView(Question)
{
    /// <inheritdoc/>
    public override bool Accepted => Judgement.IsRight;

    /// <inheritdoc/>
    public override bool Safe => Judgement.Safe;

    /// <inheritdoc/>
    public override decimal Score => Judgement.Score;

    internal override string ToJson() => JudgementJson.Write(Judgement);
}
