using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Conductors;

/// <summary>
/// The heat that a current makes in a resistance. How warm a cable gets from it depends on its insulation and its
/// bundle; no published rule for vehicles was found, so no temperature is reckoned: use a printed current rating.
/// </summary>
public static class ConductorHeat
{
    /// <summary>The power that turns to heat, I² × R.</summary>
    public static Outcome<Worked<Power>> Of(Current current, Resistance resistance) =>
        Power.Of(current.Amperes * current.Amperes * resistance.Ohms).Then<Worked<Power>>(heat =>
            new Worked<Power>(heat, new(
            [
                new(
                    "Heat in the conductor",
                    new("P", heat.Watts, "W"),
                    "I × I × R",
                    [new("I", current.Amperes, "A"), new("R", resistance.Ohms, "Ω")],
                    Documents.CircuitLaws),
            ])));
}
