using Training.Content.Modules;
using Training.Content.Procedures;

namespace Training.Content.Measuring;

/// <summary>What of a content folder is not to be had in a language, or is out of step with the default language.</summary>
/// <param name="Language">The language.</param>
/// <param name="All">How many texts there are to translate: files, labels of pictures, names of sources, facts of procedures.</param>
/// <param name="Missing">What has no translation, by the path that it would have; a label, a source or a fact behind its file's.</param>
/// <param name="OutOfStep">The translations that something is said against.</param>
public sealed record LanguageGaps(string Language, int All, IReadOnlyList<string> Missing, IReadOnlyList<string> OutOfStep)
{
    /// <summary>Compares the files of a folder with what was said of them.</summary>
    /// <param name="files">The files.</param>
    /// <param name="problems">What the reader said of them.</param>
    /// <param name="language">The language, such as <c>es</c>.</param>
    public static LanguageGaps Of(IReadOnlyList<ContentFile> files, IReadOnlyList<ContentProblem> problems, string language)
    {
        ArgumentNullException.ThrowIfNull(files);
        ArgumentNullException.ThrowIfNull(problems);
        var known = files.DistinctBy(file => file.Path).ToDictionary(file => file.Path, StringComparer.Ordinal);
        string[] wanted = [.. files.Where(file => ContentFile.CanBeTranslated(file.Path))
            .Select(file => ContentFile.TranslationOf(file.Path, language))];
        string[] glossary = known.ContainsKey($"glossary/{ContentLibrary.DefaultLanguage}.yaml") ? [$"glossary/{language}.yaml"] : [];
        string[] all = [.. wanted.Concat(glossary).Order(StringComparer.Ordinal)];
        (string Name, bool IsThere)[] parts = [.. Labels(known, language), .. Sources(known, language), .. Facts(known, language)];
        return new(
            language, all.Length + parts.Length,
            [.. all.Where(path => !known.ContainsKey(path)).Concat(parts.Where(part => !part.IsThere).Select(part => part.Name)).Order(StringComparer.Ordinal)],
            [.. known.Keys.Where(path => problems.Any(problem => problem.File == path)
                && (all.Contains(path) || ContentPlace.Of(path) is { Sort: ContentSort.Labels } place && place.Language == language)).Order(StringComparer.Ordinal)]);
    }

    private static IEnumerable<(string, bool)> Labels(Dictionary<string, ContentFile> files, string language)
    {
        foreach (var module in files.Values.Where(file => ContentPlace.Of(file.Path) is { Sort: ContentSort.Picture }).GroupBy(file => ContentPlace.Of(file.Path)!.Id))
        {
            var path = $"modules/{module.Key}/pictures/labels.{language}.yaml";
            var there = files.TryGetValue(path, out var file) ? PictureLabelsDraft.Read(file, language).ToPictureLabels().Words : null;
            foreach (var label in module.SelectMany(picture => PictureText.LabelsToTranslate(picture.Text)).Distinct())
                yield return ($"{path}: {label}", there?.ContainsKey(label) ?? false);
        }
    }

    private static IEnumerable<(string, bool)> Sources(Dictionary<string, ContentFile> files, string language)
    {
        foreach (var original in files.Values.Where(file => ContentPlace.Of(file.Path) is { Sort: ContentSort.Lesson, Language: null }))
        {
            var path = ContentFile.TranslationOf(original.Path, language);
            var sources = LessonDraft.Read(original, ContentLibrary.DefaultLanguage, isTranslation: false).Sources;
            var words = files.TryGetValue(path, out var file) ? LessonDraft.Read(file, language, isTranslation: true).SourceEntries : [];
            foreach (var (place, source) in SourceDraft.In(sources, words, language).Index())
                yield return ($"{path}: source {source.Id ?? $"{place + 1}"}", IsTranslated(source));
        }
    }

    private static IEnumerable<(string, bool)> Facts(Dictionary<string, ContentFile> files, string language)
    {
        foreach (var original in files.Values.Where(file => ContentPlace.Of(file.Path) is { Sort: ContentSort.Procedure, Language: null }))
        {
            if (ProcedureDraft.Read(original, ProcedureDemands.ToGrade).Procedure is not { } procedure) continue;
            var path = ContentFile.TranslationOf(original.Path, language);
            var named = files.TryGetValue(path, out var file) ? new ProcedureTranslation(file, language).Read(procedure).Procedure.Facts : procedure.Facts;
            foreach (var (place, fact) in procedure.Facts.Index()) yield return ($"{path}: fact {fact.Id}", named[place] != fact);
        }
    }

    private static bool IsTranslated(Source source) =>
        source.Language != ContentLibrary.DefaultLanguage
        && (source.IsAddress || source.RepeatsItsKind || source.WhereLanguage != ContentLibrary.DefaultLanguage);
}
