using System.Globalization;

namespace Training.Measures.Quantities;

/// <summary>The cross-section of a conductor in square millimetres; always more than nothing.</summary>
public readonly record struct CrossSection : IQuantity<CrossSection>
{
    private readonly double area;

    private CrossSection(double value) => area = value;

    /// <inheritdoc/>
    public static QuantityKind Kind { get; } = new(
        "cross-section", 0.001, 1e6, "lies between 0.001 mm² and 1 m²", "25 mm²",
        [new("mm²", 1, "mm2", "mm^2", "sqmm", "sq mm")]);

    /// <summary>In square millimetres.</summary>
    /// <exception cref="InvalidOperationException">The value was never given: a fault of ours.</exception>
    public double SquareMillimetres => area > 0
        ? area
        : throw new InvalidOperationException("This cross-section was never given a value.");

    double IQuantity<CrossSection>.InBaseUnit => SquareMillimetres;

    /// <summary>From a number of ours that is known to be possible.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not: a fault of ours.</exception>
    public static CrossSection FromSquareMillimetres(double value) => new(Kind.Insist(value));

    /// <inheritdoc/>
    public static Outcome<CrossSection> Of(double value) =>
        Kind.ObjectionTo(value) is { } objection ? objection : new CrossSection(value);

    /// <summary>Rounded for print alone.</summary>
    public override string ToString() => Kind.Print(area, CultureInfo.InvariantCulture);
}
