using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Conductors;

/// <summary>What a conductor takes from the voltage while a current flows.</summary>
public static class VoltageDrop
{
    /// <summary>The drop over a resistance.</summary>
    public static Outcome<Worked<Voltage>> Of(Current current, Resistance resistance)
    {
        var drop = Math.Abs(current.Amperes) * resistance.Ohms;
        return Voltage.Of(drop).Then<Worked<Voltage>>(found => new Worked<Voltage>(found, new(
        [
            new(
                "Drop in the conductor",
                new("U", found.Volts * 1000, "mV"),
                "I × R",
                [new("I", Math.Abs(current.Amperes), "A"), new("R", resistance.Milliohms, "mΩ")],
                Documents.CircuitLaws),
        ])));
    }

    /// <summary>The drop along a cable or ground strap.</summary>
    /// <param name="run">The conductor.</param>
    /// <param name="basis">What its resistance at 20 °C is taken from.</param>
    /// <param name="temperature">The rule that carries it to the copper's temperature.</param>
    /// <param name="current">The current.</param>
    public static Outcome<Worked<Voltage>> Along(
        CableRun run, ResistanceBasis basis, CopperTemperature temperature, Current current) =>
        ConductorResistance.Of(run, basis, temperature).Then(resistance => Of(current, resistance.Value)
            .Then<Worked<Voltage>>(drop => drop with { Working = resistance.Working.Then(drop.Working) }));

    /// <summary>A drop as a part of the system's voltage.</summary>
    /// <param name="drop">The drop.</param>
    /// <param name="system">The voltage at the source; more than nothing.</param>
    public static Outcome<Worked<Percent>> AsPercent(Voltage drop, Voltage system)
    {
        if (system.Volts <= 0)
            return new Objection("The system's voltage is more than 0 V.");
        return Percent.Of(100 * Math.Abs(drop.Volts) / system.Volts).Then<Worked<Percent>>(part =>
            new Worked<Percent>(part, new(
            [
                new(
                    "The drop as a part of the system's voltage",
                    new("p", part.Value, "%", 1),
                    "100 × U ÷ Us",
                    [new("U", Math.Abs(drop.Volts), "V"), new("Us", system.Volts, "V")],
                    Documents.Arithmetic),
            ])));
    }
}
