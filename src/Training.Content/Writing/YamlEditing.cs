using System.Text;
using System.Text.Json;

namespace Training.Content.Writing;

/// <summary>
/// Changes one place of a YAML text and leaves every other character as it stands: comments, the order of keys, how texts
/// are quoted, and keys that nobody here knows.
/// </summary>
internal static class YamlEditing
{
    /// <summary>Sets a key of a part to a value that is written already; adds it where it is missing.</summary>
    public static string Set(string text, SpannedMap map, string key, string written)
    {
        if (map.Find(key) is { } field) return Replaced(text, field.Value.Start, Math.Max(field.Value.Start, field.Value.End), Spaced(text, field, written));
        if (map.IsFlow) return Inserted(text, LastInside(text, map), $"{(map.Fields.Count == 0 ? " " : ", ")}{key}: {written}");
        var last = map.Fields[^1];
        return Inserted(text, LineEnd(text, last.End), $"\n{new string(' ', Column(text, map.Fields[0].Key.Start))}{key}: {written}");
    }

    /// <summary>Takes a key out of a part; not its only one.</summary>
    public static string Without(string text, SpannedMap map, string key)
    {
        if (map.Find(key) is not { } field || map.Fields.Count < 2) return text;
        return map.IsFlow ? WithoutFlow(text, map.Fields.Select(one => (one.Key.Start, one.End)).ToList(), map.Fields.ToList().IndexOf(field))
            : WithoutBlock(text, map, field);
    }

    /// <summary>Adds an entry to a list below a key of the root; makes the list where it is missing.</summary>
    /// <param name="text">The text.</param>
    /// <param name="root">Its root.</param>
    /// <param name="key">The key of the list.</param>
    /// <param name="fields">The entry's keys and values as they are written.</param>
    /// <param name="asBlock">Whether each key has a line of its own, as far as the list has lines.</param>
    public static string Add(string text, SpannedMap root, string key, IReadOnlyList<string> fields, bool asBlock)
    {
        var flow = $"{{ {string.Join(", ", fields)} }}";
        switch (root.Find(key)?.Value)
        {
            case SpannedList { IsFlow: true } list:
                return Inserted(text, LastInside(text, list), $"{(list.Items.Count == 0 ? "" : ", ")}{flow}");
            case SpannedList { Items.Count: > 0 } list:
                var indent = new string(' ', Column(text, Dash(text, list.Items[^1])));
                return Inserted(text, LineEnd(text, list.End), $"\n{indent}- {(asBlock ? string.Join($"\n{indent}  ", fields) : flow)}");
            case null:
                return $"{text.TrimEnd('\n')}\n{key}:\n  - {(asBlock ? string.Join("\n    ", fields) : flow)}\n";
            default:
                return text;
        }
    }

    /// <summary>Takes an entry out of a list below a key of the root, and the key with its last entry.</summary>
    public static string Without(string text, SpannedMap root, string key, int index)
    {
        if (root.Find(key) is not { Value: SpannedList list }) return text;
        if (list.Items.Count == 1) return WithoutBlock(text, root, root.Find(key)!);
        if (list.IsFlow) return WithoutFlow(text, list.Items.Select(item => (item.Start, item.End)).ToList(), index);
        var (start, end) = Lines(text, list.Items[index]);
        return text.Remove(start, end - start);
    }

    /// <summary>Swaps an entry of a list with the one behind it. What stands between the two stays where it is.</summary>
    public static string Swapped(string text, SpannedList list, int index)
    {
        var (one, other) = (list.Items[index], list.Items[index + 1]);
        var (first, second) = list.IsFlow ? ((one.Start, one.End), (other.Start, other.End)) : (Lines(text, one), Lines(text, other));
        var (before, after) = (text[first.Item1..first.Item2], text[second.Item1..second.Item2]);
        if (!list.IsFlow && !after.EndsWith('\n')) (before, after) = (before.TrimEnd('\n'), after + "\n");
        return string.Concat(text.AsSpan(0, first.Item1), after + text[first.Item2..second.Item1], before, text.AsSpan(second.Item2));
    }

