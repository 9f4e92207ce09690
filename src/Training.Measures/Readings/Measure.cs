using Training.Measures.Quantities;
using Training.Measures.Workings;

namespace Training.Measures.Readings;

/// <summary>Something that a technician reads or works out, as a question can ask it.</summary>
public sealed class Measure
{
    private readonly Func<Given, Outcome<Worked<double>>> work;

    internal Measure(
        string id, Phrase title, IReadOnlyList<MeasureInput> inputs, IReadOnlyList<MeasureChoice> choices,
        MeasureAnswer answer, Func<Given, Outcome<Worked<double>>> work)
    {
        Id = id;
        Title = title;
        Inputs = inputs;
        Choices = choices;
        Answer = answer;
        this.work = work;
    }

    /// <summary>Every measure that a question can ask for.</summary>
    public static IReadOnlyList<Measure> All { get; } =
        [.. BatteryMeasures.All, .. ConductorMeasures.All, .. LoadMeasures.All];

    /// <summary>The same, by what they are about.</summary>
    public static IReadOnlyList<MeasureGroup> Groups { get; } =
    [
        new("Batteries", BatteryMeasures.All), new("Cables and grounds", ConductorMeasures.All),
        new("Loads and fuses", LoadMeasures.All),
    ];

    /// <summary>The name by which a question calls it, such as <c>charge-from-voltage</c>.</summary>
    public string Id { get; }

    /// <summary>What is found, for the technician.</summary>
    public Phrase Title { get; }

    /// <summary>The numbers that it needs, all of them.</summary>
    public IReadOnlyList<MeasureInput> Inputs { get; }

    /// <summary>The rules that a question settles, all of them.</summary>
    public IReadOnlyList<MeasureChoice> Choices { get; }

    /// <summary>What the answer is.</summary>
    public MeasureAnswer Answer { get; }

    /// <summary>The measure of a name.</summary>
    public static Outcome<Measure> Find(string id) =>
        All.FirstOrDefault(measure => measure.Id == id) is { } found
            ? found
            : new Objection($"There is no measure “{id}”; there are {string.Join(", ", All.Select(each => each.Id))}.");

    /// <summary>Works it out.</summary>
    /// <param name="inputs">Every input by name, in its kind's base unit.</param>
    /// <param name="choices">Every choice by name.</param>
    /// <returns>The result in the answer's base unit, with its sum.</returns>
    public Outcome<Worked<double>> Work(
        IReadOnlyDictionary<string, double> inputs, IReadOnlyDictionary<string, string> choices)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentNullException.ThrowIfNull(choices);
        foreach (var input in Inputs)
        {
            if (!inputs.TryGetValue(input.Name, out var value))
                return new Objection($"The measure “{Id}” needs “{input.Name}”.");
            if (input.Kind.ObjectionTo(value) is { } objection)
                return objection;
        }
        foreach (var choice in Choices)
        {
            if (!choices.TryGetValue(choice.Name, out var chosen) || !choice.Options.ContainsKey(chosen))
                return new Objection(
                    $"The measure “{Id}” needs “{choice.Name}”: {string.Join(", ", choice.Options.Keys)}.");
        }
        return work(new(inputs, choices));
    }

    /// <inheritdoc/>
    public override string ToString() => Id;
}

/// <summary>Measures about one thing.</summary>
/// <param name="Title">What they are about, for the technician.</param>
/// <param name="Measures">The measures.</param>
public sealed record MeasureGroup(Phrase Title, IReadOnlyList<Measure> Measures);

/// <summary>What a measure's answer is and how finely it is read.</summary>
/// <param name="Kind">What it measures.</param>
/// <param name="Unit">The unit that stands beside the field.</param>
/// <param name="Division">
/// One division of the instrument on which the answer would be read, in <paramref name="Unit"/>; nought where the
/// answer is picked from a series and nothing but the right one will do.
/// </param>
public sealed record MeasureAnswer(QuantityKind Kind, string Unit, decimal Division);

/// <summary>What a question gave to a measure, checked against the measure's inputs and choices.</summary>
internal sealed record Given(
    IReadOnlyDictionary<string, double> Inputs, IReadOnlyDictionary<string, string> Choices)
{
    /// <summary>An input as its quantity.</summary>
    public T Of<T>(string name)
        where T : struct, IQuantity<T> => T.Of(Inputs[name]).Value;
}
