using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Batteries;

/// <summary>
/// State of charge from the resting voltage of one 12 V battery, TM 5-3805-262-20 para 5-9. The table does not agree
/// with the one for gravity (six cells at gravity + 0.84 V lie 0.12 V to 0.18 V above it), so one question uses one of
/// them.
/// </summary>
public static class ChargeByVoltage
{
    // Six cells at the 2.6 V of a finishing charge.
    private const double HighestOnCharge = 15.6;

    private static readonly (double At, double Value)[] Rows =
        [(11.7, 0), (12.0, 25), (12.2, 50), (12.4, 75), (12.6, 100)];

    /// <summary>The rows as they are printed; the first and the last hold beyond.</summary>
    public static IReadOnlyList<(Voltage Resting, Percent Charge)> Table { get; } =
        [.. Rows.Select(row => (Voltage.FromVolts(row.At), Percent.FromValue(row.Value)))];

    /// <summary>The lamps are on for so long first, to take off the charge that sits on the surface.</summary>
    public static Time LampsOn { get; } = Time.FromMinutes(0.25);

    /// <summary>Then everything is off for so long before the voltage is read.</summary>
    public static Time RestBeforeReading { get; } = Time.FromMinutes(3);

    /// <summary>From here a battery is accepted; below, it is load-tested.</summary>
    public static Voltage Accepted { get; } = Voltage.FromVolts(12.4);

    /// <summary>The charge that a resting voltage stands for.</summary>
    /// <param name="rest">The voltage of one 12 V battery after the lamps and the rest.</param>
    public static Outcome<Worked<Percent>> Of(Voltage rest)
    {
        if (rest.Volts < 0)
            return new Objection("A voltage below zero means that the clips or the battery stand the wrong way round.");
        if (rest.Volts > HighestOnCharge)
            return new Objection(
                "No single 12 V battery shows more than 15.6 V: measure one battery, with the charger off.");
        var charge = TableLine.Read(Rows, rest.Volts);
        return new Worked<Percent>(Percent.FromValue(charge), new([Line(rest, charge)]));
    }

    /// <summary>The resting voltage that a charge stands for.</summary>
    /// <param name="charge">From 0 % to 100 %.</param>
    public static Outcome<Voltage> VoltageAt(Percent charge) => charge.Value > 100
        ? new Objection("A battery is never charged to more than 100 %.")
        : Voltage.FromVolts(TableLine.Read(TableLine.Turned(Rows), charge.Value));

    private static WorkingLine Line(Voltage rest, double charge)
    {
        var result = new Term("SoC", charge, "%", 1);
        var above = Array.FindIndex(Rows, row => row.At > rest.Volts);
        if (above <= 0 || Rows[above - 1].At == rest.Volts)
            return new("Row of the table", result, "", [new("U", rest.Volts, "V", 2)], Documents.ChargeByVoltage);
        var (low, high) = (Rows[above - 1], Rows[above]);
        return new(
            "Between two rows of the table, by a straight line",
            result,
            "P₁ + ( P₂ − P₁ ) × ( U − U₁ ) ÷ ( U₂ − U₁ )",
            [
                new("P₁", low.Value, "%", 0), new("P₂", high.Value, "%", 0), new("U", rest.Volts, "V", 2),
                new("U₁", low.At, "V", 1), new("U₂", high.At, "V", 1),
            ],
            Documents.ChargeByVoltage with { Note = "rows printed; the straight line between them is practice" });
    }
}
