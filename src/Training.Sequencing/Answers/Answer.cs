using Training.Sequencing.Procedures;

namespace Training.Sequencing.Answers;

/// <summary>
/// An order of work as somebody gave it. Either every entry carries real times (an observed run), or none does.
/// The entries stand in the order in which the work was begun.
/// </summary>
/// <param name="Entries">What was done, in order.</param>
public sealed record Answer(IReadOnlyList<Entry> Entries)
{
    /// <summary>What someone else had done before, in order; empty where the job was untouched.</summary>
    public IReadOnlyList<Entry> Start { get; init; } = [];
}

/// <summary>One thing done: a step or a decoy, named by its id.</summary>
/// <param name="Step">Which.</param>
public sealed record Entry(StepId Step)
{
    /// <summary>How long the technician says to wait; on a wait step alone. None counts as no time.</summary>
    public Duration? Stated { get; init; }

    /// <summary>The real times, where the run was observed.</summary>
    public Times? Observed { get; init; }
}

/// <summary>When an observed step was begun and done, counted from the start of the run.</summary>
public readonly record struct Times
{
    private Times(Duration startedAt, Duration finishedAt) => (StartedAt, FinishedAt) = (startedAt, finishedAt);

    /// <summary>When it was begun.</summary>
    public Duration StartedAt { get; }

    /// <summary>When it was done; never before <see cref="StartedAt"/>.</summary>
    public Duration FinishedAt { get; }

    /// <summary>Pairs two times.</summary>
    /// <param name="startedAt">When it was begun.</param>
    /// <param name="finishedAt">When it was done.</param>
    /// <param name="times">The pair, where it is one; otherwise no time at all.</param>
    /// <returns>False where the step would end before it began.</returns>
    public static bool TryCreate(Duration startedAt, Duration finishedAt, out Times times)
    {
        var isPair = finishedAt >= startedAt;
        times = isPair ? new(startedAt, finishedAt) : default;
        return isPair;
    }
}
