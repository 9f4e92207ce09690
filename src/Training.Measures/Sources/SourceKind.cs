namespace Training.Measures.Sources;

/// <summary>How far a number can be relied on.</summary>
public enum SourceKind
{
    /// <summary>Printed by an authority or a standard, and read there or in a page that restates it.</summary>
    Published,

    /// <summary>Common practice of the trade; no published source.</summary>
    Practice,

    /// <summary>Recalled and not read: never to be called published.</summary>
    Memory,
}
