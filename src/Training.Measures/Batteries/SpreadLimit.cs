using Training.Measures.Quantities;
using Training.Measures.Sources;

namespace Training.Measures.Batteries;

/// <summary>
/// A published limit for the spread between cells. The three limits in print differ, and so does what they conclude;
/// a question names the one that it is judged by.
/// </summary>
/// <param name="Id">The name by which a question calls it.</param>
/// <param name="Greatest">A spread greater than this is over the limit.</param>
/// <param name="Verdict">What is done with a battery over the limit.</param>
/// <param name="ChargedOnly">Whether the limit is printed for a fully charged battery alone.</param>
/// <param name="Says">What the limit concludes, in our words.</param>
/// <param name="Source">Where it is printed.</param>
public sealed record SpreadLimit(
    string Id, GravityDifference Greatest, BatteryVerdict Verdict, bool ChargedOnly, Phrase Says, Source Source)
{
    /// <summary>More than 0.020: there may be a dead cell.</summary>
    public static SpreadLimit Twenty { get; } = new(
        "over-0.020", GravityDifference.FromValue(0.020), BatteryVerdict.Stop, false,
        "one cell may be dead: have the battery tested", Documents.SpreadOfTwenty);

    /// <summary>More than 0.025 on a charged battery: not serviceable.</summary>
    public static SpreadLimit TwentyFive { get; } = new(
        "over-0.025", GravityDifference.FromValue(0.025), BatteryVerdict.Reject, true,
        "a charged battery with such cells is not serviceable", Documents.SpreadOfTwentyFive);

    /// <summary>More than 0.050: replace.</summary>
    public static SpreadLimit Fifty { get; } = new(
        "over-0.050", GravityDifference.FromValue(0.050), BatteryVerdict.Reject, false,
        "replace the battery", Documents.SpreadOfFifty);

    /// <summary>The three limits.</summary>
    public static IReadOnlyList<SpreadLimit> All { get; } = [Twenty, TwentyFive, Fifty];

    /// <summary>Whether a spread is over the limit.</summary>
    public bool IsOver(GravityDifference spread) => spread.Value > Greatest.Value;
}
