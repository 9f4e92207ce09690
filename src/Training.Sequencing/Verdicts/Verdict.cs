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
/// <param name="Kind">What is wrong.</param>
/// <param name="Subject">The id of the rule that was broken, or of the step, decoy or one-of group.</param>
/// <param name="Steps">The steps that it is about.</param>
/// <param name="Places">Their places in the answer, from 1; empty for what is not there, 0 for a step done before the answer began.</param>
/// <param name="Stakes">What is at stake.</param>
/// <param name="Message">A sentence for the technician: what happened, why it matters, what to do instead.</param>
public sealed record Finding(
    FindingKind Kind,
    string Subject,
    IReadOnlyList<StepId> Steps,
    IReadOnlyList<int> Places,
    Stakes Stakes,
    string Message);

/// <summary>The smallest mend of an answer. Moves, drops and additions are the fewest possible.</summary>
public sealed record Mend
{
    /// <summary>The steps that are taken out and put elsewhere.</summary>
    public IReadOnlyList<StepId> Moves { get; init; } = [];

    /// <summary>The places, from 1, of entries that go: decoys, repeats, extra choices.</summary>
    public IReadOnlyList<int> Drop { get; init; } = [];

    /// <summary>The steps that are missing.</summary>
    public IReadOnlyList<StepId> Add { get; init; } = [];

    /// <summary>The waits that must be longer, with the length that they need.</summary>
    public IReadOnlyList<Wait> Waits { get; init; } = [];

    /// <summary>The number of all of these.</summary>
    public int Cost => Moves.Count + Drop.Count + Add.Count + Waits.Count;
}

/// <summary>A wait step and how long it must be.</summary>
/// <param name="Step">The step.</param>
/// <param name="Length">How long, in all.</param>
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
