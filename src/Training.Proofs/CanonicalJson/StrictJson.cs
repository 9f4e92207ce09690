using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Unicode;

namespace Training.Proofs.CanonicalJson;

/// <summary>
/// Reads JSON that others sent, by the rules of I-JSON (RFC 7493) that RFC 8785 builds on. What two readers could
/// understand differently is refused: a name that stands twice in one object, half of a surrogate pair, bytes that are
/// not UTF-8, numbers beyond the range of a double.
/// </summary>
public static class StrictJson
{
    /// <summary>How deep objects and arrays may be nested.</summary>
    public const int MostLevels = 64;

    /// <summary>How many bytes a document may have: 1 MiB.</summary>
    public const int MostBytes = 1 << 20;

    /// <summary>Reads any JSON value; the value null is refused.</summary>
    /// <param name="utf8">The document.</param>
    /// <param name="mostBytes">How many bytes it may have.</param>
    public static Outcome<JsonNode> Read(ReadOnlySpan<byte> utf8, int mostBytes = MostBytes)
    {
        if (utf8.Length > mostBytes)
            return new Refused($"The document has more than {mostBytes} bytes.");
        if (utf8.IsEmpty)
            return new Refused("The file is empty.");
        if (!Utf8.IsValid(utf8))
            return new Refused("The document is not UTF-8.");
        try
        {
            using JsonDocument document = JsonDocument.Parse(
                utf8.ToArray(), new JsonDocumentOptions { MaxDepth = MostLevels });
            JsonNode? node = Copy(document.RootElement);
            return node is null ? new Refused("The document is the value null.") : node;
        }
        catch (JsonException e)
        {
            return new Refused($"The document is not JSON or is nested deeper than {MostLevels} levels: {Place(e)}.");
        }
        catch (NotOneReadingException e)
        {
            return new Refused(e.Message);
        }
    }

    /// <summary>Reads a JSON object.</summary>
    /// <param name="utf8">The document.</param>
    /// <param name="mostBytes">How many bytes it may have.</param>
    public static Outcome<JsonObject> ReadObject(ReadOnlySpan<byte> utf8, int mostBytes = MostBytes)
    {
        Outcome<JsonNode> read = Read(utf8, mostBytes);
        if (!read.IsOk)
            return new Refused(read.Sentence);
        return read.Value is JsonObject document ? document : new Refused("The document is JSON, but not an object.");
    }

    private static string Place(JsonException e) =>
        e.LineNumber is { } line ? $"line {line + 1}, byte {e.BytePositionInLine + 1}" : "place unknown";

    private static JsonNode? Copy(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => CopyObject(element),
        JsonValueKind.Array => new JsonArray([.. element.EnumerateArray().Select(Copy)]),
        JsonValueKind.String => JsonValue.Create(Text(element)),
        JsonValueKind.Number => JsonValue.Create(Number(element)),
        JsonValueKind.True => JsonValue.Create(true),
        JsonValueKind.False => JsonValue.Create(false),
        _ => null,
    };

    private static JsonObject CopyObject(JsonElement element)
    {
        JsonObject copy = [];
        foreach (JsonProperty member in element.EnumerateObject())
        {
            string name = Name(member);
            if (!copy.TryAdd(name, Copy(member.Value)))
                throw new NotOneReadingException($"The name \"{name}\" stands twice in one object.");
        }
        return copy;
    }

    private static string Text(JsonElement element)
    {
        try
        {
            return element.GetString()!;
        }
        catch (InvalidOperationException)
        {
            throw new NotOneReadingException("A text holds half of a surrogate pair.");
        }
    }

    private static string Name(JsonProperty member)
    {
        try
        {
            return member.Name;
        }
        catch (InvalidOperationException)
        {
            throw new NotOneReadingException("A name holds half of a surrogate pair.");
        }
    }

    private static double Number(JsonElement element) =>
        element.TryGetDouble(out double number) && double.IsFinite(number)
            ? number
            : throw new NotOneReadingException($"The number {Short(element.GetRawText())} is beyond the range of a double.");

    private static string Short(string text) => text.Length <= 24 ? text : text[..24] + "…";

    private sealed class NotOneReadingException(string message) : Exception(message);
}
