using Training.Content.Yaml;
using Training.Sequencing.Procedures;

namespace Training.Content.Procedures;

/// <summary>Makes a procedure of a YAML tree, and remembers where its parts stand.</summary>
internal sealed class ProcedureParser(ProblemList problems, ProcedureDemands demands)
{
    private readonly HashSet<string> variants = new(StringComparer.Ordinal);
    private readonly Dictionary<string, IReadOnlyList<string>> facts = new(StringComparer.Ordinal);
    private readonly HashSet<string> steps = new(StringComparer.Ordinal);
    private readonly HashSet<string> decoys = new(StringComparer.Ordinal);
    private readonly HashSet<string> rules = new(StringComparer.Ordinal);
    private int textsMissing;

    public ProcedurePlaces Places { get; } = new();

    /// <summary>Whether all that an order depends on was read, so that the engine can say more; a missing text does not matter.</summary>
    public bool IsWhole { get; private set; }

    /// <summary>Reads a procedure; what it gives is worth using only where no error was reported.</summary>
    public Procedure? Parse(YamlNode root)
    {
        var fields = Fields.Open(
            root, "A procedure", problems,
            "id", "title", "revision", "variants", "facts", "steps", "decoys", "rules", "mirrors", "pairs");
        if (fields is null) return null;

        var id = fields.Id("id", needed: true);
        Places.Id = id?.Place ?? fields.Place;
        var title = fields.Text("title", needed: true);
        var revision = fields.Whole("revision", 1, 1_000_000, needed: true);
        var variantIds = fields.Ids("variants");
        variants.UnionWith(variantIds.Select(variant => variant.Text));
        var factList = fields.Entries("facts").Select(entry => Fact(entry.Key, entry.Value)).OfType<Fact>().ToList();
        var stepList = fields.Items("steps", needed: true).Select(Step).OfType<Step>().ToList();
        var decoyList = fields.Items("decoys").Select(Decoy).OfType<Decoy>().ToList();
        var ruleList = fields.Items("rules").Select(Rule).OfType<Rule>().ToList();
        var mirror = Mirror(fields);
        if (id is null || title is null || revision is null) return null;
        IsWhole = problems.All.Count(problem => problem.Level == ProblemLevel.Error) == textsMissing;
        return new(new(id.Text), title.Text, revision.Value)
        {
            Variants = [.. variantIds.Select(variant => new VariantId(variant.Text))],
            Facts = factList,
            Steps = stepList,
            Decoys = decoyList,
            Rules = ruleList,
            Mirror = mirror,
        };
    }

    private Fact? Fact(YamlText name, YamlNode node)
    {
        Places.Add(SubjectKind.Fact, name.Text, name.Place);
        if (node is not YamlList { Items.Count: > 0 } list)
        {
            problems.Error(node.Place, $"The fact \"{Fields.Shown(name.Text)}\" needs a list of its values, the first of which holds at the start, such as [on, off].");
            return null;
        }

        List<string> values = [];
        foreach (var item in list.Items)
        {
            if (item is not YamlText { IsEmpty: false } value)
                problems.Error(item.Place, $"A value of the fact \"{Fields.Shown(name.Text)}\" must be a text that is not empty.");
            else if (values.Contains(value.Text, StringComparer.Ordinal))
                problems.Error(value.Place, $"The value \"{Fields.Shown(value.Text)}\" is in the list twice: keep one.");
            else
                values.Add(value.Text);
        }

        facts[name.Text] = values;
        return new(new(name.Text), [.. values.Select(value => new FactValue(value))]);
    }

    private Step? Step(YamlNode node)
    {
        var fields = Fields.Open(
            node, "A step", problems,
            "id", "do", "takes", "sets", "wait", "optional", "one-of", "variants", "harm", "severity");
        if (fields is null) return null;
        var id = NewId(fields, SubjectKind.Step);
        var text = fields.Text("do", needed: true);
        var step = new Step(new(id ?? ""), text?.Text ?? "")
        {
            Takes = fields.Duration("takes") ?? default,
            IsWait = fields.Flag("wait"),
            IsOptional = fields.Flag("optional"),
            Choice = fields.Id("one-of") is { } choice ? new ChoiceId(choice.Text) : null,
            Variants = [.. fields.Ids("variants").Where(IsVariant).Select(variant => new VariantId(variant.Text))],
            Sets = Settings(fields, "sets"),
            Stakes = StakesOf(fields),
        };
        return id is null ? null : step;
    }

    private Decoy? Decoy(YamlNode node)
    {
        var fields = Fields.Open(node, "A decoy", problems, "id", "do", "because", "otherwise", "harm", "severity");
        if (fields is null) return null;
        var id = NewId(fields, SubjectKind.Decoy);
        var text = fields.Text("do", needed: true);
        AskFor(fields, id is null ? "The decoy" : $"The decoy \"{id}\"");
        var decoy = new Decoy(new(id ?? ""), text?.Text ?? "")
        {
            Because = fields.Text("because")?.Text,
            Otherwise = fields.Text("otherwise")?.Text,
            Stakes = StakesOf(fields),
        };
        return id is null ? null : decoy;
    }

    private Rule? Rule(YamlNode node)
    {
        var fields = Fields.Open(
            node, "A rule", problems,
            "id", "first", "then", "at-least", "step", "only-while", "because", "otherwise", "harm", "severity");
        if (fields is null) return null;
        var id = NewId(fields, SubjectKind.Rule);
        AskFor(fields, id is null ? "The rule" : $"The rule \"{id}\"");
        var rule = SortOf(fields, id ?? "");
        var (because, otherwise, stakes) = (fields.Text("because")?.Text, fields.Text("otherwise")?.Text, StakesOf(fields));
        return id is null || rule is null ? null : rule with { Because = because, Otherwise = otherwise, Stakes = stakes };
    }

