using Training.Measures.Workings;

namespace Training.Measures.Quantities;

/// <summary>What is measured, in which units it is written and which numbers it can have at all.</summary>
public sealed class QuantityKind
{
    /// <summary>More of anything than a shop, a vehicle or a sum about one can hold.</summary>
    public const double Enormous = 1e9;

    internal QuantityKind(
        Phrase name, double lowest, double highest, Phrase bounds, string example, IReadOnlyList<Unit> units,
        int? decimals = null)
    {
        Name = name;
        Lowest = lowest;
        Highest = highest;
        Bounds = bounds;
        Example = example;
        Units = units;
        Decimals = decimals;
    }

    /// <summary>The name in a sentence, without an article: <c>voltage</c>.</summary>
    public Phrase Name { get; }

    /// <summary>The units, the base unit first.</summary>
    public IReadOnlyList<Unit> Units { get; }

    /// <summary>The unit in which numbers are kept.</summary>
    public Unit BaseUnit => Units[0];

    /// <summary>The lowest number there can be, in base units.</summary>
    public double Lowest { get; }

    /// <summary>The highest number that is taken, in base units.</summary>
    public double Highest { get; }

    /// <summary>A typed answer as it should look: <c>12.4 V</c>.</summary>
    public string Example { get; }

    /// <summary>Decimal places in print; null prints four significant digits.</summary>
    public int? Decimals { get; }

    private Phrase Bounds { get; }

    /// <summary>The objection to a number that this kind cannot have; null where it can.</summary>
    public Objection? ObjectionTo(double value)
    {
        if (!double.IsFinite(value))
            return new($"That is not a number that a {Name} can have.");
        return value < Lowest || value > Highest ? new($"A {Name} {Bounds}.") : null;
    }

    /// <summary>The number and the base unit, rounded for print alone.</summary>
    /// <param name="value">The number in base units.</param>
    /// <param name="format">The reader's number format.</param>
    public string Print(double value, IFormatProvider format) =>
        new Term("", value, BaseUnit.Symbol, Decimals).Print(format);

    internal double Insist(double value) => ObjectionTo(value) is { } objection
        ? throw new ArgumentOutOfRangeException(nameof(value), value, objection.Sentence)
        : value;

    /// <inheritdoc/>
    public override string ToString() => Name.ToString();
}
