namespace Training.Records.Results;

/// <summary>Between which two values something lies with a confidence of 95 %.</summary>
/// <param name="Low">The lower end.</param>
/// <param name="High">The upper end.</param>
public readonly record struct Interval(double Low, double High)
{
    // The 97.5 % point of the normal distribution, so that 95 % lie between both ends.
    internal const double Z = 1.959963984540054;

    /// <summary>Whether a value lies in it.</summary>
    /// <param name="value">The value.</param>
    public bool Holds(double value) => Low <= value && value <= High;
}
