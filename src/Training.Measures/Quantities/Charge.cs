using System.Globalization;

namespace Training.Measures.Quantities;

/// <summary>What a battery holds.</summary>
public readonly record struct Charge : IQuantity<Charge>
{
    private Charge(double value) => AmpereHours = value;

    /// <inheritdoc/>
    public static QuantityKind Kind { get; } = new(
        "charge", 0, QuantityKind.Enormous, "is never below zero, and no battery holds this much", "180 Ah",
        [
            new("Ah", 1, "A h", "A·h", "amp-hour", "amp-hours", "ampere-hours"),
            new("mAh", 0.001, "mA h"),
        ]);

    /// <summary>In ampere-hours.</summary>
    public double AmpereHours { get; }

    double IQuantity<Charge>.InBaseUnit => AmpereHours;

    /// <summary>From a number of ours that is known to be possible.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not: a fault of ours.</exception>
    public static Charge FromAmpereHours(double value) => new(Kind.Insist(value));

    /// <inheritdoc/>
    public static Outcome<Charge> Of(double value) =>
        Kind.ObjectionTo(value) is { } objection ? objection : new Charge(value);

    /// <summary>Rounded for print alone.</summary>
    public override string ToString() => Kind.Print(AmpereHours, CultureInfo.InvariantCulture);
}
