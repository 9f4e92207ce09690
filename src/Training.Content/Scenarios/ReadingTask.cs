using Training.Content.Modules;
using Training.Measures.Readings;
using Training.Sequencing.Procedures;

namespace Training.Content.Scenarios;

/// <summary>A reading to be taken in a scenario, and what is to be decided by it.</summary>
/// <param name="Question">Draws the readings and knows what is right.</param>
/// <param name="Instruments">On what each input is read, by its name; what is not here is simply told.</param>
/// <param name="Stakes">
/// What it can cost to take a decision that is wrong, by the decision's number from 1; empty where the value alone is
/// asked for.
/// </param>
public sealed record ReadingTask(
    ReadingQuestion Question, IReadOnlyDictionary<string, Instrument> Instruments, IReadOnlyList<Stakes> Stakes)
{
    /// <summary>On what an input is read.</summary>
    /// <param name="input">The input's name.</param>
    public Instrument InstrumentOf(string input) => Instruments.GetValueOrDefault(input);
}

/// <summary>On what a number is read; the codes of the files are the members' names in lower case with hyphens.</summary>
public enum Instrument
{
    /// <summary>It is told, as on a plate or in a list.</summary>
    Told,

    /// <summary>The display of a multimeter.</summary>
    Multimeter,

    /// <summary>The display of a meter that is clamped around a cable.</summary>
    ClampMeter,

    /// <summary>The scale on a hydrometer's float, at the surface of the liquid.</summary>
    Hydrometer,

    /// <summary>The scale of a thermometer.</summary>
    Thermometer,
}

/// <summary>The words of a reading in one language.</summary>
/// <param name="Decisions">The decisions, by number from 1.</param>
/// <param name="Called">What inputs are called in this scenario, by name; what is not here is called as the measure calls it.</param>
public sealed record ReadingWords(IReadOnlyList<DecisionWords> Decisions, IReadOnlyDictionary<string, string> Called)
{
    /// <summary>Where the limits of the decisions come from; what is not translated is in the default language.</summary>
    public IReadOnlyList<Source> Sources { get; init; } = [];
}

/// <summary>The words of a decision.</summary>
/// <param name="Do">What is done.</param>
/// <param name="Because">Why, where it is right.</param>
/// <param name="Otherwise">What happens to somebody who does it where it is wrong; null where nothing is told.</param>
public sealed record DecisionWords(string Do, string Because, string? Otherwise);
