using System.Text;
using Training.Sequencing;

namespace Training.Content.Writing;

/// <summary>
/// A procedure as sentences that are picked together. An edit changes the text of the file at one place and nothing else,
/// so the text and the form always agree, and what the form does not know is never lost.
/// </summary>
public static class ProcedureForm
{
    /// <summary>The text with one edit made in it.</summary>
    /// <param name="text">The text of the file.</param>
    /// <param name="edit">The edit.</param>
    public static Outcome<string, Refusal> Apply(string text, ProcedureEdit edit)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(edit);
        if (YamlSpans.Read(text) is not { } root) return Unreadable;
        var edited = edit switch
        {
            ProcedureEdit.SetText set => SetText(text, root, set),
            ProcedureEdit.SetFlag set => SetFlag(text, root, set),
            ProcedureEdit.SetList set => SetList(text, root, set),
            ProcedureEdit.SetFacts set => SetFacts(text, root, set),
            ProcedureEdit.Add add => YamlEditing.Add(text, root, KeyOf(add.Part), Fields(add.Fields), asBlock: add.Part is ProcedurePart.Rule or ProcedurePart.Decoy),
            ProcedureEdit.AddFact add => AddFact(text, root, add),
            ProcedureEdit.Remove remove => Remove(text, root, remove),
            ProcedureEdit.MoveDown move => MoveDown(text, root, move),
            _ => null,
        };
        if (edited is null) return new Refusal("That part is not there any more: look at the text again.");
        return YamlSpans.Read(edited) is null ? Unreadable : edited;
    }

    /// <summary>The parts of a procedure as its text has them; null where the text is no YAML.</summary>
    /// <param name="text">The text of the file.</param>
    public static FormParts? Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (YamlSpans.Read(text) is not { } root) return null;
        var facts = root.Find("facts")?.Value is SpannedMap map
            ? map.Fields.Select(field => (field.Key.Text, (IReadOnlyList<string>)((field.Value as SpannedList)?.Items.OfType<SpannedText>().Select(item => item.Text).ToList() ?? []))).ToList()
            : [];
        return new(facts, Of(ProcedurePart.Step), Of(ProcedurePart.Decoy), Of(ProcedurePart.Rule));

        IReadOnlyList<FormEntry> Of(ProcedurePart part) =>
            [.. Entries(root, part)?.Items.OfType<SpannedMap>().Select(FormEntry.Of).OfType<FormEntry>() ?? []];
    }

    /// <summary>An id made of the words of a text that no other part has.</summary>
    /// <param name="parts">The parts that there are.</param>
    /// <param name="words">The words.</param>
    public static string NewId(FormParts parts, string words)
    {
        ArgumentNullException.ThrowIfNull(parts);
        ArgumentNullException.ThrowIfNull(words);
        var plain = new StringBuilder();
        foreach (var letter in words.Normalize(NormalizationForm.FormD).ToLowerInvariant())
            if (letter is >= 'a' and <= 'z' or >= '0' and <= '9') plain.Append(letter);
            else if (letter == ' ' && plain.Length > 0 && plain[^1] != '-') plain.Append('-');
        string[] named = plain.ToString().Split('-', StringSplitOptions.RemoveEmptyEntries);
        var id = named.Length == 0 ? "part" : string.Join('-', named.Take(4));
        HashSet<string> taken = [.. parts.Steps.Concat(parts.Decoys).Concat(parts.Rules).Select(entry => entry.Id)];
        if (!taken.Contains(id)) return id;
        for (var number = 2; ; number++)
            if (!taken.Contains($"{id}-{number}")) return $"{id}-{number}";
    }

    private static Refusal Unreadable { get; } = new("The text cannot be read as it stands: mend its errors there first.");

    private static string? SetText(string text, SpannedMap root, ProcedureEdit.SetText set)
    {
        if (Find(root, set.Part, set.Id) is not { } map) return null;
        if (string.IsNullOrWhiteSpace(set.Value)) return YamlEditing.Without(text, map, set.Key);
        var value = set.Value.Trim();
        return map.Find(set.Key)?.Value is SpannedText same && same.Text == value ? text : YamlEditing.Set(text, map, set.Key, YamlEditing.Written(value));
    }

    private static string? SetFlag(string text, SpannedMap root, ProcedureEdit.SetFlag set)
    {
        if (Find(root, set.Part, set.Id) is not { } map) return null;
        var isSet = map.Find(set.Key)?.Value is SpannedText { Text: "true" };
        if (isSet == set.Value) return text;
        return set.Value ? YamlEditing.Set(text, map, set.Key, "true") : YamlEditing.Without(text, map, set.Key);
    }

    private static string? SetList(string text, SpannedMap root, ProcedureEdit.SetList set)
    {
        if (Find(root, set.Part, set.Id) is not { } map) return null;
        var same = map.Find(set.Key)?.Value switch
        {
            SpannedList list => list.Items.OfType<SpannedText>().Select(item => item.Text),
            SpannedText one => [one.Text],
            _ => [],
        };
        if (same.SequenceEqual(set.Values)) return text;
        return set.Values.Count == 0 ? YamlEditing.Without(text, map, set.Key) : YamlEditing.Set(text, map, set.Key, YamlEditing.Written(set.Values));
    }

    private static string? SetFacts(string text, SpannedMap root, ProcedureEdit.SetFacts set)
    {
        if (Find(root, set.Part, set.Id) is not { } map) return null;
        var same = map.Find(set.Key)?.Value is SpannedMap facts ? facts.Fields.Select(field => (field.Key.Text, (field.Value as SpannedText)?.Text ?? "")) : [];
        if (same.SequenceEqual(set.Values)) return text;
        return set.Values.Count == 0
            ? YamlEditing.Without(text, map, set.Key)
            : YamlEditing.Set(text, map, set.Key, Facts(set.Values));
    }

    private static string AddFact(string text, SpannedMap root, ProcedureEdit.AddFact add)
    {
        var values = YamlEditing.Written(add.Values);
        return root.Find("facts")?.Value is SpannedMap facts
            ? YamlEditing.Set(text, facts, add.Id, values)
            : YamlEditing.Set(text, root, "facts", $"{{ {add.Id}: {values} }}");
    }

    private static string? Remove(string text, SpannedMap root, ProcedureEdit.Remove remove)
    {
        if (remove.Part == ProcedurePart.Fact)
        {
            if (root.Find("facts")?.Value is not SpannedMap facts || facts.Find(remove.Id) is null) return null;
            return facts.Fields.Count == 1 ? YamlEditing.Without(text, root, "facts") : YamlEditing.Without(text, facts, remove.Id);
        }

        return Entries(root, remove.Part) is { } list && IndexOf(list, remove.Id) is var index and >= 0
            ? YamlEditing.Without(text, root, KeyOf(remove.Part), index)
            : null;
    }

    private static string? MoveDown(string text, SpannedMap root, ProcedureEdit.MoveDown move)
    {
        if (Entries(root, move.Part) is not { } list || IndexOf(list, move.Id) is not (var index and >= 0)) return null;
        return index + 1 < list.Items.Count ? YamlEditing.Swapped(text, list, index) : text;
    }

    private static SpannedMap? Find(SpannedMap root, ProcedurePart part, string id)
    {
        if (part == ProcedurePart.Head) return root;
        return Entries(root, part)?.Items.OfType<SpannedMap>().FirstOrDefault(map => IdOf(map) == id);
    }

    private static SpannedList? Entries(SpannedMap root, ProcedurePart part) => root.Find(KeyOf(part))?.Value as SpannedList;

    private static int IndexOf(SpannedList list, string id)
    {
        for (var index = 0; index < list.Items.Count; index++)
            if (list.Items[index] is SpannedMap map && IdOf(map) == id) return index;
        return -1;
    }

    private static string? IdOf(SpannedMap map) => (map.Find("id")?.Value as SpannedText)?.Text;

    private static string KeyOf(ProcedurePart part) => part switch
    {
        ProcedurePart.Step => "steps",
        ProcedurePart.Decoy => "decoys",
        ProcedurePart.Fact => "facts",
        _ => "rules",
    };

    private static IReadOnlyList<string> Fields(IReadOnlyList<(string Key, object Value)> fields) => [.. fields.Select(field => $"{field.Key}: {field.Value switch
    {
        IReadOnlyList<string> ids => YamlEditing.Written(ids),
        IReadOnlyList<(string Fact, string Value)> facts => Facts(facts),
        bool flag => flag ? "true" : "false",
        var value => YamlEditing.Written($"{value}"),
    }}")];

    private static string Facts(IReadOnlyList<(string Fact, string Value)> facts) =>
        $"{{ {string.Join(", ", facts.Select(fact => $"{YamlEditing.Written(fact.Fact)}: {YamlEditing.Written(fact.Value)}"))} }}";
}

