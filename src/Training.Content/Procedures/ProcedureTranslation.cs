using Training.Content.Yaml;
using Training.Sequencing.Procedures;

namespace Training.Content.Procedures;

/// <summary>
/// The texts of a procedure in another language: the same file with the texts alone, every step, decoy and rule named
/// by its id.
/// </summary>
internal sealed class ProcedureTranslation(ContentFile file, string language)
{
    private sealed record Part(Place Place, YamlText? Do, YamlText? Because, YamlText? Otherwise);

    public ProblemList Problems { get; } = new(file.Path);

    /// <summary>The procedure in the other language; its worth depends on no error being reported.</summary>
    public TranslatedProcedure Read(Procedure procedure)
    {
        var translated = procedure;
        if (PlainText.IsSound(file, Problems)
            && YamlTree.Read(file.Text, Problems) is { } root
            && Fields.Open(root, "The texts of a procedure", Problems, "id", "title", "facts", "steps", "decoys", "rules") is { } fields)
            translated = Translate(procedure, fields);
        return new(language, translated, file);
    }

    private Procedure Translate(Procedure procedure, Fields fields)
    {
        if (fields.Id("id") is { } id && id.Text != procedure.Id.Value)
            Problems.Error(id.Place, $"These are the texts of \"{procedure.Id}\": write that id, or leave the key out.");
        var title = fields.Text("title", needed: true);
        Untranslated.Report(title, procedure.Title, Problems);
        var steps = Parts(fields, "steps", ["id", "do"]);
        var decoys = Parts(fields, "decoys", ["id", "do", "because", "otherwise"]);
        var rules = Parts(fields, "rules", ["id", "because", "otherwise"]);
        var translated = procedure with
        {
            Title = title?.Text ?? procedure.Title,
            Facts = Facts(procedure, fields),
            Steps = [.. procedure.Steps.Select(step => Take(steps, step.Id.Value, "step", fields.Place) is { } part
                ? step with { Do = Text(part, "do", part.Do, step.Do) ?? "" }
                : step)],
            Decoys = [.. procedure.Decoys.Select(decoy => Take(decoys, decoy.Id.Value, "decoy", fields.Place) is { } part
                ? decoy with
                {
                    Do = Text(part, "do", part.Do, decoy.Do) ?? "",
                    Because = Text(part, "because", part.Because, decoy.Because),
                    Otherwise = Text(part, "otherwise", part.Otherwise, decoy.Otherwise),
                }
                : decoy)],
            Rules = [.. procedure.Rules.Select(rule => Take(rules, rule.Id.Value, "rule", fields.Place) is { } part
                ? rule with
                {
                    Because = Text(part, "because", part.Because, rule.Because),
                    Otherwise = Text(part, "otherwise", part.Otherwise, rule.Otherwise),
                }
                : rule)],
        };
        foreach (var (sort, left) in new[] { ("step", steps), ("decoy", decoys), ("rule", rules) })
            foreach (var (name, part) in left)
                Problems.Error(part.Place, $"The procedure has no {sort} \"{name}\": mend the id, or remove the texts.");
        return translated;
    }

    // What a fact is called and then its values, in the order of the procedure: lock: [candado, puesto, quitado].
    private List<Fact> Facts(Procedure procedure, Fields fields)
    {
        var left = fields.Entries("facts").ToDictionary(entry => entry.Key.Text, entry => entry.Value, StringComparer.Ordinal);
        var facts = procedure.Facts.Select(fact =>
        {
            if (!left.Remove(fact.Id.Value, out var node)) return fact;
            if (node is YamlList list && list.Items.OfType<YamlText>().Where(text => !text.IsEmpty).ToList() is { } words && words.Count == fact.Values.Count + 1 && list.Items.Count == words.Count)
                return fact with { Called = words[0].Text, ValuesCalled = [.. words.Skip(1).Select(word => word.Text)] };
            Problems.Error(node.Place, $"The fact \"{fact.Id}\" needs a list: what it is called, then its {fact.Values.Count} values in their order.");
            return fact;
        }).ToList();
        foreach (var (name, node) in left)
            Problems.Error(node.Place, $"The procedure has no fact \"{name}\": mend the id, or remove the texts.");
        return facts;
    }

    private Dictionary<string, Part> Parts(Fields fields, string key, string[] known)
    {
        Dictionary<string, Part> parts = new(StringComparer.Ordinal);
        foreach (var node in fields.Items(key))
        {
            if (Fields.Open(node, $"An entry of {key}", Problems, known) is not { } entry || entry.Id("id", needed: true) is not { } id) continue;
            var part = new Part(entry.Place, entry.Text("do"), entry.Text("because"), entry.Text("otherwise"));
            if (!parts.TryAdd(id.Text, part)) Problems.Error(id.Place, $"The texts of \"{id.Text}\" are here twice: keep one.");
        }

        return parts;
    }

    private Part? Take(Dictionary<string, Part> parts, string id, string sort, Place whole)
    {
        if (parts.Remove(id, out var part)) return part;
        Problems.Hold(whole, $"The texts of the {sort} \"{id}\" are missing: add them.");
        return null;
    }

    private string? Text(Part part, string key, YamlText? text, string? original)
    {
        if (original is not null && text is null) Problems.Hold(part.Place, $"\"{key}\" is missing: the procedure has it in its own language.");
        if (original is null && text is not null) Problems.Error(part.Place, $"\"{key}\" translates nothing: the procedure has none.");
        Untranslated.Report(text, original, Problems);
        return text?.Text ?? original;
    }
}
