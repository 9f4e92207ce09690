using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Training.Content.Competencies;
using Training.Content.Modules;
using Training.Content.Procedures;
using Training.Content.Scenarios;
using Training.Content.Yaml;
using Training.Sequencing;

namespace Training.Content.Writing;

/// <summary>
/// A translation as it is begun: a file of the right form with every text still in the default language, so that the check
/// has nothing to say but what is to be translated (<see cref="Untranslated"/>).
/// </summary>
public static partial class BegunTranslation
{
    /// <summary>Begins the translation of a file.</summary>
    /// <param name="files">All files; the pictures among them whose words are translated already are taken.</param>
    /// <param name="path">The file in the default language.</param>
    /// <param name="language">The language, such as <c>es</c>.</param>
    /// <returns>The file of the translation; refused where there is no such file, or it cannot be read.</returns>
    public static Outcome<ContentFile, Refusal> Of(IReadOnlyList<ContentFile> files, string path, string language)
    {
        ArgumentNullException.ThrowIfNull(files);
        ArgumentNullException.ThrowIfNull(path);
        if (!ContentFile.CanBeTranslated(path) || language == ContentLibrary.DefaultLanguage || ContentPlace.Of(path) is not { } place)
            return new Refusal("A lesson, a procedure, a scenario or a competency can be put into another language, from its English file.");
        if (files.FirstOrDefault(file => file.Path == path) is not { } file) return new Refusal($"There is no file {path}.");
        var text = place.Sort switch
        {
            ContentSort.Lesson => Lesson(file, files, place.Id, language),
            ContentSort.Scenario => Scenario(file, place.Id),
            ContentSort.Procedure => Procedure(file),
            _ => Competency(file, place.Id),
        };
        return text is null
            ? new Refusal($"{path} cannot be read as it stands: mend its errors first, then begin the translation.")
            : new ContentFile(ContentFile.TranslationOf(path, language), text);
    }

    private static string? Lesson(ContentFile file, IReadOnlyList<ContentFile> files, string module, string language)
    {
        var draft = LessonDraft.Read(file, ContentLibrary.DefaultLanguage, isTranslation: false);
        if (draft.Title is not { } title) return null;
        var pictures = files.Select(other => other.Path).ToHashSet(StringComparer.Ordinal);
        var body = Picture().Replace(BodyOf(file), match =>
            pictures.Contains($"modules/{module}/{match.Groups[1].Value}.{language}.svg") ? $"{match.Groups[1].Value}.{language}.svg" : match.Value);
        return $"---\ntitle: {YamlEditing.Written(title.Text)}\n---\n{body}";
    }

    private static string? Scenario(ContentFile file, string id)
    {
        var draft = ScenarioDraft.Read(file, id);
        if (draft.Title is not { } title || (draft.MayBe(QuestionKind.Reading) && draft.ReadingWords is null)) return null;
        var head = new StringBuilder($"---\ntitle: {YamlEditing.Written(title.Text)}\n");
        if (draft.ReadingWords is { } words)
        {
            head.Append("reading:").Append(words is { Called.Count: 0, Decisions.Count: 0 } ? " {}\n" : "\n");
            if (words.Called.Count > 0) head.Append("  called:\n");
            foreach (var (name, called) in words.Called) head.Append(CultureInfo.InvariantCulture, $"    {name}: {YamlEditing.Written(called)}\n");
            if (words.Decisions.Count > 0) head.Append("  decide:\n");
            foreach (var decision in words.Decisions) Add(head, "    ", ("do", decision.Do), ("because", decision.Because), ("otherwise", decision.Otherwise));
        }

        return $"{head}---\n{BodyOf(file)}";
    }

    private static string? Procedure(ContentFile file)
    {
        if (ProcedureDraft.Read(file, ProcedureDemands.ToGrade).Procedure is not { } procedure) return null;
        var text = new StringBuilder($"title: {YamlEditing.Written(procedure.Title)}\n");
        if (procedure.Facts.Count > 0) text.Append("# What each fact is called, and then its values, in their order.\nfacts:\n");
        foreach (var fact in procedure.Facts)
            text.Append(CultureInfo.InvariantCulture, $"  {fact.Id}: {YamlEditing.Written([fact.Called, .. fact.ValuesCalled])}\n");
        text.Append("steps:\n");
        foreach (var step in procedure.Steps) text.Append(CultureInfo.InvariantCulture, $"  - {{ id: {step.Id}, do: {YamlEditing.Written(step.Do)} }}\n");
        if (procedure.Decoys.Count > 0) text.Append("decoys:\n");
        foreach (var decoy in procedure.Decoys)
            Add(text, "  ", ("id", decoy.Id.Value), ("do", decoy.Do), ("because", decoy.Because), ("otherwise", decoy.Otherwise));
        if (procedure.Rules.Count > 0) text.Append("rules:\n");
        foreach (var rule in procedure.Rules) Add(text, "  ", ("id", rule.Id.Value), ("because", rule.Because), ("otherwise", rule.Otherwise));
        return text.ToString();
    }

    private static string? Competency(ContentFile file, string id) =>
        CompetencyDraft.Read(file, id).Title is { Length: > 0 } title ? $"title: {YamlEditing.Written(title)}\n" : null;

    private static void Add(StringBuilder text, string indent, params (string Key, string? Value)[] fields)
    {
        var lead = "- ";
        foreach (var (key, value) in fields.Where(field => field.Value is not null))
        {
            text.Append(CultureInfo.InvariantCulture, $"{indent}{lead}{key}: {YamlEditing.Written(value!)}\n");
            lead = "  ";
        }
    }

    // The lines of the head are empty in the body, so that its lines are the file's.
    private static string BodyOf(ContentFile file) => FrontMatter.Read(file, new(file.Path)).Body.TrimStart('\n');

    [GeneratedRegex(@"(?<=\]\()(pictures/[A-Za-z0-9._-]+)\.svg", RegexOptions.CultureInvariant)]
    private static partial Regex Picture();
}