/// <summary>A part of a procedure as its text has it, sound or not.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Values">What stands at each key: a text, several, or facts written as <c>fact=value</c>.</param>
public sealed record FormEntry(string Id, IReadOnlyDictionary<string, IReadOnlyList<string>> Values)
{
    /// <summary>The text at a key; empty where there is none.</summary>
    /// <param name="key">The key.</param>
    public string Text(string key) => Values.GetValueOrDefault(key) is [var text, ..] ? text : "";

    /// <summary>The texts at a key.</summary>
    /// <param name="key">The key.</param>
    public IReadOnlyList<string> Texts(string key) => Values.GetValueOrDefault(key) ?? [];

    internal static FormEntry? Of(SpannedMap map)
    {
        if (map.Find("id")?.Value is not SpannedText id) return null;
        var values = new Dictionary<string, IReadOnlyList<string>>(StringComparer.Ordinal);
        foreach (var field in map.Fields)
            values.TryAdd(field.Key.Text, field.Value switch
            {
                SpannedList list => [.. list.Items.OfType<SpannedText>().Select(item => item.Text)],
                SpannedMap facts => [.. facts.Fields.Select(fact => $"{fact.Key.Text}={(fact.Value as SpannedText)?.Text}")],
                SpannedText text => [text.Text],
                _ => [],
            });
        return new(id.Text, values);
    }
}