    /// <summary>A text as YAML writes it: as it is where that is safe anywhere, in double quotes otherwise.</summary>
    public static string Written(string text) => IsPlain(text) ? text : Quoted(text);

    /// <summary>A list of ids.</summary>
    public static string Written(IEnumerable<string> ids) => $"[{string.Join(", ", ids.Select(Written))}]";

    private static bool IsPlain(string text) =>
        text.Length > 0 && (char.IsLetter(text[0]) || (char.IsDigit(text[0]) && text.Any(char.IsLetter))) && text == text.Trim()
        && text.All(letter => char.IsLetterOrDigit(letter) || letter is ' ' or '-' or '.' or '(' or ')' or '/' or ';' or '\'' or '+')
        && !(text.ToUpperInvariant() is "TRUE" or "FALSE" or "NULL" or "YES" or "NO" or "ON" or "OFF" or "Y" or "N");

    // JSON's escapes are YAML's. Letters of any language stay as they are.
    private static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (var letter in text)
            quoted.Append(letter switch { '"' => "\\\"", '\\' => "\\\\", '\n' => "\\n", '\t' => "\\t", _ when char.IsControl(letter) => JsonEncodedText.Encode(letter.ToString()).ToString(), _ => letter.ToString() });
        return quoted.Append('"').ToString();
    }

    private static string Spaced(string text, SpannedField field, string written) =>
        field.Value.Start > 0 && text[field.Value.Start - 1] == ':' ? " " + written : written;

    private static string Replaced(string text, int start, int end, string with) => string.Concat(text.AsSpan(0, start), with, text.AsSpan(end));

    private static string Inserted(string text, int at, string what) => text.Insert(at, what);

    // Behind the last thing inside the brackets, before blanks and the closing one.
    private static int LastInside(string text, SpannedNode flow)
    {
        var at = flow.End - 1;
        while (at > flow.Start + 1 && char.IsWhiteSpace(text[at - 1])) at--;
        return at;
    }

    private static string WithoutFlow(string text, List<(int Start, int End)> parts, int index) => index + 1 < parts.Count
        ? text.Remove(parts[index].Start, parts[index + 1].Start - parts[index].Start)
        : text.Remove(parts[index - 1].End, parts[index].End - parts[index - 1].End);

    private static string WithoutBlock(string text, SpannedMap map, SpannedField field)
    {
        var next = map.Fields.SkipWhile(other => !ReferenceEquals(other, field)).Skip(1).FirstOrDefault();
        // The first key of an entry shares its line with the dash: the next one takes its place.
        if (LineStart(text, field.Key.Start) + Column(text, field.Key.Start) is var start && text[LineStart(text, start)..start].Trim().Length > 0 && next is not null)
            return text.Remove(field.Key.Start, next.Key.Start - field.Key.Start);
        var (from, to) = (LineStart(text, field.Key.Start), NextLine(text, field.End));
        return text.Remove(from, to - from);
    }

    private static (int Start, int End) Lines(string text, SpannedNode item) => (LineStart(text, Dash(text, item)), NextLine(text, item.End));

    private static int Dash(string text, SpannedNode item)
    {
        var at = item.Start - 1;
        while (at >= 0 && !(text[at] == '-' && text[LineStart(text, at)..at].Trim().Length == 0)) at--;
        return Math.Max(at, 0);
    }

    private static int LineStart(string text, int at) => at == 0 ? 0 : text.LastIndexOf('\n', at - 1) + 1;

    private static int Column(string text, int at) => at - LineStart(text, at);

    private static int LineEnd(string text, int at) => text.IndexOf('\n', at) is var end and >= 0 ? end : text.Length;

    private static int NextLine(string text, int at) => Math.Min(LineEnd(text, at) + 1, text.Length);
}
