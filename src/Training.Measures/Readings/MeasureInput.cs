using Training.Measures.Quantities;

namespace Training.Measures.Readings;

/// <summary>A number that a measure needs.</summary>
/// <param name="Name">The name by which a question calls it.</param>
/// <param name="Title">What it is, for the technician.</param>
/// <param name="Kind">What it measures.</param>
/// <param name="Unit">The unit that a question uses unless it says otherwise.</param>
public sealed record MeasureInput(string Name, Phrase Title, QuantityKind Kind, string Unit);

/// <summary>A named rule that a question must settle, since the published ones differ.</summary>
/// <param name="Name">The name by which a question calls it.</param>
/// <param name="Title">What is chosen.</param>
/// <param name="Options">The rules: the name of each and what to call it for the technician.</param>
public sealed record MeasureChoice(string Name, Phrase Title, IReadOnlyDictionary<string, Phrase> Options);
