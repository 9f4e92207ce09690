using Training.Measures.Readings;

namespace Training.Measures.Tests.Readings;

/// <summary>A question for every measure and every choice of rules.</summary>
internal static class Questions
{
    private static readonly Dictionary<string, InputRange> Ranges = new[]
    {
        InputRange.Steps("gravity", 1.150m, 1.280m, 0.005m),
        InputRange.Steps("electrolyte", 40, 110, 5, "°F"),
        InputRange.Steps("voltage", 11.60m, 12.80m, 0.01m),
        InputRange.Steps("cell-1", 1.240m, 1.270m, 0.005m),
        InputRange.Steps("cell-2", 1.240m, 1.270m, 0.005m),
        InputRange.Steps("cell-3", 1.240m, 1.270m, 0.005m),
        InputRange.Steps("cell-4", 1.240m, 1.270m, 0.005m),
        InputRange.Steps("cell-5", 1.240m, 1.270m, 0.005m),
        InputRange.Steps("cell-6", 1.200m, 1.270m, 0.005m),
        InputRange.Steps("standing", 1, 40, 1),
        InputRange.Steps("store", 0, 25, 1),
        InputRange.Steps("length", 0.2m, 12, 0.1m),
        InputRange.OneOf("section", [1.5m, 2.5m, 4, 6, 10, 16, 25, 35, 50, 70, 95]),
        InputRange.Steps("copper", 20, 90, 5),
        InputRange.Steps("current", 5, 100, 1),
        InputRange.Steps("drop", 10, 500, 1, "mV"),
        InputRange.OneOf("system", [12, 24]),
        InputRange.Steps("power", 5, 500, 1),
        InputRange.Steps("load-1", 0.1m, 8, 0.1m),
        InputRange.Steps("load-2", 0.1m, 8, 0.1m),
        InputRange.Steps("load-3", 0.1m, 8, 0.1m),
        InputRange.Steps("load", 0.1m, 20, 0.1m),
        InputRange.Steps("cable", 2, 60, 1),
        InputRange.OneOf("capacity", [100, 140, 180, 225]),
        InputRange.Steps("start", 50, 100, 5),
    }.ToDictionary(range => range.Name);

    public static IReadOnlyList<ReadingQuestion> All { get; } =
        [.. Measure.All.SelectMany(measure => Choices(measure.Choices).Select(choices => Of(measure, choices).Value))];

    public static Outcome<ReadingQuestion> Of(
        Measure measure, IReadOnlyDictionary<string, string> choices, DecisionTable? table = null) =>
        ReadingQuestion.Of(measure.Id, choices, [.. measure.Inputs.Select(input => Ranges[input.Name])], table);

    private static IEnumerable<Dictionary<string, string>> Choices(IEnumerable<MeasureChoice> choices) =>
        choices.Aggregate(
            new[] { new Dictionary<string, string>() }.AsEnumerable(),
            (sofar, choice) => sofar.SelectMany(taken => choice.Options.Keys.Select(option =>
                new Dictionary<string, string>(taken) { [choice.Name] = option })));
}