    private Rule? SortOf(Fields fields, string id)
    {
        var isOrder = fields.Has("first") || fields.Has("then") || fields.Has("at-least");
        var isState = fields.Has("step") || fields.Has("only-while");
        if (isOrder == isState)
        {
            problems.Error(fields.Place, isOrder
                ? "A rule says either first and then, or step and only-while: make two rules of this one."
                : "A rule needs first and then (what comes before what), or step and only-while (what must hold at a step).");
            return null;
        }

        if (isOrder)
        {
            return new OrderRule(new(id), Steps(fields.Ids("first", needed: true, orOne: true)), Steps(fields.Ids("then", needed: true, orOne: true)))
            {
                AtLeast = fields.Duration("at-least"),
            };
        }

        return new StateRule(
            new(id),
            fields.Id("step", needed: true) is { } step && IsStep(step) ? new(step.Text) : default,
            Settings(fields, "only-while", needed: true));
    }

    private Mirror? Mirror(Fields fields)
    {
        var of = fields.Id("mirrors");
        if (fields.Holds("pairs") && !fields.Has("mirrors"))
            problems.Error(fields.KeyPlaceOf("pairs"), "\"pairs\" needs \"mirrors\": name the procedure whose steps are undone.");
        List<MirrorPair> pairs = [];
        foreach (var (theirs, value) in fields.Entries("pairs"))
        {
            if (fields.AsText(value, $"The step that undoes \"{Fields.Shown(theirs.Text)}\"") is not { } mine || !IsStep(mine)) continue;
            pairs.Add(new(new(theirs.Text), new(mine.Text)));
            Places.Pairs.Add(theirs.Place);
        }

        if (of is null) return null;
        Places.Mirror = of.Place;
        return new(new(of.Text), pairs);
    }

    private string? NewId(Fields fields, SubjectKind kind)
    {
        if (fields.Id("id", needed: true) is not { } id) return null;
        Places.Add(kind, id.Text, fields.Place);
        var taken = kind == SubjectKind.Rule ? rules.Contains(id.Text) : steps.Contains(id.Text) || decoys.Contains(id.Text);
        if (taken)
        {
            problems.Error(id.Place, kind == SubjectKind.Rule
                ? $"There is already a rule \"{id.Text}\": give this one another id."
                : $"There is already a step or decoy \"{id.Text}\": give this one another id; both share one name space.");
        }

        (kind switch { SubjectKind.Rule => rules, SubjectKind.Step => steps, _ => decoys }).Add(id.Text);
        return id.Text;
    }

    private void AskFor(Fields fields, string what)
    {
        if (demands != ProcedureDemands.ToPublish) return;
        if (!fields.Has("because")) Ask("because", "why");
        else if (IsOpen("because")) Justify("because", "why");
        if (!fields.Has("otherwise")) Ask("otherwise", "what happens");
        else if (IsOpen("otherwise")) Justify("otherwise", "what happens");

        bool IsOpen(string key) => fields.Node(key, needed: false) is YamlText text && ToBeJustified.Is(text.Text);

        void Justify(string key, string saying) =>
            problems.Hold(fields.KeyPlaceOf(key), $"{what} is still to be justified: tell the technician {saying}, or take it out.");

        void Ask(string key, string saying)
        {
            problems.Error(fields.Place, $"{what} needs \"{key}\": tell the technician {saying}.");
            textsMissing++;
        }
    }

    private List<FactSetting> Settings(Fields fields, string key, bool needed = false)
    {
        List<FactSetting> settings = [];
        foreach (var (name, node) in fields.Entries(key, needed))
        {
            if (!facts.TryGetValue(name.Text, out var values))
                problems.Error(name.Place, $"There is no fact \"{Fields.Shown(name.Text)}\": add it under facts, or mend the name.");
            else if (fields.AsText(node, $"The value of \"{name.Text}\"") is not { } value)
                continue;
            else if (!values.Contains(value.Text, StringComparer.Ordinal))
                problems.Error(value.Place, $"The fact \"{name.Text}\" has no value \"{Fields.Shown(value.Text)}\": write one of {string.Join(", ", values)}.");
            else
                settings.Add(new(new(name.Text), new(value.Text)));
        }

        return settings;
    }

    private List<StepId> Steps(IReadOnlyList<YamlText> ids) => [.. ids.Where(IsStep).Select(id => new StepId(id.Text))];

    private bool IsStep(YamlText id)
    {
        if (steps.Contains(id.Text)) return true;
        problems.Error(id.Place, decoys.Contains(id.Text)
            ? $"\"{id.Text}\" is a decoy, which is never right: name a step."
            : $"There is no step \"{Fields.Shown(id.Text)}\": add it under steps, or mend the name.");
        return false;
    }

    private bool IsVariant(YamlText id)
    {
        if (variants.Contains(id.Text)) return true;
        problems.Error(id.Place, $"There is no variant \"{id.Text}\": add it to the procedure's variants, or mend the name.");
        return false;
    }

    private static Stakes StakesOf(Fields fields) => new(
        fields.Code<Harm>("harm") ?? Stakes.Default.Harm,
        fields.Code<Severity>("severity") ?? Stakes.Default.Severity);
}
