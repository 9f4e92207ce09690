using Training.Measures.Conductors;
using Training.Measures.Quantities;
using static Training.Measures.Readings.MeasureParts;

namespace Training.Measures.Readings;

/// <summary>What is measured and worked out on cables and grounds.</summary>
internal static class ConductorMeasures
{
    private static readonly MeasureChoice[] Rules =
    [
        Choice("basis", "What the resistance at 20 °C is taken from", ResistanceBasis.All, basis => basis.Id,
            basis => basis.Title),
        Choice("temperature-rule", "Rule for warm copper", CopperTemperature.All, rule => rule.Id, rule => rule.Title),
    ];

    private static readonly MeasureInput[] Run =
    [
        Input<Length>("length", "Length that the current passes"),
        Input<CrossSection>("section", "Cross-section"),
        Input<Temperature>("copper", "Temperature of the copper"),
    ];

    public static IReadOnlyList<Measure> All { get; } =
    [
        new("conductor-resistance", "Resistance of a cable or strap", Run, Rules,
            Answer<Resistance>(0.1m, "mΩ"),
            given => ConductorResistance.Of(RunOf(given), Basis(given), Rule(given)).Bare()),

        new("voltage-drop", "Drop along a cable or strap",
            [.. Run, Input<Current>("current", "Current that flows")], Rules,
            Answer<Voltage>(1m, "mV"),
            given => VoltageDrop.Along(RunOf(given), Basis(given), Rule(given), given.Of<Current>("current")).Bare()),

        new("ground-resistance", "Resistance of a ground from its drop",
            [
                Input<Voltage>("drop", "Drop across the ground under load", "mV"),
                Input<Current>("current", "Current through it"),
            ],
            [],
            Answer<Resistance>(0.1m, "mΩ"),
            given => ConductorResistance.Measured(given.Of<Voltage>("drop"), given.Of<Current>("current")).Bare()),

        new("drop-share", "Drop as a part of the system's voltage",
            [Input<Voltage>("drop", "Drop"), Input<Voltage>("system", "System's voltage")], [],
            Answer<Percent>(0.1m),
            given => VoltageDrop.AsPercent(given.Of<Voltage>("drop"), given.Of<Voltage>("system")).Bare()),
    ];

    private static CableRun RunOf(Given given) =>
        new(given.Of<Length>("length"), given.Of<CrossSection>("section"), given.Of<Temperature>("copper"));

    private static ResistanceBasis Basis(Given given) =>
        ResistanceBasis.All.First(basis => basis.Id == given.Choices["basis"]);

    private static CopperTemperature Rule(Given given) =>
        CopperTemperature.All.First(rule => rule.Id == given.Choices["temperature-rule"]);
}
