using System.Globalization;

namespace Training.Measures.Quantities;

/// <summary>An electric voltage. Negative where the instrument's clips stand the other way round.</summary>
public readonly record struct Voltage : IQuantity<Voltage>
{
    private Voltage(double value) => Volts = value;

    /// <inheritdoc/>
    public static QuantityKind Kind { get; } = new(
        "voltage", -QuantityKind.Enormous, QuantityKind.Enormous, "this large does not occur on a vehicle", "12.4 V",
        [
            new("V", 1, "volt", "volts"),
            new("mV", 0.001, "millivolt", "millivolts"),
            new("kV", 1000),
        ]);

    /// <summary>In volts.</summary>
    public double Volts { get; }

    double IQuantity<Voltage>.InBaseUnit => Volts;

    /// <summary>From a number of ours that is known to be possible.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not: a fault of ours.</exception>
    public static Voltage FromVolts(double value) => new(Kind.Insist(value));

    /// <inheritdoc/>
    public static Outcome<Voltage> Of(double value) =>
        Kind.ObjectionTo(value) is { } objection ? objection : new Voltage(value);

    /// <summary>Rounded for print alone.</summary>
    public override string ToString() => Kind.Print(Volts, CultureInfo.InvariantCulture);
}
