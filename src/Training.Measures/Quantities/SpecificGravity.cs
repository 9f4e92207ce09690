using System.Globalization;

namespace Training.Measures.Quantities;

/// <summary>
/// The specific gravity of an electrolyte, as a hydrometer shows it. Water is 1.000 and concentrated sulphuric acid
/// about 1.84 (general knowledge, from memory), so nothing that a hydrometer is dipped into lies outside 0.9 to 1.9.
/// </summary>
public readonly record struct SpecificGravity : IQuantity<SpecificGravity>
{
    // Kept as the excess over water, so that a value nobody gave is water and not an impossible nought.
    private readonly double overWater;

    private SpecificGravity(double value) => overWater = value - 1;

    /// <inheritdoc/>
    public static QuantityKind Kind { get; } = new(
        "specific gravity", 0.9, 1.9, "lies between 0.900 and 1.900", "1.265", [new("", 1, "SG")], 3);

    /// <summary>The bare number, water being 1.</summary>
    public double Value => 1 + overWater;

    double IQuantity<SpecificGravity>.InBaseUnit => Value;

    /// <summary>From a number of ours that is known to be possible.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not: a fault of ours.</exception>
    public static SpecificGravity FromValue(double value) => new(Kind.Insist(value));

    /// <inheritdoc/>
    public static Outcome<SpecificGravity> Of(double value) =>
        Kind.ObjectionTo(value) is { } objection ? objection : new SpecificGravity(value);

    /// <summary>Three decimal places, as a hydrometer is read.</summary>
    public override string ToString() => Kind.Print(Value, CultureInfo.InvariantCulture);
}
