namespace Training.Sequencing.Procedures;

/// <summary>What is at stake when a rule is broken, a decoy is done or a step is left out.</summary>
/// <param name="Harm">Who or what is hurt.</param>
/// <param name="Severity">How badly.</param>
public readonly record struct Stakes(Harm Harm, Severity Severity)
{
    /// <summary>What holds where a procedure does not say: the work, seriously.</summary>
    public static Stakes Default { get; } = new(Harm.Work, Severity.Serious);

    /// <summary>
    /// Whether an answer that runs this risk may still be called safe: nothing critical,
    /// and nothing that harms people at serious or above.
    /// </summary>
    public bool IsSafe => Severity != Severity.Critical && !(Harm == Harm.People && Severity >= Severity.Serious);
}
