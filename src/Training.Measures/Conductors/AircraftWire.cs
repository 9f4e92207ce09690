using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Conductors;

/// <summary>
/// Tin-plated copper wire by gauge number, AC 43.13-1B table 11-9. The circular's worked examples are sums on it; one
/// of the eight is misprinted (table 11-8: .366 V for 19.5 ft of No. 10 at 20 A, which is 0.4914 V).
/// </summary>
/// <param name="Gauge">AWG number; <c>0</c> to <c>0000</c> are thicker than 1.</param>
/// <param name="OhmsPerThousandFeet">The largest resistance at 20 °C.</param>
/// <param name="InBundle">The lasting current in a bundle with the conductor at 105 °C.</param>
public sealed record AircraftWire(string Gauge, double OhmsPerThousandFeet, Current InBundle)
{
    /// <summary>The rows, the thinnest wire first.</summary>
    public static IReadOnlyList<AircraftWire> Table { get; } =
    [
        Row("24", 28.40, 2.5), Row("22", 16.20, 3), Row("20", 9.88, 4), Row("18", 6.23, 6), Row("16", 4.81, 7),
        Row("14", 3.06, 10), Row("12", 2.02, 13), Row("10", 1.26, 17), Row("8", 0.70, 38), Row("6", 0.44, 50),
        Row("4", 0.28, 68), Row("2", 0.18, 95), Row("1", 0.15, 113), Row("0", 0.12, 128), Row("00", 0.09, 147),
        Row("000", 0.07, 172), Row("0000", 0.06, 204),
    ];

    /// <summary>The row of a gauge.</summary>
    public static Outcome<AircraftWire> Of(string gauge) =>
        Table.FirstOrDefault(row => row.Gauge == gauge) is { } found
            ? found
            : new Objection("The table has wires of the even gauges from 24 to 2, and 1, 0, 00, 000 and 0000.");

    /// <summary>The drop along this wire at 20 °C: resistance of a foot × feet × current.</summary>
    public Outcome<Worked<Voltage>> Drop(Length length, Current current) =>
        Voltage.Of(OhmsPerThousandFeet / 1000 * length.Feet * Math.Abs(current.Amperes))
            .Then<Worked<Voltage>>(drop => new Worked<Voltage>(drop, new(
            [
                new(
                    $"Drop along wire No. {Gauge}",
                    new("U", drop.Volts, "V"),
                    "r × l × I",
                    [
                        new("r", OhmsPerThousandFeet / 1000, "Ω/ft", 5), new("l", length.Feet, "ft"),
                        new("I", Math.Abs(current.Amperes), "A"),
                    ],
                    Documents.AircraftDrop),
            ])));

    /// <summary>
    /// The thinnest wire whose drop at 20 °C is allowed. Whether it also bears the current is another question: see
    /// <see cref="InBundle"/>.
    /// </summary>
    public static Outcome<AircraftWire> Thinnest(Length length, Current current, AllowedDrop allowed)
    {
        ArgumentNullException.ThrowIfNull(allowed);
        foreach (var row in Table)
        {
            var drop = row.Drop(length, current);
            if (drop.IsOk && allowed.Allows(drop.Value.Value))
                return row;
        }
        return new Objection("Even the thickest wire of the table drops more than is allowed: shorten the run.");
    }

    /// <summary>
    /// How long a wire may be when it is warm, from the length allowed at 20 °C: 254.5 × L₁ ÷ (234.5 + t).
    /// </summary>
    /// <param name="at20">The length allowed at 20 °C.</param>
    /// <param name="conductor">The conductor's temperature, from -60 °C to 200 °C.</param>
    public static Outcome<Worked<Length>> LongestWhenWarm(Length at20, Temperature conductor)
    {
        if (conductor.Celsius is < -60 or > 200)
            return new Objection("The copper of a vehicle's cable lies between -60 °C and 200 °C.");
        return Length.Of(254.5 * at20.Metres / (234.5 + conductor.Celsius)).Then<Worked<Length>>(warm =>
            new Worked<Length>(warm, new(
            [
                new(
                    "Longest run when warm",
                    new("L₂", warm.Metres, "m"),
                    "254.5 × L₁ ÷ ( 234.5 + t )",
                    [new("L₁", at20.Metres, "m"), new("t", conductor.Celsius, "°C")],
                    Documents.AircraftTemperature),
            ])));
    }

    private static AircraftWire Row(string gauge, double ohms, double amperes) =>
        new(gauge, ohms, Current.FromAmperes(amperes));
}
