using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Batteries;

/// <summary>
/// What is left of a full battery's cranking power in the cold, TM 5-1185: all of it at 80 °F, 65 % at 30 °F, 40 % at
/// 0 °F (TM 9-8000 prints the last one too).
/// </summary>
public static class CrankingPower
{
    private static readonly (double At, double Value)[] Rows = [(0, 40), (30, 65), (80, 100)];

    /// <summary>The rows as they are printed.</summary>
    public static IReadOnlyList<(Temperature At, Percent Power)> Table { get; } =
        [.. Rows.Select(row => (Temperature.FromFahrenheit(row.At), Percent.FromValue(row.Value)))];

    /// <summary>The cranking power at a temperature; between two rows by a straight line.</summary>
    /// <param name="battery">From 0 °F to 80 °F (-17.8 °C to 26.7 °C); others are refused.</param>
    public static Outcome<Worked<Percent>> At(Temperature battery)
    {
        var fahrenheit = Math.Round(battery.Fahrenheit, 9);
        if (fahrenheit is < 0 or > 80)
            return new Objection("The table of cranking power runs from -17.8 °C to 26.7 °C (0 °F to 80 °F).");
        var power = TableLine.Read(Rows, fahrenheit);
        var printed = Rows.Any(row => row.At == fahrenheit);
        var line = new WorkingLine(
            printed ? "Row of the table" : "Between two rows of the table, by a straight line",
            new("P", power, "%", 0),
            "",
            [new("t", fahrenheit, "°F")],
            printed ? Documents.ColdCranking : Documents.BetweenRows with { Where = "TM 5-1185, cranking power" });
        return new Worked<Percent>(Percent.FromValue(power), new([line]));
    }
}
