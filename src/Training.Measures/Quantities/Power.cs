using System.Globalization;

namespace Training.Measures.Quantities;

/// <summary>What a load takes.</summary>
public readonly record struct Power : IQuantity<Power>
{
    private Power(double value) => Watts = value;

    /// <inheritdoc/>
    public static QuantityKind Kind { get; } = new(
        "power", 0, QuantityKind.Enormous, "is never below zero, and no load takes this much", "21 W",
        [
            new("W", 1, "watt", "watts"),
            new("kW", 1000, "kilowatt", "kilowatts"),
        ]);

    /// <summary>In watts.</summary>
    public double Watts { get; }

    double IQuantity<Power>.InBaseUnit => Watts;

    /// <summary>From a number of ours that is known to be possible.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not: a fault of ours.</exception>
    public static Power FromWatts(double value) => new(Kind.Insist(value));

    /// <inheritdoc/>
    public static Outcome<Power> Of(double value) =>
        Kind.ObjectionTo(value) is { } objection ? objection : new Power(value);

    /// <summary>Rounded for print alone.</summary>
    public override string ToString() => Kind.Print(Watts, CultureInfo.InvariantCulture);
}
