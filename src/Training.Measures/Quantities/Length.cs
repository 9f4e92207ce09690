using System.Globalization;

namespace Training.Measures.Quantities;

/// <summary>A length of cable, strap or wire.</summary>
public readonly record struct Length : IQuantity<Length>
{
    private Length(double value) => Metres = value;

    /// <inheritdoc/>
    public static QuantityKind Kind { get; } = new(
        "length", 0, QuantityKind.Enormous, "is never below zero, and no cable is this long", "1.5 m",
        [
            new("m", 1, "metre", "metres", "meter", "meters"),
            new("cm", 0.01),
            new("mm", 0.001),
            new("ft", 0.3048, "foot", "feet"),
        ]);

    /// <summary>In metres.</summary>
    public double Metres { get; }

    double IQuantity<Length>.InBaseUnit => Metres;

    /// <summary>From a number of ours that is known to be possible.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not: a fault of ours.</exception>
    public static Length FromMetres(double value) => new(Kind.Insist(value));

    /// <inheritdoc/>
    public static Outcome<Length> Of(double value) =>
        Kind.ObjectionTo(value) is { } objection ? objection : new Length(value);

    /// <summary>In feet of exactly 0.3048 m.</summary>
    public double Feet => Metres / 0.3048;

    /// <summary>From feet of exactly 0.3048 m.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not possible: a fault of ours.</exception>
    public static Length FromFeet(double feet) => new(Kind.Insist(feet * 0.3048));

    /// <summary>Rounded for print alone.</summary>
    public override string ToString() => Kind.Print(Metres, CultureInfo.InvariantCulture);
}
