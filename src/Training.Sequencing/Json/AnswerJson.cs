using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Training.Sequencing.Answers;

namespace Training.Sequencing.Json;

/// <summary>
/// Answers as JSON: a list of entries, or <c>{"start": […], "entries": […]}</c>. An entry is
/// <c>{"step": "rest", "seconds": 60}</c> or, in an observed run,
/// <c>{"step": "rest", "startedAt": 12, "finishedAt": 72}</c>; in a start an id alone will do.
/// </summary>
public static class AnswerJson
{
    /// <summary>The longest text that is read, in UTF-16 units.</summary>
    public const int LongestText = 4_000_000;

    private const int FewKeys = 4;
    private static readonly JsonDocumentOptions Shallow = new() { MaxDepth = 8 };

    /// <summary>Why a text that is longer than <see cref="LongestText"/> is not read.</summary>
    public static Refusal TooLong { get; } = new("The answer is too long to be read.");

    /// <summary>Reads an answer, or says in one sentence what is wrong with the text.</summary>
    /// <param name="json">The text.</param>
    public static Outcome<Answer, Refusal> Parse(string json) => Parse(json, out _);

    /// <summary>Reads an answer, or says in one sentence what is wrong with the text.</summary>
    /// <param name="json">The text.</param>
    /// <param name="brokenAt">Where the text stops being JSON; null where it is JSON, or is too long to be looked at.</param>
    public static Outcome<Answer, Refusal> Parse(string json, out JsonPlace? brokenAt)
    {
        ArgumentNullException.ThrowIfNull(json);
        brokenAt = null;
        if (json.Length > LongestText) return TooLong;
        try
        {
            using var document = JsonDocument.Parse(json, Shallow);
            return Answer(document.RootElement);
        }
        catch (JsonException fault)
        {
            brokenAt = JsonPlace.Of(json, fault);
            return new Refusal(string.Create(CultureInfo.InvariantCulture,
                $"The answer is no JSON that can be read (line {fault.LineNumber + 1 ?? 1})."));
        }
        catch (Refused refused)
        {
            return new Refusal(refused.Message);
        }
        catch (InvalidOperationException)
        {
            // A string with half a surrogate pair is JSON by its grammar, and yet no text.
            return new Refusal("The answer holds text that is not valid Unicode.");
        }
    }

    /// <summary>Writes an answer: a bare list where nothing was done before, otherwise start and entries.</summary>
    /// <param name="answer">The answer.</param>
    public static string Write(Answer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer, JsonText.Options))
        {
            if (answer.Start.Count == 0)
            {
                Write(writer, answer.Entries);
            }
            else
            {
                writer.WriteStartObject();
                writer.WritePropertyName("start");
                Write(writer, answer.Start);
                writer.WritePropertyName("entries");
                Write(writer, answer.Entries);
                writer.WriteEndObject();
            }
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    internal static void Write(Utf8JsonWriter writer, IReadOnlyList<Entry> entries)
    {
        writer.WriteStartArray();
        foreach (var entry in entries)
        {
            writer.WriteStartObject();
            writer.WriteString(JsonNames.Step, entry.Step.Value);
            if (entry.Stated is { } stated) writer.WriteNumber(JsonNames.Seconds, stated.Seconds);
            if (entry.Observed is { } times)
            {
                writer.WriteNumber("startedAt", times.StartedAt.Seconds);
                writer.WriteNumber("finishedAt", times.FinishedAt.Seconds);
            }

            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static Answer Answer(JsonElement root)
    {
        if (root.ValueKind == JsonValueKind.Array) return new(Entries(root, "", mayBeBare: false));
        if (root.ValueKind != JsonValueKind.Object)
            throw new Refused("An answer is a list of entries, or an object with “start” and “entries”.");
        JsonElement? start = null;
        JsonElement? entries = null;
        foreach (var part in Parts(root, "The answer"))
        {
            switch (part.Name)
            {
                case "start": start = part.Value; break;
                case "entries": entries = part.Value; break;
                default: throw new Refused($"The answer has an unknown key “{Short(part.Name)}”.");
            }
        }

        if (entries is null) throw new Refused("The answer has no “entries”.");
        return new(Entries(entries.Value, "", mayBeBare: false))
        {
            Start = start is null ? [] : Entries(start.Value, " of the start", mayBeBare: true),
        };
    }

    private static List<Entry> Entries(JsonElement list, string whose, bool mayBeBare)
    {
        if (list.ValueKind != JsonValueKind.Array) throw new Refused("“start” and “entries” are lists of entries.");
        var entries = new List<Entry>(list.GetArrayLength());
        foreach (var element in list.EnumerateArray())
        {
            var where = new EntryPlace(entries.Count + 1, whose);
            entries.Add(mayBeBare && element.ValueKind == JsonValueKind.String
                ? new Entry(new(element.GetString()!))
                : EntryJson.Read(element, where));
        }

        return entries;
    }

    /// <summary>
    /// The parts of an object, refusing a key that stands twice. Whoever reads them stops at a key that they do not know,
    /// so that few are ever seen.
    /// </summary>
    internal static IEnumerable<JsonProperty> Parts<T>(JsonElement element, T where)
    {
        var seen = new List<string>(FewKeys);
        foreach (var part in element.EnumerateObject())
        {
            if (seen.Contains(part.Name)) throw new Refused($"{where} has the key “{Short(part.Name)}” twice.");
            seen.Add(part.Name);
            yield return part;
        }
    }

    /// <summary>A stranger's text, short enough for a sentence.</summary>
    internal static string Short(string text) => text.Length <= 40 ? text : text[..40] + "…";

    /// <summary>Ends the reading of a text with the sentence for whoever sent it; never leaves this class.</summary>
#pragma warning disable CA1032, CA1064, CA1812 // A way out of nested reading within this file, not an exception for others.
    internal sealed class Refused(string sentence) : Exception(sentence);
#pragma warning restore CA1032, CA1064, CA1812
}
