using Training.Content.Competencies;
using Training.Content.Glossary;
using Training.Content.Modules;
using Training.Content.Procedures;
using Training.Content.Scenarios;
using Training.Content.Yaml;

namespace Training.Content;

/// <summary>Everything that stands in a content folder, read file by file, before its links are followed.</summary>
internal sealed class ContentDrafts
{
    private readonly List<ProblemList> strays = [];
    private readonly List<(ContentFile File, ContentPlace Place)> translations = [];

    public SortedDictionary<string, ModuleDraft> Modules { get; } = new(StringComparer.Ordinal);

    public SortedDictionary<string, ProcedureDraft> Procedures { get; } = new(StringComparer.Ordinal);

    public SortedDictionary<string, ScenarioDraft> Scenarios { get; } = new(StringComparer.Ordinal);

    public SortedDictionary<string, CompetencyDraft> Competencies { get; } = new(StringComparer.Ordinal);

    public SortedDictionary<string, WordListDraft> Glossary { get; } = new(StringComparer.Ordinal);

    public IEnumerable<ProblemList> Problems =>
    [
        .. strays,
        .. Modules.Values.SelectMany(module => module.Problems),
        .. Procedures.Values.SelectMany(procedure => procedure.AllProblems),
        .. Scenarios.Values.SelectMany(scenario => scenario.AllProblems),
        .. Competencies.Values.SelectMany(competency => competency.AllProblems),
        .. Glossary.Values.Select(list => list.Problems),
    ];

    public static ContentDrafts Read(IReadOnlyList<ContentFile> files)
    {
        var drafts = new ContentDrafts();
        HashSet<string> paths = new(StringComparer.Ordinal);
        foreach (var file in files)
        {
            if (file.Fault is { } fault) drafts.Stray(file, fault);
            else if (!paths.Add(file.Path)) drafts.Stray(file, "The file is given twice: keep one.");
            else if (ContentPlace.Of(file.Path) is not { } place) drafts.Misplaced(file);
            else if (place is { Sort: ContentSort.Labels, Language: ContentLibrary.DefaultLanguage }) drafts.Stray(file, "The labels of the default language stand in the pictures themselves: remove the file.");
            else if (place.Language == ContentLibrary.DefaultLanguage) drafts.Stray(file, $"The file in \"{place.Language}\" has no language in its name: take \".{place.Language}\" out of it.");
            else drafts.Take(file, place);
        }

        foreach (var (file, place) in drafts.translations) drafts.TakeTranslation(file, place);
        foreach (var module in drafts.Modules.Values.Where(module => module.Lesson is null)) drafts.WithoutLesson(module);
        return drafts;
    }

    /// <summary>The library; only where no error stands.</summary>
    public ContentLibrary ToLibrary() => new(
        Modules.Values.Select(module => module.ToModule()),
        Procedures.Values.Select(procedure => procedure.ToWritten()),
        Scenarios.Values.Select(scenario => scenario.ToScenario()),
        Competencies.Values.Select(competency => competency.ToCompetency()),
        Glossary.Values.Select(list => list.ToWordList()));

    private void Take(ContentFile file, ContentPlace place)
    {
        switch (place)
        {
            case { Sort: ContentSort.Picture }:
                Module(place.Id).AddPicture(file);
                break;
            case { Sort: ContentSort.Labels, Language: { } language }:
                Module(place.Id).Labels.Add(PictureLabelsDraft.Read(file, language));
                break;
            case { Language: not null, Sort: not ContentSort.Lesson }:
                translations.Add((file, place));
                break;
            case { Sort: ContentSort.Lesson, Language: { } language }:
                Module(place.Id).Translations.Add(LessonDraft.Read(file, language, isTranslation: true));
                break;
            case { Sort: ContentSort.Lesson }:
                Module(place.Id).Lesson = LessonDraft.Read(file, ContentLibrary.DefaultLanguage, isTranslation: false);
                break;
            case { Sort: ContentSort.Procedure }:
                Procedures[place.Id] = ProcedureDraft.Read(file, ProcedureDemands.ToPublish);
                break;
            case { Sort: ContentSort.Scenario }:
                Scenarios[place.Id] = ScenarioDraft.Read(file, place.Id);
                break;
            case { Sort: ContentSort.Competency }:
                Competencies[place.Id] = CompetencyDraft.Read(file, place.Id);
                break;
            case { Sort: ContentSort.Glossary }:
                Glossary[place.Id] = WordListDraft.Read(file, place.Id);
                break;
        }
    }

    private void TakeTranslation(ContentFile file, ContentPlace place)
    {
        if (place.Sort == ContentSort.Scenario && Scenarios.TryGetValue(place.Id, out var scenario))
            scenario.Translations.Add(ScenarioDraft.ReadTranslation(file, place.Id, place.Language!, scenario));
        else if (place.Sort == ContentSort.Procedure && Procedures.TryGetValue(place.Id, out var procedure))
            procedure.AddTranslation(file, place.Language!);
        else if (place.Sort == ContentSort.Competency && Competencies.TryGetValue(place.Id, out var competency))
            competency.AddTranslation(file, place.Language!);
        else
            Stray(file, $"There is no \"{place.Id}\" that this could translate: mend the file's name, or remove the file.");
    }

    private ModuleDraft Module(string id)
    {
        if (!Modules.TryGetValue(id, out var module)) Modules.Add(id, module = new(id));
        return module;
    }

    private void WithoutLesson(ModuleDraft module)
    {
        var first = module.Translations.Select(lesson => lesson.File).Concat(module.Pictures).Concat(module.Labels.Select(labels => labels.File)).First();
        Stray(new(first.Path, ""), $"The module \"{module.Id}\" has no lesson.md: write it, or remove the folder.");
    }

    // A file that stands beside the content does no harm; one that its author takes for content does.
    private void Misplaced(ContentFile file)
    {
        if (ContentPlace.IsMeant(file.Path))
            Stray(file, "The file is not read by this name: content is modules/<nn-name>/lesson.md, modules/<nn-name>/pictures/<name>.svg, modules/<nn-name>/pictures/labels.<language>.yaml, procedures/<id>.yaml, scenarios/<id>.md, competencies/<id>.yaml and glossary/<language>.yaml, in lower case.");
    }

    private void Stray(ContentFile file, string sentence)
    {
        var problems = new ProblemList(file.Path);
        problems.Error(Place.Start, sentence);
        strays.Add(problems);
    }
}
