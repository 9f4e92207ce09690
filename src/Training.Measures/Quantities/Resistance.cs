using System.Globalization;

namespace Training.Measures.Quantities;

/// <summary>An electric resistance.</summary>
public readonly record struct Resistance : IQuantity<Resistance>
{
    private Resistance(double value) => Ohms = value;

    /// <inheritdoc/>
    public static QuantityKind Kind { get; } = new(
        "resistance", 0, QuantityKind.Enormous, "is never below zero, and no conductor has one this large", "2.5 mΩ",
        [
            new("Ω", 1, "\u2126", "ohm", "ohms"),
            new("mΩ", 0.001, "m\u2126", "mohm", "mohms", "milliohm", "milliohms"),
            new("kΩ", 1000, "k\u2126", "kohm", "kiloohm"),
        ]);

    /// <summary>In ohms.</summary>
    public double Ohms { get; }

    double IQuantity<Resistance>.InBaseUnit => Ohms;

    /// <summary>From a number of ours that is known to be possible.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not: a fault of ours.</exception>
    public static Resistance FromOhms(double value) => new(Kind.Insist(value));

    /// <inheritdoc/>
    public static Outcome<Resistance> Of(double value) =>
        Kind.ObjectionTo(value) is { } objection ? objection : new Resistance(value);

    /// <summary>In thousandths of an ohm, the size of a ground strap.</summary>
    public double Milliohms => Ohms * 1000;

    /// <summary>Rounded for print alone.</summary>
    public override string ToString() => Kind.Print(Ohms, CultureInfo.InvariantCulture);
}
