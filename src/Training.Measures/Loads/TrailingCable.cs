using Training.Measures.Quantities;
using Training.Measures.Sources;

namespace Training.Measures.Loads;

/// <summary>
/// Single-conductor cables and the largest dual-element fuse for each, 30 CFR 75.601-3 (mines): a second published
/// pairing of cable and fuse, to hold against the first.
/// </summary>
/// <param name="Gauge">AWG number.</param>
/// <param name="MayCarry">The current that the cable may carry.</param>
/// <param name="LargestFuse">The largest fuse.</param>
public sealed record TrailingCable(string Gauge, Current MayCarry, Current LargestFuse)
{
    /// <summary>The rows, the thinnest cable first.</summary>
    public static IReadOnlyList<TrailingCable> Table { get; } =
    [
        Row("8", 60, 60), Row("6", 85, 90), Row("4", 110, 110), Row("3", 130, 150), Row("2", 150, 150),
        Row("1", 170, 175), Row("0", 200, 200), Row("00", 235, 250), Row("000", 275, 300), Row("0000", 315, 350),
    ];

    /// <summary>Where the rows come from.</summary>
    public static Source Source => Documents.TrailingCables;

    /// <summary>The row of a gauge.</summary>
    public static Outcome<TrailingCable> Of(string gauge) =>
        Table.FirstOrDefault(row => row.Gauge == gauge) is { } found
            ? found
            : new Objection($"The table has the gauges {string.Join(", ", Table.Select(row => row.Gauge))}.");

    private static TrailingCable Row(string gauge, double carries, double fuse) =>
        new(gauge, Current.FromAmperes(carries), Current.FromAmperes(fuse));
}
