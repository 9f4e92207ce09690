using Training.Content.Scenarios;
using Training.Content.Yaml;
using Training.Sequencing.Procedures;

namespace Training.Content.Competencies;

/// <summary>A competency as its file has it, sound or not.</summary>
internal sealed class CompetencyDraft(ContentFile file, string id)
{
    private string title = "";
    private Duration? time;
    private int? passMark;
    private Period? waitAfterFailed;
    private Period? within;
    private Period? validFor;
    private Period? renewFrom;
    private Period? confirmEvery;
    private RevisionRule onNewRevision = new RevisionRule.Keep();

    public string Id => id;

    public string Title => title;

    public ProblemList Problems { get; } = new(file.Path);

    public List<(CompetencyTitle? Title, ProblemList Problems)> Translations { get; } = [];

    public IEnumerable<ProblemList> AllProblems => [Problems, .. Translations.Select(translation => translation.Problems)];

    public IReadOnlyList<YamlText> Modules { get; private set; } = [];

    public IReadOnlyList<DrawDraft> Draws { get; private set; } = [];

    public IReadOnlyList<YamlText> Observed { get; private set; } = [];

    public static CompetencyDraft Read(ContentFile file, string id)
    {
        var draft = new CompetencyDraft(file, id);
        if (PlainText.IsSound(file, draft.Problems)
            && YamlTree.Read(file.Text, draft.Problems) is { } root
            && Fields.Open(
                root, "A competency", draft.Problems,
                "id", "title", "modules", "paper", "observed", "valid-for", "renew-from", "confirm-every", "on-new-revision") is { } fields)
            draft.Fill(fields);
        return draft;
    }

    /// <summary>The competency; only where no error stands.</summary>
    public Competency ToCompetency() => new(new(id), title, file)
    {
        Translations = [.. Translations.Select(translation => translation.Title).OfType<CompetencyTitle>()],
        Modules = [.. Modules.Select(module => new Modules.ModuleId(module.Text))],
        Paper = new(
            [.. Draws.Select(draw => new QuestionDraw(draw.Kind, [.. draw.From.Select(scenario => new ScenarioId(scenario.Text))], draw.Count))],
            time!.Value, passMark!.Value, waitAfterFailed!.Value),
        Observed = Observed.Count == 0 ? null : new([.. Observed.Select(procedure => new ProcedureId(procedure.Text))], within!.Value),
        ValidFor = validFor!.Value,
        RenewFrom = renewFrom!.Value,
        ConfirmEvery = confirmEvery,
        OnNewRevision = onNewRevision,
    };

    public void AddTranslation(ContentFile translation, string language)
    {
        var problems = new ProblemList(translation.Path);
        Translations.Add((CompetencyTitle.Read(translation, id, title, language, problems), problems));
    }

    private void Fill(Fields fields)
    {
        if (fields.Id("id", needed: true) is { } written && written.Text != id)
            Problems.Error(written.Place, $"The id \"{written.Text}\" must be the same as the file's name: write \"id: {id}\", or name the file {written.Text}.yaml.");
        title = fields.Text("title", needed: true)?.Text ?? "";
        Modules = fields.Ids("modules", needed: true);
        if (fields.Node("paper", needed: true) is { } paper) FillPaper(paper);
        if (fields.Node("observed", needed: false) is { } observed) FillObserved(observed);
        validFor = fields.Period("valid-for", needed: true);
        renewFrom = fields.Period("renew-from", needed: true);
        confirmEvery = fields.Period("confirm-every");
        if (validFor is { } whole && renewFrom is { } last && IsLonger(last, whole))
            Problems.Error(fields.PlaceOf("renew-from"), $"Renewal would open before the record begins: \"renew-from\" must be shorter than \"valid-for\" ({whole}).");
        if (fields.Node("on-new-revision", needed: false) is { } rule) FillRevisionRule(rule);
    }

    private void FillPaper(YamlNode node)
    {
        if (Fields.Open(node, "The paper", Problems, "questions", "time", "pass-mark", "wait-after-failed") is not { } fields) return;
        Draws = [.. fields.Items("questions", needed: true).Select(item => DrawDraft.Read(item, Problems)).OfType<DrawDraft>()];
        time = fields.Duration("time", needed: true);
        if (time is { } given && given.Seconds < 60) Problems.Error(fields.PlaceOf("time"), "A sitting lasts at least 1 min.");
        passMark = fields.Whole("pass-mark", 1, 100, needed: true);
        waitAfterFailed = fields.Period("wait-after-failed", needed: true, orNone: true);
    }

    private void FillObserved(YamlNode node)
    {
        if (Fields.Open(node, "The observed part", Problems, "procedures", "within") is not { } fields) return;
        Observed = fields.Ids("procedures", needed: true);
        within = fields.Period("within", needed: true);
    }

    private void FillRevisionRule(YamlNode node)
    {
        if (node is YamlText { Text: "keep" }) return;
        if (node is not YamlMap)
            Problems.Error(node.Place, "\"on-new-revision\" is keep, or { renew-within: P60D }.");
        else if (Fields.Open(node, "The rule for a new revision", Problems, "renew-within")?.Period("renew-within", needed: true) is { } period)
            onNewRevision = new RevisionRule.Renew(period);
    }

    // A month has 28 to 31 days, so two periods are compared from a fixed day.
    private static bool IsLonger(Period one, Period other) => one.After(new(2000, 1, 1)) >= other.After(new(2000, 1, 1));
}

/// <summary>A draw of questions with its places.</summary>
internal sealed record DrawDraft(QuestionKind Kind, IReadOnlyList<YamlText> From, int Count, Place CountPlace)
{
    public static DrawDraft? Read(YamlNode node, ProblemList problems)
    {
        if (Fields.Open(node, "A draw of questions", problems, "kind", "from", "count") is not { } fields) return null;
        var (kind, from, count) = (
            fields.Code<QuestionKind>("kind", needed: true), fields.Ids("from", needed: true), fields.Whole("count", 1, 100, needed: true));
        if (kind is null || count is null) return null;
        if (from.Count > 0 && from.Count < count)
            problems.Error(fields.PlaceOf("count"), $"{count} questions cannot be drawn from {from.Count} scenario{(from.Count == 1 ? "" : "s")}: list more scenarios, or draw fewer.");
        return new(kind.Value, from, count.Value, fields.PlaceOf("count"));
    }
}
