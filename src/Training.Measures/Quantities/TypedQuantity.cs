namespace Training.Measures.Quantities;

/// <summary>
/// Reads a number and its unit as people type them on a phone: decimal comma or point, digits of any script, units
/// in their usual spellings, whatever language the device is set to. What cannot be read for certain is refused:
/// a separator for thousands looks like a decimal mark in the next country.
/// </summary>
public static class TypedQuantity
{
    private const int LongestText = 40;

    /// <summary>Reads a quantity.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="unitShown">
    /// The unit that stands beside the field, used where none is typed; null asks for a typed unit.
    /// </param>
    public static Outcome<T> Read<T>(string? text, string? unitShown = null)
        where T : struct, IQuantity<T> =>
        Read(T.Kind, text, unitShown).Then(T.Of);

    /// <summary>Reads a quantity of a kind that is known only when the program runs.</summary>
    /// <returns>The number in the kind's base unit.</returns>
    public static Outcome<double> Read(QuantityKind kind, string? text, string? unitShown = null)
    {
        ArgumentNullException.ThrowIfNull(kind);
        var typed = (text ?? "").Trim();
        if (typed.Length == 0)
            return new Objection($"Write the {kind.Name}, for example {kind.Example}.");
        if (typed.Length > LongestText)
            return new Objection($"That is too long for a {kind.Name}: write it like {kind.Example}.");
        var end = TypedNumber.EndOf(typed);
        if (TypedNumber.Read(typed[..end]) is not { } number)
            return new Objection(
                $"“{typed}” cannot be read as a {kind.Name}: write one number without a separator for thousands, " +
                $"for example {kind.Example}.");
        var spelling = typed[end..].Trim();
        if (spelling.Length == 0)
            return WithoutUnit(kind, number, unitShown);
        return TypedUnit.Find(kind, spelling) is { } unit
            ? InBounds(kind, unit.ToBase(number))
            : new Objection($"“{spelling}” is not a unit of a {kind.Name} here: write it like {kind.Example}.");
    }

    private static Outcome<double> WithoutUnit(QuantityKind kind, double number, string? unitShown)
    {
        if (ReferenceEquals(kind, SpecificGravity.Kind))
            return InBounds(kind, HydrometerPoints(number));
        if (kind.BaseUnit.Symbol.Length == 0)
            return InBounds(kind, number);
        if (unitShown is null)
            return new Objection($"Write the unit too, for example {kind.Example}.");
        var unit = TypedUnit.Find(kind, unitShown)
            ?? throw new ArgumentException($"{unitShown} is not a unit of a {kind.Name}.", nameof(unitShown));
        return InBounds(kind, unit.ToBase(number));
    }

    // Common practice, no published source: a reading of 1.265 is said and written as 1265.
    private static double HydrometerPoints(double number) =>
        number is >= 900 and <= 1900 && Math.Floor(number) == number ? number / 1000 : number;

    private static Outcome<double> InBounds(QuantityKind kind, double number) =>
        kind.ObjectionTo(number) is { } objection ? objection : number;
}
