namespace Training.Content.Measuring;

/// <summary>What of a content folder is not to be had in a language, or is out of step with the default language.</summary>
/// <param name="Language">The language.</param>
/// <param name="All">How many texts there are to translate.</param>
/// <param name="Missing">What has no translation, by the path that it would have.</param>
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
        var paths = files.Select(file => file.Path).ToHashSet(StringComparer.Ordinal);
        string[] wanted = [.. files.Where(file => ContentFile.CanBeTranslated(file.Path))
            .Select(file => ContentFile.TranslationOf(file.Path, language))];
        string[] glossary = paths.Contains($"glossary/{ContentLibrary.DefaultLanguage}.yaml") ? [$"glossary/{language}.yaml"] : [];
        string[] all = [.. wanted.Concat(glossary).Order(StringComparer.Ordinal)];
        return new(
            language, all.Length,
            [.. all.Where(path => !paths.Contains(path))],
            [.. all.Where(path => paths.Contains(path) && problems.Any(problem => problem.File == path))]);
    }
}
