using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Loads;

/// <summary>The current that a load draws.</summary>
public static class LoadCurrent
{
    /// <summary>I = P ÷ U.</summary>
    /// <param name="power">What the load takes.</param>
    /// <param name="voltage">The voltage at the load; more than nothing.</param>
    public static Outcome<Worked<Current>> Of(Power power, Voltage voltage)
    {
        if (voltage.Volts <= 0)
            return new Objection("The voltage at a load is more than 0 V.");
        return Current.Of(power.Watts / voltage.Volts).Then<Worked<Current>>(current =>
            new Worked<Current>(current, new(
            [
                new(
                    "Current of the load",
                    new("I", current.Amperes, "A"),
                    "P ÷ U",
                    [new("P", power.Watts, "W"), new("U", voltage.Volts, "V")],
                    Documents.CircuitLaws),
            ])));
    }
}
