using System.Buffers;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Training.Proofs.CanonicalJson;

/// <summary>
/// The JSON Canonicalization Scheme, RFC 8785: no space between tokens, names in the order of their UTF-16 code
/// units, numbers as ECMAScript writes them, the shortest escapes, UTF-8.
/// </summary>
public static class Jcs
{
    /// <summary>The canonical form of a document that others sent; see <see cref="StrictJson"/> for what is refused.</summary>
    public static Outcome<CanonicalText> Canonicalize(ReadOnlySpan<byte> utf8)
    {
        Outcome<JsonNode> read = StrictJson.Read(utf8);
        return read.IsOk ? Canonicalize(read.Value) : new Refused(read.Sentence);
    }

    /// <summary>
    /// The canonical form of a value built in memory. Refused: numbers that are not finite, whole numbers beyond
    /// 2^53 (a double does not hold them exactly), half of a surrogate pair, more than
    /// <see cref="StrictJson.MostLevels"/> levels, values that are not plain JSON.
    /// </summary>
    public static Outcome<CanonicalText> Canonicalize(JsonNode? value)
    {
        StringBuilder text = new();
        string? fault = Write(value, text, level: 0);
        return fault is null ? new CanonicalText(Encoding.UTF8.GetBytes(text.ToString())) : new Refused(fault);
    }

    /// <summary>Accepts bytes only where they are canonical already, so that one meaning has one spelling.</summary>
    public static Outcome<CanonicalText> ReadCanonical(ReadOnlySpan<byte> utf8)
    {
        Outcome<CanonicalText> canonical = Canonicalize(utf8);
        return canonical.IsOk && !canonical.Value.Utf8.SequenceEqual(utf8)
            ? new Refused("The bytes are JSON, but not in the canonical form of RFC 8785.")
            : canonical;
    }

    /// <summary>The canonical form of a value that this project built itself and that can only be right.</summary>
    /// <exception cref="InvalidOperationException">It is not: a fault of ours.</exception>
    internal static CanonicalText Must(JsonNode value)
    {
        Outcome<CanonicalText> canonical = Canonicalize(value);
        return canonical.IsOk ? canonical.Value : throw new InvalidOperationException(canonical.Sentence);
    }

    private static string? Write(JsonNode? node, StringBuilder text, int level)
    {
        switch (node)
        {
            case null:
                text.Append("null");
                return null;
            case JsonObject or JsonArray when level == StrictJson.MostLevels:
                return $"The value is nested deeper than {StrictJson.MostLevels} levels.";
            case JsonObject members:
                return WriteObject(members, text, level + 1);
            case JsonArray items:
                return WriteArray(items, text, level + 1);
            default:
                return WriteValue(node.AsValue(), text);
        }
    }

    private static string? WriteObject(JsonObject members, StringBuilder text, int level)
    {
        text.Append('{');
        bool first = true;
        foreach ((string name, JsonNode? value) in members.OrderBy(member => member.Key, StringComparer.Ordinal))
        {
            if (!first)
                text.Append(',');
            first = false;
            if (WriteString(name, text) is { } nameFault)
                return nameFault;
            text.Append(':');
            if (Write(value, text, level) is { } fault)
                return fault;
        }
        text.Append('}');
        return null;
    }

    private static string? WriteArray(JsonArray items, StringBuilder text, int level)
    {
        text.Append('[');
        for (int i = 0; i < items.Count; i++)
        {
            if (i > 0)
                text.Append(',');
            if (Write(items[i], text, level) is { } fault)
                return fault;
        }
        text.Append(']');
        return null;
    }

    private static string? WriteValue(JsonValue value, StringBuilder text)
    {
        switch (value.GetValueKind())
        {
            case JsonValueKind.String when value.TryGetValue(out string? content):
                return WriteString(content, text);
            case JsonValueKind.Number:
                return WriteNumber(value, text);
            case JsonValueKind.True:
                text.Append("true");
                return null;
            case JsonValueKind.False:
                text.Append("false");
                return null;
            case JsonValueKind.Null:
                text.Append("null");
                return null;
            default:
                return "A value is neither text, number, true, false nor null.";
        }
    }

    private static string? WriteNumber(JsonValue value, StringBuilder text)
    {
        const long Exact = 1L << 53;
        double number;
        if (value.TryGetValue(out double real))
            number = real;
        else if (value.TryGetValue(out int small))
            number = small;
        else if (value.TryGetValue(out long whole) && whole is >= -Exact and <= Exact)
            number = whole;
        else
            return "A number is not a double and not a whole number up to 2^53: write it as text.";
        if (!double.IsFinite(number))
            return "JSON has no number that is not finite.";
        text.Append(EcmaScriptNumber.Format(number));
        return null;
    }

    private static string? WriteString(string content, StringBuilder text)
    {
        text.Append('"');
        ReadOnlySpan<char> rest = content;
        while (!rest.IsEmpty)
        {
            if (Rune.DecodeFromUtf16(rest, out Rune rune, out int used) != OperationStatus.Done)
                return "A text holds half of a surrogate pair.";
            Escape(rune, text);
            rest = rest[used..];
        }
        text.Append('"');
        return null;
    }

    private static void Escape(Rune rune, StringBuilder text)
    {
        switch (rune.Value)
        {
            case '"': text.Append("\\\""); break;
            case '\\': text.Append("\\\\"); break;
            case '\b': text.Append("\\b"); break;
            case '\t': text.Append("\\t"); break;
            case '\n': text.Append("\\n"); break;
            case '\f': text.Append("\\f"); break;
            case '\r': text.Append("\\r"); break;
            case < 0x20: text.Append("\\u00").Append(rune.Value.ToString("x2", System.Globalization.CultureInfo.InvariantCulture)); break;
            default: text.Append(rune.ToString()); break;
        }
    }
}
