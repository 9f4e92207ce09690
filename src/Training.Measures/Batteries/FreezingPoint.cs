using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Batteries;

/// <summary>At what temperature the acid of a battery freezes, TM 5-1185 Table III. An empty battery bursts first.</summary>
public static class FreezingPoint
{
    private static readonly (double At, double Value)[] Rows =
        [(1.100, 19), (1.150, 5), (1.200, -16), (1.250, -62), (1.280, -90)];

    /// <summary>The rows as they are printed.</summary>
    public static IReadOnlyList<(SpecificGravity Gravity, Temperature Freezes)> Table { get; } =
        [.. Rows.Select(row => (SpecificGravity.FromValue(row.At), Temperature.FromFahrenheit(row.Value)))];

    /// <summary>The freezing point; between two rows by a straight line.</summary>
    /// <param name="gravity">At 80 °F, from 1.100 to 1.280; the table holds no further and other values are refused.</param>
    public static Outcome<Worked<Temperature>> Of(CorrectedGravity gravity)
    {
        var value = gravity.At80F.Value;
        if (value < Rows[0].At)
            return new Objection("Below 1.100 the table ends: such a battery freezes before -7 °C, charge it at once.");
        if (value > Rows[^1].At)
            return new Objection("Above 1.280 the table ends: such a battery does not freeze above -67 °C.");
        var fahrenheit = TableLine.Read(Rows, value);
        var printed = Rows.Any(row => row.At == value);
        var line = new WorkingLine(
            printed ? "Row of the table" : "Between two rows of the table, by a straight line",
            new("t", fahrenheit, "°F", 0),
            "",
            [new("SG₈₀", value, "", 3)],
            printed ? Documents.FreezingPoints : Documents.BetweenRows with { Where = "TM 5-1185 Table III" });
        return new Worked<Temperature>(Temperature.FromFahrenheit(fahrenheit), new([line]));
    }
}
