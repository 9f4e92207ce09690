using System.Globalization;

namespace Training.Measures.Quantities;

/// <summary>How far two readings of specific gravity lie apart, such as the best and the weakest cell.</summary>
public readonly record struct GravityDifference : IQuantity<GravityDifference>
{
    private GravityDifference(double value) => Value = value;

    /// <inheritdoc/>
    public static QuantityKind Kind { get; } = new(
        "difference in specific gravity", 0, 1, "lies between 0 and 1", "0.020",
        [
            new("", 1, "SG"),
        ], 3);

    /// <summary>In units of specific gravity.</summary>
    public double Value { get; }

    double IQuantity<GravityDifference>.InBaseUnit => Value;

    /// <summary>From a number of ours that is known to be possible.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not: a fault of ours.</exception>
    public static GravityDifference FromValue(double value) => new(Kind.Insist(value));

    /// <inheritdoc/>
    public static Outcome<GravityDifference> Of(double value) =>
        Kind.ObjectionTo(value) is { } objection ? objection : new GravityDifference(value);

    /// <summary>Rounded for print alone.</summary>
    public override string ToString() => Kind.Print(Value, CultureInfo.InvariantCulture);
}
