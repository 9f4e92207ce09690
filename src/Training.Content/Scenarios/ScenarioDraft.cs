using Markdig.Extensions.CustomContainers;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Training.Content.Modules;
using Training.Content.Rendering;
using Training.Content.Yaml;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;

namespace Training.Content.Scenarios;

/// <summary>A scenario as its file has it, sound or not.</summary>
internal sealed record ScenarioDraft(ContentFile File, string Id, string Language, ProblemList Problems)
{
    public YamlText? Title { get; private init; }

    public YamlText? Procedure { get; private init; }

    public YamlText? Variant { get; private init; }

    public IReadOnlyList<(YamlText Text, QuestionKind Kind)> Kinds { get; private init; } = [];

    public Place StartPlace { get; private init; }

    public IReadOnlyList<StartEntry> Start { get; private init; } = [];

    public IReadOnlyList<YamlText>? Show { get; private init; }

    public IReadOnlyList<AbsentDraft> Absent { get; private init; } = [];

    public YamlText? Module { get; private init; }

    public ReadingDraft? Reading { get; private init; }

    public ReadingWords? ReadingWords { get; private init; }

    public MarkdownDocument Situation { get; private init; } = [];

    public List<ScenarioDraft> Translations { get; } = [];

    public ScenarioText Text => new(Language, Title?.Text ?? "", File) { Reading = ReadingWords, Absent = [.. Absent.Select(entry => entry.ToStep())] };

    public IEnumerable<ProblemList> AllProblems => [Problems, .. Translations.Select(translation => translation.Problems)];

    /// <summary>The scenario; only where no error stands.</summary>
    public Scenario ToScenario() => new(new(Id), Text, Procedure is { } procedure ? new ProcedureId(procedure.Text) : null)
    {
        Module = Module is { } module ? new ModuleId(module.Text) : null,
        Reading = Reading?.Task,
        Variant = Variant is { } variant ? new VariantId(variant.Text) : null,
        Kinds = [.. Kinds.Select(entry => entry.Kind)],
        Start = [.. Start.Select(entry => entry.ToEntry())],
        Show = Show is null ? null : [.. Show.Select(decoy => new StepId(decoy.Text))],
        Translations = [.. Translations.Select(translation => translation.Text)],
    };

    /// <summary>Why questions of a kind cannot be drawn of it, by kind.</summary>
    public Dictionary<QuestionKind, string> NotDrawn { get; } = [];

    public bool MayBe(QuestionKind kind) => Kinds.Any(entry => entry.Kind == kind);

    public static ScenarioDraft Read(ContentFile file, string id)
    {
        var (draft, fields) = Open(file, id, ContentLibrary.DefaultLanguage, "title", "procedure", "module", "variant", "kinds", "start", "show", "absent", "reading");
        if (fields is null) return draft;
        List<(YamlText, QuestionKind)> kinds = [];
        foreach (var text in fields.Texts("kinds", needed: true))
            if (fields.AsCode<QuestionKind>(text, "kind of question") is { } kind) kinds.Add((text, kind));
        draft = draft with
        {
            Title = fields.Text("title", needed: true),
            Procedure = fields.Id("procedure", needed: kinds.Any(entry => entry.Item2 != QuestionKind.Reading)),
            Module = fields.Id("module"),
            Reading = fields.Node("reading", needed: false) is { } reading ? ReadingDraft.Read(reading, draft.Problems) : null,
            Variant = fields.Id("variant"),
            Kinds = kinds,
            StartPlace = fields.KeyPlaceOf("start"),
            Start = [.. fields.Items("start").Select(node => StartEntry.Read(node, draft.Problems)).OfType<StartEntry>()],
            // No decoy at all is a choice that an author may make, so an empty list is not the same as none here.
            Show = fields.Has("show") ? fields.Ids("show") : null,
            Absent = AbsentDraft.ReadAll(fields, draft.Problems),
        };
        draft = draft with { ReadingWords = draft.Reading?.Words };
        draft.CheckReading(fields);
        if (draft.MayBe(QuestionKind.Finish) && !fields.Holds("start"))
            draft.Problems.Error(fields.KeyPlaceOf("kinds"), "A question of the kind finish needs \"start\": list what the colleague has done.");
        if (!draft.MayBe(QuestionKind.Finish) && kinds.Count > 0 && fields.Holds("start"))
            draft.Problems.Error(draft.StartPlace, "\"start\" is for questions of the kind finish alone: add finish to the kinds, or remove it.");
        return draft;
    }

