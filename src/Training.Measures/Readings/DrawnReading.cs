using System.Globalization;
using Training.Measures.Quantities;
using Training.Measures.Workings;

namespace Training.Measures.Readings;

/// <summary>A number that the technician is told, or reads off a scale.</summary>
/// <param name="Input">What it is.</param>
/// <param name="Number">The number, in <paramref name="Unit"/>.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Division">One division of the scale it is read from; nought where it is told.</param>
public sealed record ReadingInput(MeasureInput Input, decimal Number, Unit Unit, decimal Division)
{
    /// <summary>The number and its unit.</summary>
    public string Print(IFormatProvider format)
    {
        var decimals = Input.Kind.Decimals;
        var number = decimals is { } places
            ? Number.ToString("F" + places.ToString(CultureInfo.InvariantCulture), format)
            : Number.ToString("0.#########", format);
        return Unit.Symbol.Length == 0 ? number : $"{number}\u00A0{Unit.Symbol}";
    }
}

/// <summary>One drawn reading with everything that judges an answer to it.</summary>
/// <param name="Measure">What is asked for.</param>
/// <param name="Inputs">What the technician gets to see.</param>
/// <param name="Value">The true value, in the base unit of the answer. Never sent before the answer is in.</param>
/// <param name="Tolerance">
/// How far an answer may lie off, in the same unit: what half a division of every scale that is read can make of it,
/// and one division of the instrument on which the answer would be read.
/// </param>
/// <param name="Table">What follows from the value, or null.</param>
/// <param name="Decisions">
/// The decisions that the scales cannot tell apart: as a rule one; none without a table.
/// </param>
/// <param name="Working">The sum.</param>
public sealed record DrawnReading(
    Measure Measure, IReadOnlyList<ReadingInput> Inputs, double Value, double Tolerance, DecisionTable? Table,
    IReadOnlyList<string> Decisions, Working Working)
{
    // Covers binary fractions alone.
    private const double Grain = 1e-9;

    /// <summary>Judges a typed answer and a decision.</summary>
    /// <param name="typed">The value as it was typed; the answer's unit may be left out.</param>
    /// <param name="decision">The chosen decision; null where there is no table.</param>
    /// <returns>An objection where the answer cannot be read: then nothing was judged.</returns>
    public Outcome<ReadingVerdict> Judge(string? typed, string? decision = null)
    {
        if (Table is not null && Table.Bands.All(band => band.Decision != decision))
            return new Objection("Say what is to be done: choose one of the decisions.");
        return JudgeValue(typed).Then<ReadingVerdict>(value => new ReadingVerdict(
            value.Answer,
            value.IsRight,
            Table is null || Decisions.Contains(decision!),
            Table is null || Table.For(value.Answer) == decision));
    }

    /// <summary>Judges a typed value alone.</summary>
    /// <param name="typed">The value as it was typed; the answer's unit may be left out.</param>
    /// <returns>An objection where it cannot be read: then nothing was judged.</returns>
    public Outcome<ValueVerdict> JudgeValue(string? typed) =>
        TypedQuantity.Read(Measure.Answer.Kind, typed, Measure.Answer.Unit).Then<ValueVerdict>(answer => new ValueVerdict(
            answer, Math.Abs(answer - Value) <= Tolerance + Grain * (1 + Math.Abs(Value))));
}

/// <summary>What a typed value is worth.</summary>
/// <param name="Answer">The value as it was read, in the base unit.</param>
/// <param name="IsRight">Whether it lies within the tolerance.</param>
public sealed record ValueVerdict(double Answer, bool IsRight);

/// <summary>What an answer to a reading is worth.</summary>
/// <param name="Answer">The value as it was read, in the base unit.</param>
/// <param name="ValueIsRight">Whether it lies within the tolerance.</param>
/// <param name="DecisionIsRight">Whether the decision is one that the true value calls for.</param>
/// <param name="DecisionFollows">
/// Whether the decision follows from the technician's own value: a wrong value with the right conclusion from it is
/// another fault than a wrong rule.
/// </param>
public sealed record ReadingVerdict(double Answer, bool ValueIsRight, bool DecisionIsRight, bool DecisionFollows)
{
    /// <summary>Whether the whole answer is right.</summary>
    public bool IsRight => ValueIsRight && DecisionIsRight;
}
