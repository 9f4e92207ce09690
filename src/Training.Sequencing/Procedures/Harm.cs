namespace Training.Sequencing.Procedures;

/// <summary>Who or what is hurt when a rule is broken.</summary>
public enum Harm
{
    /// <summary>The job must be done again. The default.</summary>
    Work,

    /// <summary>Acid, fuel or another agent is spilled.</summary>
    Environment,

    /// <summary>Something on the vehicle is damaged.</summary>
    Equipment,

    /// <summary>Somebody is hurt.</summary>
    People,
}
