using System.Buffers;
using System.Text;
using System.Text.Json;
using Training.Content.Modules;
using Training.Content.Scenarios;
using Training.Measures;
using Training.Measures.Readings;
using Training.Measures.Workings;
using Training.Sequencing.Procedures;

namespace Training.Records.Asking;

/// <summary>A reading as it is put.</summary>
/// <param name="Found">What is to be found, such as the state of charge.</param>
/// <param name="Inputs">What is read off or told.</param>
/// <param name="Rules">The named rules that it is worked out by, where the published ones differ.</param>
/// <param name="Answer">What is asked for: its kind and the unit that stands beside the field.</param>
/// <param name="Decisions">What can be decided, in a fixed order; empty where the value alone is asked for.</param>
public sealed record ReadingView(
    Phrase Found, IReadOnlyList<ReadingInputView> Inputs, IReadOnlyList<Phrase> Rules, MeasureAnswer Answer, IReadOnlyList<OptionView> Decisions);

/// <summary>Something that is read off or told.</summary>
/// <param name="Called">What it is called in the scenario; null where it is called as the measure calls it.</param>
/// <param name="On">On what it is read.</param>
/// <param name="Input">The number, its unit and the division of its scale.</param>
public sealed record ReadingInputView(string? Called, Instrument On, ReadingInput Input);

/// <summary>What is right of a reading and what was made of it.</summary>
/// <param name="Value">The true value with its unit.</param>
/// <param name="Tolerance">How far an answer may lie off, with its unit.</param>
/// <param name="Working">The sum, line by line, each with its source.</param>
/// <param name="Sources">Where the limits of the decisions come from.</param>
/// <param name="Right">The numbers of the decisions that the value calls for.</param>
public sealed record ReadingFound(
    string Value, string Tolerance, Working Working, IReadOnlyList<Source> Sources, IReadOnlyList<string> Right)
{
    /// <summary>Whether the typed value lies within the tolerance.</summary>
    public required bool IsValueRight { get; init; }

    /// <summary>Whether the decision is one that the true value calls for; true where none is asked for.</summary>
    public required bool IsDecisionRight { get; init; }

    /// <summary>Whether the decision follows from the technician's own value.</summary>
    public required bool DecisionFollows { get; init; }

    /// <summary>Whether a decision is asked for.</summary>
    public required bool HasTable { get; init; }

    /// <summary>Why the right decisions are right.</summary>
    public required IReadOnlyList<string> Because { get; init; }

    /// <summary>What comes of the wrong decision; null where there is nothing to tell.</summary>
    public string? Otherwise { get; init; }

    /// <summary>What the wrong decision puts at stake; null where it is right, or none was taken.</summary>
    public Stakes? Stakes { get; init; }
}

/// <summary>A reading that somebody took.</summary>
/// <param name="Question">The question.</param>
/// <param name="Typed">What was typed and decided.</param>
/// <param name="Found">What is right.</param>
public sealed record JudgedReadingView(QuestionView Question, TypedReading Typed, ReadingFound Found) : JudgedAnswerView(Question)
{
    /// <inheritdoc/>
    public override bool Accepted => Found.IsValueRight && Found.IsDecisionRight;

    /// <inheritdoc/>
    public override bool Safe => Found.Stakes?.IsSafe ?? true;

    /// <summary>Half for the value and half for the decision; all for the value where nothing is decided.</summary>
    public override decimal Score => (Found.HasTable, Found.IsValueRight, Found.IsDecisionRight) switch
    {
        (false, true, _) or (true, true, true) => 100m,
        (false, false, _) or (true, false, false) => 0m,
        _ => 50m,
    };

    internal override string ToJson()
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer))
        {
            writer.WriteStartObject();
            writer.WriteBoolean("accepted", Accepted);
            writer.WriteBoolean("safe", Safe);
            writer.WriteNumber("score", Score);
            writer.WriteStartArray("findings");
            writer.WriteEndArray();
            writer.WriteBoolean("valueIsRight", Found.IsValueRight);
            if (Found.HasTable)
            {
                writer.WriteBoolean("decisionIsRight", Found.IsDecisionRight);
                writer.WriteBoolean("decisionFollows", Found.DecisionFollows);
            }

            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }
}
