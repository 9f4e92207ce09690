using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Conductors;

/// <summary>The resistance of a conductor: reckoned, or measured through its drop.</summary>
public static class ConductorResistance
{
    /// <summary>The resistance of a run at the temperature of its copper.</summary>
    /// <param name="run">The conductor.</param>
    /// <param name="basis">What the resistance at 20 °C is taken from.</param>
    /// <param name="temperature">The rule that carries it over.</param>
    public static Outcome<Worked<Resistance>> Of(CableRun run, ResistanceBasis basis, CopperTemperature temperature)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(basis);
        ArgumentNullException.ThrowIfNull(temperature);
        return basis.At20(run).Then(cold => temperature.Carry(cold.Value, run.Copper)
            .Then<Worked<Resistance>>(warm => warm with { Working = cold.Working.Then(warm.Working) }));
    }

    /// <summary>The resistance of a joint or strap from its millivolt drop under load.</summary>
    /// <param name="drop">Measured across it while the current flows; its sign is of no account.</param>
    /// <param name="current">The current through it; not nothing.</param>
    public static Outcome<Worked<Resistance>> Measured(Voltage drop, Current current)
    {
        var (volts, amperes) = (Math.Abs(drop.Volts), Math.Abs(current.Amperes));
        if (amperes == 0)
            return new Objection("Without a current there is no drop to measure: switch the load on.");
        return Resistance.Of(volts / amperes).Then<Worked<Resistance>>(found => new Worked<Resistance>(found, new(
        [
            new(
                "Resistance from the drop under load",
                new("R", found.Milliohms, "mΩ"),
                "U ÷ I",
                [new("U", volts * 1000, "mV"), new("I", amperes, "A")],
                Documents.EquipmentBond with { Note = "millivolt-drop test" }),
        ])));
    }
}
