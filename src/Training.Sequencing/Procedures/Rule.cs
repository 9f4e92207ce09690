namespace Training.Sequencing.Procedures;

/// <summary>What must hold of an order of work, and why. There are two kinds: <see cref="OrderRule"/> and <see cref="StateRule"/>.</summary>
/// <param name="Id">Its name within the procedure.</param>
public abstract record Rule(RuleId Id)
{
    /// <summary>Why the rule holds: what a technician is told.</summary>
    public string? Because { get; init; }

    /// <summary>What happens where it is broken: what a technician is told.</summary>
    public string? Otherwise { get; init; }

    /// <summary>What is at stake when it is broken.</summary>
    public Stakes Stakes { get; init; } = Stakes.Default;
}

/// <summary>Every step of <paramref name="First"/> comes before every step of <paramref name="Then"/>.</summary>
/// <param name="Id">Its name.</param>
/// <param name="First">The earlier steps, at least one.</param>
/// <param name="Then">The later steps, at least one.</param>
public sealed record OrderRule(RuleId Id, IReadOnlyList<StepId> First, IReadOnlyList<StepId> Then) : Rule(Id)
{
    /// <summary>The smallest time from the end of the one to the start of the other, if the rule asks for one.</summary>
    public Duration? AtLeast { get; init; }
}

/// <summary>The step may be done only while each named fact has the named value.</summary>
/// <param name="Id">Its name.</param>
/// <param name="Step">The step.</param>
/// <param name="OnlyWhile">What must hold when it is done, at least one.</param>
public sealed record StateRule(RuleId Id, StepId Step, IReadOnlyList<FactSetting> OnlyWhile) : Rule(Id);
