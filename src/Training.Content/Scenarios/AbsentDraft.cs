using Training.Content.Yaml;
using Training.Sequencing.Procedures;

namespace Training.Content.Scenarios;

/// <summary>A step that cannot be done in a scenario, with its place and its texts in one language.</summary>
internal sealed record AbsentDraft(Place Place, YamlText Id, YamlText? Because, YamlText? Otherwise)
{
    public AbsentStep ToStep() => new(new(Id.Text), Because?.Text ?? "", Otherwise?.Text ?? "");

    public static IReadOnlyList<AbsentDraft> ReadAll(Fields fields, ProblemList problems) => Entries(fields, problems, areTextsNeeded: true);

    /// <summary>The texts in another language; where one is missing, that of the default language stands, and it is reported.</summary>
    public static IReadOnlyList<AbsentDraft> ReadTexts(Fields fields, IReadOnlyList<AbsentDraft> originals, ProblemList problems)
    {
        var texts = Entries(fields, problems, areTextsNeeded: false).ToDictionary(entry => entry.Id.Text, StringComparer.Ordinal);
        AbsentDraft[] translated = [.. originals.Select(original => texts.Remove(original.Id.Text, out var text)
            ? text with
            {
                Because = Taken(text, "because", text.Because, original.Because, problems),
                Otherwise = Taken(text, "otherwise", text.Otherwise, original.Otherwise, problems),
            }
            : Missing(original, fields, problems))];
        foreach (var left in texts.Values)
            problems.Error(left.Id.Place, $"The scenario has no absent step \"{left.Id.Text}\": mend the id, or remove the texts.");
        return translated;
    }

    private static List<AbsentDraft> Entries(Fields fields, ProblemList problems, bool areTextsNeeded)
    {
        List<AbsentDraft> entries = [];
        foreach (var node in fields.Items("absent"))
        {
            if (Fields.Open(node, "An absent step", problems, "id", "because", "otherwise") is not { } entry || entry.Id("id", needed: true) is not { } id) continue;
            var (because, otherwise) = (entry.Text("because", areTextsNeeded), entry.Text("otherwise", areTextsNeeded));
            if (entries.Exists(other => other.Id.Text == id.Text)) problems.Error(id.Place, $"The step \"{id.Text}\" is absent twice: keep one.");
            else entries.Add(new(entry.Place, id, because, otherwise));
        }

        return entries;
    }

    private static AbsentDraft Missing(AbsentDraft original, Fields fields, ProblemList problems)
    {
        problems.Hold(fields.PlaceOf("absent"), $"The texts of the absent step \"{original.Id.Text}\" are missing: add them.");
        return original;
    }

    private static YamlText? Taken(AbsentDraft entry, string key, YamlText? text, YamlText? original, ProblemList problems)
    {
        if (text is null) problems.Hold(entry.Place, $"\"{key}\" is missing: the scenario has it in its own language.");
        Untranslated.Report(text, original?.Text, problems);
        return text ?? original;
    }
}
