namespace Training.Measures.Quantities;

/// <summary>A unit in which people write a quantity down.</summary>
/// <param name="Symbol">The symbol in print.</param>
/// <param name="Factor">Base units in one of these.</param>
/// <param name="Zero">Where this unit's zero lies, in base units; other than nought for degrees Fahrenheit alone.</param>
/// <param name="Spellings">Other ways in which it is typed.</param>
public sealed record Unit(string Symbol, double Factor, double Zero, IReadOnlyList<string> Spellings)
{
    /// <summary>A unit whose zero is the base unit's zero.</summary>
    public Unit(string symbol, double factor, params string[] spellings)
        : this(symbol, factor, 0, spellings)
    {
    }

    /// <summary>The number in base units.</summary>
    public double ToBase(double number) => number * Factor + Zero;

    /// <summary>The number of these units.</summary>
    public double FromBase(double number) => (number - Zero) / Factor;
}
