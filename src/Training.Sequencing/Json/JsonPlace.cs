using System.Text.Json;

namespace Training.Sequencing.Json;

/// <summary>A place in a JSON text.</summary>
/// <param name="Line">The line, from 1.</param>
/// <param name="Column">The column in UTF-16 units, from 1.</param>
public readonly record struct JsonPlace(int Line, int Column)
{
    /// <summary>Where a text stops being JSON. The reader counts the bytes of UTF-8 in a line, and whoever looks it up counts letters.</summary>
    internal static JsonPlace Of(string json, JsonException fault)
    {
        var (line, bytes) = ((int)(fault.LineNumber ?? 0), fault.BytePositionInLine ?? 0);
        var at = 0;
        for (var l = 0; l < line && at < json.Length; l++) at = json.IndexOf('\n', at) is var end and >= 0 ? end + 1 : json.Length;
        var column = 1;
        foreach (var rune in json.AsSpan(at).EnumerateRunes())
        {
            bytes -= rune.Utf8SequenceLength;
            if (bytes < 0) break;
            column += rune.Utf16SequenceLength;
        }

        return new(line + 1, column);
    }
}
