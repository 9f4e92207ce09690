using Training.Content.Writing;
using Training.Sequencing;

namespace Training.Web.Features.DraftForms;

/// <summary>Reads which edits of a procedure a form asks for.</summary>
internal static class EditForm
{
    private static readonly string[] StepTexts = ["do", "takes", "harm", "severity"];
    private static readonly string[] RuleTexts = ["at-least", "because", "otherwise", "harm", "severity"];
    private static readonly string[] DecoyTexts = ["do", "because", "otherwise", "harm", "severity"];

    public static Outcome<IReadOnlyList<ProcedureEdit>, Refusal> Read(string edit, FormParts parts, IFormCollection form)
    {
        if (edit.Split('|') is not [var act, var sort, var id]) return Unknown;
        return (act, sort) switch
        {
            ("set", "Step") => Edits([.. Texts(ProcedurePart.Step, sort, id, StepTexts, form), Flag("wait"), Flag("optional"), Facts(ProcedurePart.Step, "sets")]),
            ("set", "Rule") when parts.Rules.FirstOrDefault(rule => rule.Id == id) is { } rule => Edits(Rule(rule)),
            ("set", "Decoy") => Edits(Texts(ProcedurePart.Decoy, sort, id, DecoyTexts, form)),
            ("add", "State" or "Step" or "Rule" or "Decoy" or "Fact") => NewParts.Read(sort, parts, form),
            ("remove", _) when Enum.TryParse<ProcedurePart>(sort, out var part) => Edits(new ProcedureEdit.Remove(part, id)),
            ("down", "Step") => Edits(new ProcedureEdit.MoveDown(ProcedurePart.Step, id)),
            ("up", "Step") => parts.Steps.TakeWhile(step => step.Id != id).LastOrDefault() is { } before
                ? Edits(new ProcedureEdit.MoveDown(ProcedurePart.Step, before.Id))
                : Edits(),
            _ => Unknown,
        };

        ProcedureEdit Flag(string key) => new ProcedureEdit.SetFlag(ProcedurePart.Step, id, key, form.ContainsKey($"{sort}|{id}|{key}"));

        ProcedureEdit Facts(ProcedurePart part, string key) => new ProcedureEdit.SetFacts(part, id, key, FactsOf(form, $"{sort}|{id}|{key}"));

        IEnumerable<ProcedureEdit> Rule(FormEntry rule)
        {
            var isState = rule.Values.ContainsKey("step") || rule.Values.ContainsKey("only-while");
            if (isState)
            {
                yield return new ProcedureEdit.SetText(ProcedurePart.Rule, id, "step", form[$"{sort}|{id}|step"].ToString());
                yield return Facts(ProcedurePart.Rule, "only-while");
            }
            else
            {
                foreach (var key in new[] { "first", "then" })
                    yield return new ProcedureEdit.SetList(ProcedurePart.Rule, id, key, Ids(form, $"{sort}|{id}|{key}"));
            }

            foreach (var text in Texts(ProcedurePart.Rule, sort, id, RuleTexts, form)) yield return text;
        }
    }

    internal static Outcome<IReadOnlyList<ProcedureEdit>, Refusal> Edits(params IEnumerable<ProcedureEdit> edits) => edits.ToList();

    internal static Refusal Unknown { get; } = new("That part is not there any more: look at the text again.");

    internal static IReadOnlyList<string> Ids(IFormCollection form, string name) =>
        [.. form[name].OfType<string>().Where(value => value.Length > 0).Distinct()];

    internal static IReadOnlyList<(string Fact, string Value)> FactsOf(IFormCollection form, string name) =>
        [.. Ids(form, name).Select(text => text.Split('=', 2)).Where(pair => pair.Length == 2).Select(pair => (pair[0], pair[1])).DistinctBy(pair => pair.Item1)];

    // A key that the form did not show is left as it stands.
    private static IEnumerable<ProcedureEdit> Texts(ProcedurePart part, string sort, string id, string[] keys, IFormCollection form) =>
        keys.Where(key => form.ContainsKey($"{sort}|{id}|{key}"))
            .Select(key => new ProcedureEdit.SetText(part, id, key, form[$"{sort}|{id}|{key}"].ToString()));
}

/// <summary>Reads a part that is to be added.</summary>
internal static class NewParts
{
    public static Outcome<IReadOnlyList<ProcedureEdit>, Refusal> Read(string sort, FormParts parts, IFormCollection form)
    {
        var (text, because, otherwise) = (Text("do"), Text("because"), Text("otherwise"));
        if (sort == "Fact")
        {
            string[] values = Text("values").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            var id = ProcedureForm.NewId(new([], [], [], []), Text("id"));
            if (Text("id").Length == 0 || values.Length == 0) return new Refusal("Write what has a state, and its states.");
            if (parts.Facts.Any(fact => fact.Id == id)) return new Refusal($"There is already “{id}”.");
            return EditForm.Edits(new ProcedureEdit.AddFact(id, values));
        }

        if (sort == "Step")
            return text.Length == 0 ? new Refusal("Write what is done.") : Added(ProcedurePart.Step, text, [("do", text)]);
        if (sort == "Decoy")
            return text.Length == 0 ? new Refusal("Write what is done.") : Added(ProcedurePart.Decoy, text, [("do", text), .. Why()]);
        if (sort == "State")
        {
            var facts = EditForm.FactsOf(form, "State||only-while");
            return Text("step").Length == 0 || facts.Count == 0
                ? new Refusal("Choose the step, and what must hold.")
                : Added(ProcedurePart.Rule, $"{Text("step")} {facts[0].Value}", [("step", Text("step")), ("only-while", facts), .. Why()]);
        }

        var (first, then) = (EditForm.Ids(form, "Rule||first"), EditForm.Ids(form, "Rule||then"));
        return first.Count == 0 || then.Count == 0
            ? new Refusal("Choose the two steps.")
            : Added(ProcedurePart.Rule, $"{first[0]} before {then[0]}", [("first", first), ("then", then), .. Why()]);

        string Text(string key) => form[$"{sort}||{key}"].ToString().Trim();

        IEnumerable<(string Key, object Value)> Why() => new[] { ("because", because), ("otherwise", otherwise), ("harm", Text("harm")), ("severity", Text("severity")) }
            .Where(field => field.Item2.Length > 0).Select(field => (field.Item1, (object)field.Item2));

        Outcome<IReadOnlyList<ProcedureEdit>, Refusal> Added(ProcedurePart part, string words, IEnumerable<(string Key, object Value)> fields) =>
            EditForm.Edits(new ProcedureEdit.Add(part, [("id", ProcedureForm.NewId(parts, words.Replace('-', ' '))), .. fields]));
    }
}
