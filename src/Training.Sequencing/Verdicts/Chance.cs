namespace Training.Sequencing.Verdicts;

/// <summary>What there can be to get wrong in an answer.</summary>
public enum ChanceKind
{
    /// <summary>A rule of the procedure, of either kind.</summary>
    Rule,

    /// <summary>A step that is to be done, and can be left out.</summary>
    LeftOut,

    /// <summary>Something that is never done in the job, and is offered.</summary>
    Decoy,

    /// <summary>A step that was done, and can be done again.</summary>
    Again,

    /// <summary>A second way to do what was done one way.</summary>
    SecondWay,

    /// <summary>An optional step or a way for which it is too late, since what must follow it was done before.</summary>
    TooLate,
}

/// <summary>
/// One thing that an answer could get wrong: the denominator to which its findings are the numerator. Whoever leaves a
/// step out has no chance to break the rules about it, and whoever was not offered a decoy none to take it.
/// </summary>
/// <param name="Kind">What kind of thing.</param>
/// <param name="Subject">
/// The id of the rule; otherwise of the step or decoy (of a one-of group that can be left out, its first listed member).
/// </param>
public readonly record struct Chance(ChanceKind Kind, string Subject)
{
    /// <summary>What was got wrong where something was found.</summary>
    /// <param name="finding">The finding.</param>
    public static Chance Of(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.Kind switch
        {
            FindingKind.Missing => new(ChanceKind.LeftOut, finding.Steps[0].Value),
            FindingKind.Decoy => new(ChanceKind.Decoy, finding.Subject),
            FindingKind.Repeated => new(ChanceKind.Again, finding.Subject),
            FindingKind.ExtraChoice => new(ChanceKind.SecondWay, finding.Subject),
            // A rule names two steps; a step that comes too late and that no rule names stands alone.
            FindingKind.Order when finding.Steps.Count == 1 => new(ChanceKind.TooLate, finding.Subject),
            _ => new(ChanceKind.Rule, finding.Subject),
        };
    }
}
