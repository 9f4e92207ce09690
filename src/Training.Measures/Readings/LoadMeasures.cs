using Training.Measures.Loads;
using Training.Measures.Quantities;
using Training.Measures.Workings;
using static Training.Measures.Readings.MeasureParts;

namespace Training.Measures.Readings;

/// <summary>What is worked out before a load is added.</summary>
internal static class LoadMeasures
{
    private static readonly string[] Loads = ["load-1", "load-2", "load-3"];

    public static IReadOnlyList<Measure> All { get; } =
    [
        new("load-current", "Current of a load",
            [Input<Power>("power", "Power of the load"), Input<Voltage>("voltage", "Voltage at the load")], [],
            Answer<Current>(0.1m),
            given => LoadCurrent.Of(given.Of<Power>("power"), given.Of<Voltage>("voltage")).Bare()),

        new("connector-total", "Current on a connector with all its loads on",
            [.. Loads.Select((load, at) => Input<Current>(load, $"Load {at + 1}"))], [],
            Answer<Current>(0.1m),
            given => ConnectorSum
                .Of([.. Loads.Select(load => new Load(load, given.Of<Current>(load)))], Current.FromAmperes(1))
                .Then<Worked<double>>(sum =>
                    new Worked<double>(sum.Value.Total.Amperes, new([sum.Working.Lines[0]])))),

        new("fuse-for-load", "Fuse for a load that stays on",
            [Input<Current>("load", "Current of the load")], [],
            Answer<Current>(0m),
            given => FuseChoice.For(given.Of<Current>("load")).Then<Worked<double>>(Rating)),

        new("largest-fuse-for-cable", "Largest fuse for a cable",
            [
                Input<Current>("cable", "Current that the cable may carry"),
                Input<Voltage>("system", "System's voltage"),
            ],
            [],
            Answer<Current>(0m),
            given => CableFuse.Largest(given.Of<Current>("cable"), given.Of<Voltage>("system"))
                .Then<Worked<double>>(Rating)),

        new("standing-share", "Charge left after standing with loads on",
            [
                Input<Charge>("capacity", "Capacity printed on the battery"),
                Input<Percent>("start", "State of charge at the start"),
                Input<Current>("load", "Current that stays on"),
                Input<Time>("standing", "Time with the engine off"),
            ],
            [],
            Answer<Percent>(1m),
            given => StandingReserve
                .After(
                    given.Of<Charge>("capacity"), given.Of<Percent>("start"), given.Of<Current>("load"),
                    given.Of<Time>("standing"))
                .Then<Worked<double>>(left => new Worked<double>(left.Value.Share.Value, left.Working))),
    ];

    private static Outcome<Worked<double>> Rating(Worked<FuseRating> fuse) =>
        new Worked<double>(fuse.Value.Rating.Amperes, fuse.Working);
}
