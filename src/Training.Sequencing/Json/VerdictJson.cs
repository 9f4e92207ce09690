using System.Buffers;
using System.Text;
using System.Text.Json;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Json;

/// <summary>Verdicts as JSON, in camelCase, on one line.</summary>
public static class VerdictJson
{
    /// <summary>Writes a verdict.</summary>
    /// <param name="verdict">The verdict.</param>
    public static string Write(Verdict verdict)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer, JsonText.Options)) Write(writer, verdict);
        return Encoding.UTF8.GetString(buffer.WrittenSpan);
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
        writer.WriteBoolean("accepted", verdict.Accepted);
        writer.WriteBoolean("safe", verdict.Safe);
        writer.WriteNumber("score", verdict.Score);
        writer.WriteNumber("kept", verdict.Kept);
        writer.WriteNumber("cost", verdict.Cost);
        writer.WriteStartArray("findings");
        foreach (var finding in verdict.Findings) Write(writer, finding);
        writer.WriteEndArray();
        writer.WritePropertyName("mend");
        Write(writer, verdict.Mend);
        writer.WritePropertyName("nearest");
        AnswerJson.Write(writer, verdict.Nearest);
        writer.WriteStartArray("replay");
        foreach (var entry in verdict.Replay) Write(writer, entry);
        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter writer, Finding finding)
    {
        writer.WriteStartObject();
        writer.WriteString("kind", CodeOf(finding.Kind));
        writer.WriteString("rule", finding.Subject);
        Write(writer, "steps", finding.Steps);
        Write(writer, "places", finding.Places);
        writer.WriteString("harm", HarmCode(finding.Stakes.Harm));
        writer.WriteString("severity", SeverityCode(finding.Stakes.Severity));
        writer.WriteString("message", finding.Message);
        writer.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter writer, Mend mend)
    {
        writer.WriteStartObject();
        Write(writer, "moves", mend.Moves);
        Write(writer, "drop", mend.Drop);
        Write(writer, "add", mend.Add);
        writer.WriteStartArray("waits");
        foreach (var wait in mend.Waits)
        {
            writer.WriteStartObject();
            writer.WriteString("step", wait.Step.Value);
            writer.WriteNumber("seconds", wait.Length.Seconds);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter writer, ReplayEntry entry)
    {
        writer.WriteStartObject();
        writer.WriteNumber("place", entry.Place);
        writer.WriteString("step", entry.Step.Value);
        writer.WriteNumber("startsAt", entry.StartsAt.Seconds);
        writer.WriteNumber("endsAt", entry.EndsAt.Seconds);
        writer.WriteStartObject("facts");
        foreach (var fact in entry.Facts) writer.WriteString(fact.Fact.Value, fact.Value.Value);
        writer.WriteEndObject();
        Write(writer, "findings", entry.Findings);
        writer.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter writer, string name, IReadOnlyList<StepId> ids)
    {
        writer.WriteStartArray(name);
        foreach (var id in ids) writer.WriteStringValue(id.Value);
        writer.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter writer, string name, IReadOnlyList<int> numbers)
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
