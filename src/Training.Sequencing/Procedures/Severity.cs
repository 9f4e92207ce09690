namespace Training.Sequencing.Procedures;

/// <summary>How bad the harm is. Ordered: a later member is worse.</summary>
public enum Severity
{
    /// <summary>A nuisance.</summary>
    Minor,

    /// <summary>Costly or painful. The default.</summary>
    Serious,

    /// <summary>A life, or the vehicle.</summary>
    Critical,
}
