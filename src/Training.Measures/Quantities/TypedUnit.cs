namespace Training.Measures.Quantities;

/// <summary>Finds the unit that somebody typed.</summary>
internal static class TypedUnit
{
    /// <summary>
    /// The unit, or null. A spelling as printed comes first; then, since phones begin with a capital letter, one in
    /// any case. A capital M is never taken for milli: it stands for a million.
    /// </summary>
    public static Unit? Find(QuantityKind kind, string spelling) =>
        Find(kind, spelling, StringComparison.Ordinal)
        ?? (spelling.StartsWith('M') && spelling.Length is 2 or 3 && kind.Units.Any(IsMilli)
            ? null
            : Find(kind, spelling, StringComparison.OrdinalIgnoreCase));

    private static Unit? Find(QuantityKind kind, string spelling, StringComparison comparison) =>
        kind.Units.FirstOrDefault(unit =>
            string.Equals(unit.Symbol, spelling, comparison)
            || unit.Spellings.Any(other => string.Equals(other, spelling, comparison)));

    private static bool IsMilli(Unit unit) => unit.Symbol.Length > 1 && unit.Symbol[0] == 'm' && unit.Factor == 0.001;
}
