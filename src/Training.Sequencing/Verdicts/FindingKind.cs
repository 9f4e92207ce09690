namespace Training.Sequencing.Verdicts;

/// <summary>What a finding says was wrong; the codes of the contract are the members' names in lower case with hyphens.</summary>
public enum FindingKind
{
    /// <summary>A required step, or every member of a one-of group, is not there.</summary>
    Missing,

    /// <summary>A decoy, or a step of another kind of vehicle, is there.</summary>
    Decoy,

    /// <summary>A step is there again, or someone had already done it.</summary>
    Repeated,

    /// <summary>A second member of a one-of group is there.</summary>
    ExtraChoice,

    /// <summary>Two steps stand the wrong way round.</summary>
    Order,

    /// <summary>They stand the right way round, but the time between them is too short.</summary>
    TooSoon,

    /// <summary>A fact had another value when the step was done.</summary>
    State,
}
