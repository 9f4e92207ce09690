using Training.Measures.Quantities;
using Training.Measures.Sources;

namespace Training.Measures.Loads;

/// <summary>
/// The current that a stranded copper conductor may carry by gauge and insulation, 33 CFR 183.425 Table 5. It is the
/// table that the rule for fuses refers to; engine spaces want a further correction that is not held here.
/// </summary>
public static class BoatConductor
{
    private static readonly int[] Ratings = [60, 75, 80, 90, 105, 125, 200];

    private static readonly (string Gauge, int[] Amperes)[] Rows =
    [
        ("18", [10, 10, 15, 20, 20, 25, 25]),
        ("16", [15, 15, 20, 25, 25, 30, 35]),
        ("14", [20, 20, 25, 30, 35, 40, 45]),
        ("12", [25, 25, 35, 40, 45, 50, 55]),
        ("10", [40, 40, 50, 55, 60, 70, 70]),
        ("8", [55, 65, 70, 70, 80, 90, 100]),
        ("6", [80, 95, 100, 100, 120, 125, 135]),
        ("4", [105, 125, 130, 135, 160, 170, 180]),
        ("3", [120, 145, 150, 155, 180, 195, 210]),
        ("2", [140, 170, 175, 180, 210, 225, 240]),
        ("1", [165, 195, 210, 210, 245, 265, 280]),
        ("0", [195, 230, 245, 245, 285, 305, 325]),
        ("00", [225, 265, 285, 285, 330, 355, 370]),
        ("000", [260, 310, 330, 330, 385, 410, 430]),
        ("0000", [300, 360, 385, 385, 445, 475, 510]),
    ];

    /// <summary>The gauges, the thinnest first.</summary>
    public static IReadOnlyList<string> Gauges { get; } = [.. Rows.Select(row => row.Gauge)];

    /// <summary>The temperatures for which insulation is rated.</summary>
    public static IReadOnlyList<Temperature> Insulations { get; } =
        [.. Ratings.Select(rating => Temperature.FromCelsius(rating))];

    /// <summary>Where the rows come from.</summary>
    public static Source Source => Documents.BoatConductors;

    /// <summary>The current that a conductor may carry.</summary>
    /// <param name="gauge">AWG number, <c>18</c> to <c>0000</c>.</param>
    /// <param name="insulation">One of <see cref="Insulations"/>.</param>
    public static Outcome<Current> MayCarry(string gauge, Temperature insulation)
    {
        var row = Array.FindIndex(Rows, candidate => candidate.Gauge == gauge);
        var column = Array.FindIndex(Ratings, rating => rating == insulation.Celsius);
        if (row < 0)
            return new Objection($"The table has the gauges {string.Join(", ", Gauges)}.");
        return column < 0
            ? new Objection("The table has insulation for 60, 75, 80, 90, 105, 125 and 200 °C.")
            : Current.FromAmperes(Rows[row].Amperes[column]);
    }
}
