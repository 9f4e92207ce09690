using System.Globalization;
using Training.Content.Competencies;
using Training.Sequencing.Procedures;

namespace Training.Content.Yaml;

/// <summary>
/// The keys and values of one part of a file, asked for one by one. What is missing, empty or of the wrong sort is
/// reported at its place; a key that is not known, or is there twice, is reported when the part is opened.
/// </summary>
internal sealed class Fields
{
    private readonly Dictionary<string, YamlField> fields = new(StringComparer.Ordinal);
    private readonly ProblemList problems;
    private readonly string what;

    private Fields(YamlMap map, string what, ProblemList problems, string[] known)
    {
        (Place, this.what, this.problems) = (map.Place, what, problems);
        foreach (var field in map.Fields)
        {
            var key = field.Key.Text;
            if (!known.Contains(key, StringComparer.Ordinal))
                problems.Error(field.Key.Place, $"{what} has no key \"{Shown(key)}\"{Nearest(key, known)}");
            else if (!fields.TryAdd(key, field))
                problems.Error(field.Key.Place, $"The key \"{key}\" is here twice: keep one.");
        }
    }

    /// <summary>Where the part begins.</summary>
    public Place Place { get; }

    /// <summary>Opens a part.</summary>
    /// <param name="node">The part.</param>
    /// <param name="what">What it is, to begin a sentence with: "A step".</param>
    /// <param name="problems">Where problems go.</param>
    /// <param name="known">The keys that it may have.</param>
    /// <returns>Null where it has no keys; that is reported.</returns>
    public static Fields? Open(YamlNode node, string what, ProblemList problems, params string[] known)
    {
        if (node is YamlMap map) return new(map, what, problems, known);
        problems.Error(node.Place, $"{what} is written as keys with values ({string.Join(", ", known.Take(3))}, …); here is {Described(node)}.");
        return null;
    }

    public bool Has(string key) => fields.ContainsKey(key);

    /// <summary>Whether a key is there with something in it: an empty list is as good as none.</summary>
    public bool Holds(string key) =>
        fields.TryGetValue(key, out var field) && field.Value is not YamlList { Items.Count: 0 } and not YamlMap { Fields.Count: 0 };

    /// <summary>Where the value of a key stands; the start of the part where there is none.</summary>
    public Place PlaceOf(string key) => fields.TryGetValue(key, out var field) ? field.Value.Place : Place;

    /// <summary>Where a key stands; the start of the part where it does not.</summary>
    public Place KeyPlaceOf(string key) => fields.TryGetValue(key, out var field) ? field.Key.Place : Place;

    /// <summary>The value as it is; null, and reported, where a needed one is missing.</summary>
    public YamlNode? Node(string key, bool needed)
    {
        if (!fields.TryGetValue(key, out var field))
        {
            if (needed) problems.Error(Place, $"{what} needs the key \"{key}\".");
            return null;
        }

        if (field.Value is not YamlText { IsEmpty: true }) return field.Value;
        problems.Error(field.Key.Place, $"\"{key}\" has no value: write one, or leave the key out.");
        return null;
    }

    /// <summary>A text with its place.</summary>
    public YamlText? Text(string key, bool needed = false) => Node(key, needed) is { } node ? AsText(node, $"\"{key}\"") : null;

    /// <summary>An id: lower-case letters, digits and hyphens.</summary>
    public YamlText? Id(string key, bool needed = false) => Text(key, needed) is { } text && IsId(text) ? text : null;

    /// <summary>Ids; an empty list is as good as none unless the key is needed. Where <paramref name="orOne"/>, a single id will do.</summary>
    public IReadOnlyList<YamlText> Ids(string key, bool needed = false, bool orOne = false) =>
        [.. Texts(key, needed, orOne).Where(IsId)];

    /// <summary>Texts, none of them twice; an empty list is as good as none unless the key is needed.</summary>
    public IReadOnlyList<YamlText> Texts(string key, bool needed = false, bool orOne = false)
    {
        List<YamlText> texts = [];
        foreach (var item in Items(key, needed, orOne))
        {
            if (AsText(item, $"An entry of \"{key}\"") is not { } text) continue;
            if (texts.Exists(other => other.Text == text.Text)) problems.Error(text.Place, $"\"{Shown(text.Text)}\" is in the list twice: keep one.");
            else texts.Add(text);
        }

        return texts;
    }

    /// <summary>
    /// The entries of a list. One that is empty is as good as none, as programs write it so; where the key is needed, or a
    /// single one will do, somebody meant to name something.
    /// </summary>
    public IReadOnlyList<YamlNode> Items(string key, bool needed = false, bool orOne = false)
    {
        switch (Node(key, needed))
        {
            case null:
                return [];
            case YamlList { Items.Count: 0 } list when needed || orOne:
                problems.Error(list.Place, $"\"{key}\" is an empty list: put something in it.");
                return [];
            case YamlList list:
                return list.Items;
            case YamlText text when orOne:
                return [text];
            case var node:
                problems.Error(node.Place, $"\"{key}\" must be a list{(orOne ? " or one id" : ", in brackets")}; here is {Described(node)}.");
                return [];
        }
    }

