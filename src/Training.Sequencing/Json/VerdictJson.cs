using System.Buffers;
using System.Text;
using System.Text.Json;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Json;

/// <summary>Verdicts as JSON, in camelCase, on one line.</summary>
public static class VerdictJson
{
    private const int FirstBytes = 8192;

    /// <summary>Writes a verdict.</summary>
    /// <param name="verdict">The verdict.</param>
    public static string Write(Verdict verdict)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        var buffer = new ArrayBufferWriter<byte>(FirstBytes);
        Write(verdict, buffer);
        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    /// <summary>Writes a verdict as UTF-8.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <param name="output">Takes the bytes.</param>
    public static void Write(Verdict verdict, IBufferWriter<byte> output)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        using var writer = new Utf8JsonWriter(output, JsonText.Options);
        Write(writer, verdict);
    }

    /// <summary>The code of a kind of finding, such as <c>too-soon</c>.</summary>
    /// <param name="kind">The kind.</param>
    public static string CodeOf(FindingKind kind) => kind switch
    {
        FindingKind.Missing => "missing",
        FindingKind.Decoy => "decoy",
        FindingKind.Repeated => "repeated",
        FindingKind.ExtraChoice => "extra-choice",
        FindingKind.Order => "order",
        FindingKind.TooSoon => "too-soon",
        FindingKind.State => "state",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such kind."),
    };

    private static void Write(Utf8JsonWriter writer, Verdict verdict)
    {
        writer.WriteStartObject();
        writer.WriteBoolean(JsonNames.Accepted, verdict.Accepted);
        writer.WriteBoolean(JsonNames.Safe, verdict.Safe);
        writer.WriteNumber(JsonNames.Score, verdict.Score);
        writer.WriteNumber(JsonNames.Kept, verdict.Kept);
        writer.WriteNumber(JsonNames.Cost, verdict.Cost);
        writer.WriteStartArray(JsonNames.Findings);
        foreach (var finding in verdict.Findings) Write(writer, finding);
        writer.WriteEndArray();
        writer.WritePropertyName(JsonNames.Mend);
        Write(writer, verdict.Mend);
        writer.WritePropertyName(JsonNames.Nearest);
        AnswerJson.Write(writer, verdict.Nearest);
        writer.WriteStartArray(JsonNames.Replay);
        foreach (var entry in verdict.Replay) Write(writer, entry);
        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    internal static void Write(Utf8JsonWriter writer, Finding finding)
    {
        writer.WriteStartObject();
        writer.WriteString(JsonNames.Kind, CodeOf(finding.Kind));
        writer.WriteString(JsonNames.Rule, finding.Subject);
        Write(writer, JsonNames.Steps, finding.Steps);
        Write(writer, JsonNames.Places, finding.Places);
        writer.WriteString(JsonNames.Harm, HarmCode(finding.Stakes.Harm));
        writer.WriteString(JsonNames.Severity, SeverityCode(finding.Stakes.Severity));
        writer.WriteString(JsonNames.Message, finding.Message);
        writer.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter writer, Mend mend)
    {
        writer.WriteStartObject();
        Write(writer, JsonNames.Moves, mend.Moves);
        Write(writer, JsonNames.Drop, mend.Drop);
        Write(writer, JsonNames.Add, mend.Add);
        writer.WriteStartArray(JsonNames.Waits);
        foreach (var wait in mend.Waits)
        {
            writer.WriteStartObject();
            writer.WriteString(JsonNames.Step, wait.Step.Value);
            writer.WriteNumber(JsonNames.Seconds, wait.Length.Seconds);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter writer, ReplayEntry entry)
    {
        writer.WriteStartObject();
        writer.WriteNumber(JsonNames.Place, entry.Place);
        writer.WriteString(JsonNames.Step, entry.Step.Value);
        writer.WriteNumber(JsonNames.StartsAt, entry.StartsAt.Seconds);
        writer.WriteNumber(JsonNames.EndsAt, entry.EndsAt.Seconds);
        writer.WriteStartObject(JsonNames.Facts);
        foreach (var fact in entry.Facts) writer.WriteString(fact.Fact.Value, fact.Value.Value);
        writer.WriteEndObject();
        Write(writer, JsonNames.Findings, entry.Findings);
        writer.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter writer, JsonEncodedText name, IReadOnlyList<StepId> ids)
    {
        writer.WriteStartArray(name);
        foreach (var id in ids) writer.WriteStringValue(id.Value);
        writer.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter writer, JsonEncodedText name, IReadOnlyList<int> numbers)
    {
        writer.WriteStartArray(name);
        foreach (var number in numbers) writer.WriteNumberValue(number);
        writer.WriteEndArray();
    }

    private static string HarmCode(Harm harm) => harm switch
    {
        Harm.People => "people",
        Harm.Equipment => "equipment",
        Harm.Environment => "environment",
        _ => "work",
    };

    private static string SeverityCode(Severity severity) => severity switch
    {
        Severity.Minor => "minor",
        Severity.Critical => "critical",
        _ => "serious",
    };
}
