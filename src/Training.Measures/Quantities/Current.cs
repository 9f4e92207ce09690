using System.Globalization;

namespace Training.Measures.Quantities;

/// <summary>An electric current. Negative where it flows against the clamp meter's arrow.</summary>
public readonly record struct Current : IQuantity<Current>
{
    private Current(double value) => Amperes = value;

    /// <inheritdoc/>
    public static QuantityKind Kind { get; } = new(
        "current", -QuantityKind.Enormous, QuantityKind.Enormous, "this large does not occur on a vehicle", "7.5 A",
        [
            new("A", 1, "amp", "amps", "ampere", "amperes"),
            new("mA", 0.001, "milliamp", "milliamps"),
        ]);

    /// <summary>In amperes.</summary>
    public double Amperes { get; }

    double IQuantity<Current>.InBaseUnit => Amperes;

    /// <summary>From a number of ours that is known to be possible.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not: a fault of ours.</exception>
    public static Current FromAmperes(double value) => new(Kind.Insist(value));

    /// <inheritdoc/>
    public static Outcome<Current> Of(double value) =>
        Kind.ObjectionTo(value) is { } objection ? objection : new Current(value);

    /// <summary>Rounded for print alone.</summary>
    public override string ToString() => Kind.Print(Amperes, CultureInfo.InvariantCulture);
}
