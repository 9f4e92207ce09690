using System.Globalization;

namespace Training.Measures.Quantities;

/// <summary>Parts of a hundred.</summary>
public readonly record struct Percent : IQuantity<Percent>
{
    private Percent(double value) => Value = value;

    /// <inheritdoc/>
    public static QuantityKind Kind { get; } = new(
        "percentage", 0, QuantityKind.Enormous, "is never below zero, and none here is this large", "75 %",
        [
            new("%", 1, "\u066A", "\uFF05", "percent", "per cent"),
        ]);

    /// <summary>In hundredths.</summary>
    public double Value { get; }

    double IQuantity<Percent>.InBaseUnit => Value;

    /// <summary>From a number of ours that is known to be possible.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not: a fault of ours.</exception>
    public static Percent FromValue(double value) => new(Kind.Insist(value));

    /// <inheritdoc/>
    public static Outcome<Percent> Of(double value) =>
        Kind.ObjectionTo(value) is { } objection ? objection : new Percent(value);

    /// <summary>Rounded for print alone.</summary>
    public override string ToString() => Kind.Print(Value, CultureInfo.InvariantCulture);
}
