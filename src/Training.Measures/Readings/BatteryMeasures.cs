using Training.Measures.Batteries;
using Training.Measures.Quantities;
using Training.Measures.Workings;
using static Training.Measures.Readings.MeasureParts;

namespace Training.Measures.Readings;

/// <summary>What is read and worked out on a battery.</summary>
internal static class BatteryMeasures
{
    private static readonly MeasureChoice Correction = Choice(
        "correction", "Rule of correction to 80 °F", GravityCorrection.All, rule => rule.Id, rule => rule.Title);

    private static readonly string[] Cells = ["cell-1", "cell-2", "cell-3", "cell-4", "cell-5", "cell-6"];

    private static readonly MeasureInput[] Hydrometer =
    [
        Input<SpecificGravity>("gravity", "Hydrometer reading"),
        Input<Temperature>("electrolyte", "Temperature of the electrolyte"),
    ];

    public static IReadOnlyList<Measure> All { get; } =
    [
        new("corrected-gravity", "Gravity corrected to 80 °F", Hydrometer, [Correction],
            Answer<SpecificGravity>(0.001m),
            given => Corrected(given).Then<Worked<double>>(found =>
                new Worked<double>(found.Value.At80F.Value, found.Working))),

        new("charge-from-hydrometer", "State of charge from a hydrometer", Hydrometer, [Correction],
            Answer<Percent>(1m),
            given => Corrected(given).Then(found => ChargeByGravity.Of(found.Value)
                .Then<Worked<Percent>>(charge => charge with { Working = found.Working.Then(charge.Working) })).Bare()),

        new("charge-from-voltage", "State of charge from the resting voltage",
            [Input<Voltage>("voltage", "Resting voltage of one 12 V battery")], [],
            Answer<Percent>(1m),
            given => ChargeByVoltage.Of(given.Of<Voltage>("voltage")).Bare()),

        new("cell-spread", "Spread between the cells",
            [.. Cells.Select((cell, at) => Input<SpecificGravity>(cell, $"Cell {at + 1}"))],
            [],
            Answer<GravityDifference>(0.001m),
            given => CellSpread.Of([.. Cells.Select(given.Of<SpecificGravity>)]).Bare()),

        new("stored-gravity", "Gravity after storage",
            [
                Input<SpecificGravity>("gravity", "Gravity at 80 °F when it was put away"),
                Input<Time>("standing", "Time in store", "d"),
                Input<Temperature>("store", "Temperature of the store"),
            ],
            [],
            Answer<SpecificGravity>(0.001m),
            given => SelfDischarge
                .After(new(given.Of<SpecificGravity>("gravity")), given.Of<Time>("standing"), given.Of<Temperature>("store"))
                .Then<Worked<double>>(left => new Worked<double>(left.Value.At80F.Value, left.Working))),
    ];

    private static Outcome<Worked<CorrectedGravity>> Corrected(Given given) =>
        GravityCorrection.All.First(rule => rule.Id == given.Choices["correction"])
            .Correct(given.Of<SpecificGravity>("gravity"), given.Of<Temperature>("electrolyte"));
}
