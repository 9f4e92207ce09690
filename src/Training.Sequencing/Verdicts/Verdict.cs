using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Verdicts;

/// <summary>What the engine says of an answer.</summary>
public sealed record Verdict
{
    /// <summary>Whether the order is right: no finding at all.</summary>
    public bool Accepted => Findings.Count == 0;

    /// <summary>Whether nothing critical, and nothing that harms people seriously, was found.</summary>
    public required bool Safe { get; init; }

    /// <summary>From 0 to 100, two decimals; 100 just where the answer is accepted.</summary>
    public required decimal Score { get; init; }

    /// <summary>How many entries can stay in the order in which they stand.</summary>
    public required int Kept { get; init; }

    /// <summary>How many changes the least mend makes; 0 just where the answer is accepted.</summary>
    public int Cost => Mend.Cost;

    /// <summary>Everything that is wrong.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>The least change that makes it right.</summary>
    public required Mend Mend { get; init; }

    /// <summary>The mended answer itself.</summary>
    public required IReadOnlyList<Entry> Nearest { get; init; }

    /// <summary>What happened, entry by entry.</summary>
    public required IReadOnlyList<ReplayEntry> Replay { get; init; }
}

/// <summary>One thing that is wrong with an answer.</summary>
public sealed record Finding
{
    private readonly FindingText? text;
    private FindingTelling? telling;
    private string? message;

    /// <summary>A finding with its sentences.</summary>
    public Finding(
        FindingKind kind,
        string subject,
        IReadOnlyList<StepId> steps,
        IReadOnlyList<int> places,
        Stakes stakes,
        string message)
    {
        (Kind, Subject, Steps, Places, Stakes) = (kind, subject, steps, places, stakes);
        this.message = message;
    }

    /// <summary>A finding whose sentences are written when somebody reads them.</summary>
    internal Finding(
        FindingKind kind,
        string subject,
        IReadOnlyList<StepId> steps,
        IReadOnlyList<int> places,
        Stakes stakes,
        FindingText text)
    {
        (Kind, Subject, Steps, Places, Stakes) = (kind, subject, steps, places, stakes);
        this.text = text;
    }

    /// <summary>What is wrong.</summary>
    public FindingKind Kind { get; }

    /// <summary>
    /// The id of the rule that was broken; where no rule stands behind it, of the step or decoy (for a one-of group
    /// that was left out, of its first listed member).
    /// </summary>
    public string Subject { get; }

    /// <summary>The steps that it is about; for an order or a gap the earlier step of the rule, then the later one.</summary>
    public IReadOnlyList<StepId> Steps { get; }

    /// <summary>
    /// Their places in the answer, from 1; empty for what is not there, 0 for a step done before the answer began.
    /// </summary>
    public IReadOnlyList<int> Places { get; }

    /// <summary>What is at stake.</summary>
    public Stakes Stakes { get; }

    /// <summary>
    /// Sentences for the technician: what happened, why it matters, what can come of it, what to do instead.
    /// </summary>
    public string Message => message ??= text!.Tell(this).ToString();

    /// <summary>The same as sentences that can be said in any language; null where only the text was given.</summary>
    public FindingTelling? Telling => telling ??= text?.Tell(this);
}

/// <summary>
/// What the sentences of a finding are made of. They are made when somebody reads them: whoever only wants to know what
/// is right pays nothing for them.
/// </summary>
internal abstract class FindingText
{
    /// <summary>The sentences of a finding that this text belongs to.</summary>
    public abstract FindingTelling Tell(Finding finding);
}

/// <summary>The smallest mend of an answer. Moves, drops and additions are the fewest possible.</summary>
public sealed record Mend
{
    /// <summary>Nothing to mend.</summary>
    public static Mend None { get; } = new();

    /// <summary>The steps that are taken out and put elsewhere.</summary>
    public IReadOnlyList<StepId> Moves { get; init; } = [];

    /// <summary>The places, from 1, of entries that go: decoys, repeats, extra choices.</summary>
    public IReadOnlyList<int> Drop { get; init; } = [];

    /// <summary>The steps that are missing.</summary>
    public IReadOnlyList<StepId> Add { get; init; } = [];

    /// <summary>
    /// The waits that must be longer, with the length that they need. In an observed run a gap may have no wait step
    /// inside it: then the later step of the rule is named, with how much longer to hold off before it.
    /// </summary>
    public IReadOnlyList<Wait> Waits { get; init; } = [];

    /// <summary>The number of all of these.</summary>
    public int Cost => Moves.Count + Drop.Count + Add.Count + Waits.Count;
}

/// <summary>A wait step and how long it must be.</summary>
/// <param name="Step">The wait step; in an observed run possibly the step to hold off.</param>
/// <param name="Length">How long the wait is in all; for a step that is no wait, how much longer to hold off.</param>
public readonly record struct Wait(StepId Step, Duration Length);

/// <summary>What one entry of the answer did.</summary>
/// <param name="Place">Its place, from 1; entries of the start are not replayed but set what holds before place 1.</param>
/// <param name="Step">The step or decoy.</param>
/// <param name="StartsAt">When it began, on the clock of the job.</param>
/// <param name="EndsAt">When it ended.</param>
/// <param name="Facts">The value of every fact after it, in the procedure's order.</param>
/// <param name="Findings">The findings that it caused, as indexes into the verdict's list.</param>
public sealed record ReplayEntry(
    int Place,
    StepId Step,
    Duration StartsAt,
    Duration EndsAt,
    IReadOnlyList<FactSetting> Facts,
    IReadOnlyList<int> Findings);