    public static ScenarioDraft ReadTranslation(ContentFile file, string id, string language, ScenarioDraft original)
    {
        var (draft, fields) = Open(file, id, language, "title", "absent", "reading");
        if (fields is null) return draft;
        draft = draft with { Title = fields.Text("title", needed: true), Absent = AbsentDraft.ReadTexts(fields, original.Absent, draft.Problems) };
        Untranslated.Report(draft.Title, original.Title?.Text, draft.Problems);
        TranslationCheck.CheckWords(original.Situation, draft.Situation, draft.Problems);
        if (original.Reading is null && fields.Has("reading"))
            draft.Problems.Error(fields.KeyPlaceOf("reading"), "The scenario has no reading to translate: remove the key.");
        else if (original.Reading is not null && fields.Node("reading", needed: true) is { } reading)
            draft = draft with { ReadingWords = ReadingDraft.ReadWords(reading, original.ReadingWords, language, draft.Problems) };
        return draft;
    }

    private void CheckReading(Fields fields)
    {
        if (Procedure is null && Absent.Count > 0)
            Problems.Error(fields.KeyPlaceOf("absent"), "\"absent\" names steps of the procedure, and the scenario has none: remove the key.");
        if (MayBe(QuestionKind.Reading) && Reading is null)
            Problems.Error(fields.KeyPlaceOf("kinds"), "A question of the kind reading needs \"reading\": say what is measured and what is decided.");
        if (!MayBe(QuestionKind.Reading) && Kinds.Count > 0 && Reading is not null)
            Problems.Error(fields.KeyPlaceOf("reading"), "\"reading\" is for questions of the kind reading alone: add reading to the kinds, or remove it.");
        if (Procedure is null && Module is null && MayBe(QuestionKind.Reading))
            Problems.Error(fields.Place, "A scenario without a procedure needs the key \"module\": the module that teaches it.");
        if (Procedure is not null && Module is not null)
            Problems.Error(fields.KeyPlaceOf("module"), "The module follows from the procedure: remove the key.");
    }

    private static (ScenarioDraft Draft, Fields? Fields) Open(ContentFile file, string id, string language, params string[] known)
    {
        var problems = new ProblemList(file.Path);
        var front = FrontMatter.Read(file, problems);
        var situation = LessonText.Parse(front, problems) ?? [];
        if (front.Body.Length > 0) CheckSituation(situation, problems);
        return (new(file, id, language, problems) { Situation = situation }, front.Head is null ? null : Fields.Open(front.Head, "A scenario", problems, known));
    }

    private static void CheckSituation(MarkdownDocument situation, ProblemList problems)
    {
        if (situation.Count == 0) problems.Error(Place.Start, "The scenario has no situation: tell it behind the head, in a few plain sentences.");
        foreach (var block in situation.Descendants().Where(part => part is HeadingBlock or CustomContainer))
            problems.Error(LessonText.PlaceOf(block), "A situation is a few plain sentences: remove the heading or block.");
        foreach (var mark in situation.Descendants<SourceMark>())
            problems.Hold(LessonText.PlaceOf(mark), "A situation has no sources: tell where it comes from in the lesson.");
        foreach (var link in situation.Descendants<LinkInline>())
        {
            if (link.IsImage) problems.Error(LessonText.PlaceOf(link), "A situation has no pictures: tell it in words.");
            else if (LinkTarget.Of(link.Url, null) is LinkTarget.Nowhere nowhere) problems.Error(LessonText.PlaceOf(link), nowhere.Why);
            else if (LinkTarget.Of(link.Url, null) is LinkTarget.Fragment) problems.Error(LessonText.PlaceOf(link), "A situation has no headings to lead to: remove the link.");
        }
    }
}

/// <summary>An entry of a start, with its place.</summary>
internal sealed record StartEntry(YamlText Step, Duration? Stated)
{
    public Entry ToEntry() => new(new StepId(Step.Text)) { Stated = Stated };

    public static StartEntry? Read(YamlNode node, ProblemList problems)
    {
        if (node is YamlText { IsEmpty: false } id) return new(id, null);
        if (Fields.Open(node, "An entry of start", problems, "step", "seconds") is not { } fields) return null;
        if (fields.Id("step", needed: true) is not { } step) return null;
        if (fields.Text("seconds") is not { } seconds) return new(step, null);
        if (decimal.TryParse(seconds.Text, System.Globalization.NumberStyles.AllowDecimalPoint, System.Globalization.CultureInfo.InvariantCulture, out var number)
            && Duration.TryFromSeconds(number, out var stated))
            return new(step, stated);
        problems.Error(seconds.Place, "\"seconds\" must be a number of seconds that is not negative, such as 90.");
        return new(step, null);
    }
}