    /// <summary>The keys and texts of a part whose keys are the author's own; an empty one is as good as none unless the key is needed.</summary>
    public IReadOnlyList<(YamlText Key, YamlNode Value)> Entries(string key, bool needed = false)
    {
        if (Node(key, needed) is not { } node) return [];
        if (!needed && node is YamlMap { Fields.Count: 0 }) return [];
        if (node is not YamlMap { Fields.Count: > 0 } map)
        {
            problems.Error(node.Place, $"\"{key}\" is written as keys with values, such as {{ key: off }}; here is {Described(node)}.");
            return [];
        }

        List<(YamlText, YamlNode)> entries = [];
        HashSet<string> seen = new(StringComparer.Ordinal);
        foreach (var field in map.Fields)
        {
            if (!seen.Add(field.Key.Text)) problems.Error(field.Key.Place, $"The key \"{Shown(field.Key.Text)}\" is here twice: keep one.");
            else entries.Add((field.Key, field.Value));
        }

        return entries;
    }

    /// <summary>True or false; false where the key is not there.</summary>
    public bool Flag(string key)
    {
        if (Node(key, needed: false) is not { } node) return false;
        if (node is YamlText { IsQuoted: false, Text: "true" or "false" } text) return text.Text == "true";
        problems.Error(node.Place, $"\"{key}\" must be true or false.");
        return false;
    }

    /// <summary>A whole number between two others.</summary>
    public int? Whole(string key, int least, int most, bool needed = false)
    {
        if (Text(key, needed) is not { } text) return null;
        if (int.TryParse(text.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most)
            return number;
        problems.Error(text.Place, string.Create(
            CultureInfo.InvariantCulture,
            $"\"{key}\" must be a whole number from {least} to {most}."));
        return null;
    }

    /// <summary>A number with a decimal point.</summary>
    public decimal? Number(string key, bool needed = false) => Text(key, needed) is { } text ? AsNumber(text) : null;

    /// <summary>A number with a decimal point.</summary>
    public decimal? AsNumber(YamlText text)
    {
        const NumberStyles style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
        if (decimal.TryParse(text.Text, style, CultureInfo.InvariantCulture, out var number)) return number;
        problems.Error(text.Place, $"\"{Shown(text.Text)}\" must be a number, such as 0.005.");
        return null;
    }

    /// <summary>A number and an SI symbol.</summary>
    public Duration? Duration(string key, bool needed = false) =>
        Text(key, needed) is { } text ? AsDuration(text, key) : null;

    /// <summary>An ISO 8601 period; no time at all just where <paramref name="orNone"/>.</summary>
    public Period? Period(string key, bool needed = false, bool orNone = false)
    {
        if (Text(key, needed) is not { } text) return null;
        if (Competencies.Period.TryParse(text.Text, out var period) && (orNone || !period.IsZero)) return period;
        problems.Error(text.Place, $"\"{key}\" must be a period such as P24M (24 months), P2Y, P4W or P60D{(orNone ? "" : ", and more than none")}.");
        return null;
    }

    /// <summary>One of the words of an enumeration.</summary>
    public T? Code<T>(string key, bool needed = false)
        where T : struct, Enum
        => Text(key, needed) is { } text ? AsCode<T>(text, key) : null;

    /// <summary>One of the words of an enumeration.</summary>
    public T? AsCode<T>(YamlText text, string key)
        where T : struct, Enum
    {
        if (Codes<T>.TryParse(text.Text, out var member)) return member;
        problems.Error(text.Place, $"\"{Shown(text.Text)}\" is no {key}: write one of {Codes<T>.All}.");
        return null;
    }

    private Duration? AsDuration(YamlText text, string key)
    {
        if (Sequencing.Procedures.Duration.TryParse(text.Text, out var duration)) return duration;
        problems.Error(text.Place, $"\"{key}\" must be a time with its unit, such as 90 s, 1.5 min or 2 h.");
        return null;
    }

    /// <summary>A text that is not empty.</summary>
    public YamlText? AsText(YamlNode node, string name)
    {
        if (node is YamlText { IsEmpty: false } text) return text;
        problems.Error(node.Place, node is YamlText ? $"{name} is empty: write it, or remove it." : $"{name} must be a text; here is {Described(node)}.");
        return null;
    }

    private bool IsId(YamlText text)
    {
        if (text.Text.Length <= 100 && text.Text.All(c => c is >= 'a' and <= 'z' or >= '0' and <= '9' or '-')) return true;
        problems.Error(text.Place, $"\"{Shown(text.Text)}\" is no id: use lower-case letters, digits and hyphens alone.");
        return false;
    }

    private static string Described(YamlNode node) => node is YamlText { IsEmpty: true } ? "nothing" : node.Kind;

    /// <summary>A text of an author's as a sentence shows it: cut where it is long, on one line.</summary>
    public static string Shown(string text)
    {
        var line = string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));
        if (line.Length <= 60) return line;
        return line[..(char.IsHighSurrogate(line[59]) ? 59 : 60)] + "…";
    }

    private static string Nearest(string key, string[] known)
    {
        var nearest = known.MinBy(other => Distance(key, other));
        return nearest is not null && key.Length < 40 && Distance(key, nearest) <= 2
            ? $": did you mean \"{nearest}\"?"
            : $"; it may have {string.Join(", ", known)}.";
    }

    // Levenshtein's distance: how many letters to change, add or drop.
    private static int Distance(string a, string b)
    {
        if (Math.Abs(a.Length - b.Length) > 2) return 3;
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var corner = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
                (corner, row[j]) = (row[j], Math.Min(Math.Min(row[j], row[j - 1]) + 1, corner + (a[i - 1] == b[j - 1] ? 0 : 1)));
        }

        return row[^1];
    }
}
