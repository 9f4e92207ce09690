namespace Training.Records.Results;

/// <summary>How many of how many.</summary>
public readonly record struct Share
{
    /// <summary>A share.</summary>
    /// <param name="part">How many; 0 to <paramref name="whole"/>.</param>
    /// <param name="whole">Out of how many.</param>
    /// <exception cref="ArgumentOutOfRangeException">The part is negative or greater than the whole.</exception>
    public Share(long part, long whole)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(part);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(part, whole);
        Part = part;
        Whole = whole;
    }

    /// <summary>How many.</summary>
    public long Part { get; }

    /// <summary>Out of how many.</summary>
    public long Whole { get; }

    /// <summary>The share as a number from 0 to 1; null of none at all.</summary>
    public double? Value => Whole == 0 ? null : (double)Part / Whole;

    /// <summary>
    /// The interval of Wilson (1927), the score interval: it stays between 0 and 1 and holds for small numbers, where the
    /// usual one of mean and standard error does not. Of none at all: 0 to 1.
    /// </summary>
    public Interval Interval()
    {
        if (Value is not { } p) return new(0, 1);
        const double z2 = Results.Interval.Z * Results.Interval.Z;
        var centre = p + z2 / (2 * Whole);
        var reach = Results.Interval.Z * Math.Sqrt(p * (1 - p) / Whole + z2 / (4.0 * Whole * Whole));
        var scale = 1 + z2 / Whole;
        // At the very ends the two terms are equal; only rounding keeps them apart.
        return new(Part == 0 ? 0 : (centre - reach) / scale, Part == Whole ? 1 : (centre + reach) / scale);
    }

    /// <summary>
    /// The interval of the difference between this share and another one: the hybrid score interval of Newcombe,
    /// Statistics in Medicine 17 (1998) 873–890, method 10. Null where one of them is of none.
    /// </summary>
    /// <param name="other">The share that is taken away.</param>
    public Interval? Less(Share other)
    {
        if (Value is not { } p || other.Value is not { } q) return null;
        var (mine, theirs) = (Interval(), other.Interval());
        return new(
            p - q - Math.Sqrt(Square(p - mine.Low) + Square(theirs.High - q)),
            p - q + Math.Sqrt(Square(mine.High - p) + Square(q - theirs.Low)));
    }

    private static double Square(double value) => value * value;
}