/// <summary>All parts of a procedure as its text has them.</summary>
/// <param name="Facts">The facts with their values.</param>
/// <param name="Steps">The steps.</param>
/// <param name="Decoys">The decoys.</param>
/// <param name="Rules">The rules.</param>
public sealed record FormParts(
    IReadOnlyList<(string Id, IReadOnlyList<string> Values)> Facts, IReadOnlyList<FormEntry> Steps, IReadOnlyList<FormEntry> Decoys, IReadOnlyList<FormEntry> Rules)
{
    /// <summary>What a step or a decoy says; its id where there is none of it.</summary>
    /// <param name="id">Its id.</param>
    public string NameOf(string id) => Steps.Concat(Decoys).FirstOrDefault(entry => entry.Id == id)?.Text("do") is { Length: > 0 } name ? name : id;
}

/// <summary>A sort of part that a procedure has.</summary>
public enum ProcedurePart
{
    /// <summary>What stands at the head: title and revision.</summary>
    Head,

    /// <summary>A fact.</summary>
    Fact,

    /// <summary>A step.</summary>
    Step,

    /// <summary>A decoy.</summary>
    Decoy,

    /// <summary>A rule.</summary>
    Rule,
}

/// <summary>One change that the form makes in the text of a procedure.</summary>
public abstract record ProcedureEdit
{
    private ProcedureEdit()
    {
    }

    /// <summary>Writes a text or a word at a key; an empty one takes the key out.</summary>
    /// <param name="Part">The sort of part.</param>
    /// <param name="Id">Its id; of the head none.</param>
    /// <param name="Key">The key.</param>
    /// <param name="Value">The value.</param>
    public sealed record SetText(ProcedurePart Part, string Id, string Key, string Value) : ProcedureEdit;

    /// <summary>Says at a key that something is so; the key is taken out where it is not.</summary>
    /// <param name="Part">The sort of part.</param>
    /// <param name="Id">Its id.</param>
    /// <param name="Key">The key.</param>
    /// <param name="Value">Whether it is so.</param>
    public sealed record SetFlag(ProcedurePart Part, string Id, string Key, bool Value) : ProcedureEdit;

    /// <summary>Writes a list of ids at a key; an empty one takes the key out.</summary>
    /// <param name="Part">The sort of part.</param>
    /// <param name="Id">Its id.</param>
    /// <param name="Key">The key.</param>
    /// <param name="Values">The ids.</param>
    public sealed record SetList(ProcedurePart Part, string Id, string Key, IReadOnlyList<string> Values) : ProcedureEdit;

    /// <summary>Writes facts with their values at a key; none take the key out.</summary>
    /// <param name="Part">The sort of part.</param>
    /// <param name="Id">Its id.</param>
    /// <param name="Key">The key.</param>
    /// <param name="Values">The facts and values.</param>
    public sealed record SetFacts(ProcedurePart Part, string Id, string Key, IReadOnlyList<(string Fact, string Value)> Values) : ProcedureEdit;

    /// <summary>Adds a step, a decoy or a rule behind the others.</summary>
    /// <param name="Part">The sort of part.</param>
    /// <param name="Fields">Its keys in their order: texts, flags, lists of ids or facts with values.</param>
    public sealed record Add(ProcedurePart Part, IReadOnlyList<(string Key, object Value)> Fields) : ProcedureEdit;

    /// <summary>Adds a fact.</summary>
    /// <param name="Id">Its id.</param>
    /// <param name="Values">Its values, the first of which holds at the start.</param>
    public sealed record AddFact(string Id, IReadOnlyList<string> Values) : ProcedureEdit;

    /// <summary>Takes a part out.</summary>
    /// <param name="Part">The sort of part.</param>
    /// <param name="Id">Its id.</param>
    public sealed record Remove(ProcedurePart Part, string Id) : ProcedureEdit;

    /// <summary>Puts a part behind the next one.</summary>
    /// <param name="Part">The sort of part.</param>
    /// <param name="Id">Its id.</param>
    public sealed record MoveDown(ProcedurePart Part, string Id) : ProcedureEdit;
}
