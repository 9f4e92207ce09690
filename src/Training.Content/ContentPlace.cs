using System.Text.RegularExpressions;

namespace Training.Content;

/// <summary>What a file is by where it stands below <c>content/</c>.</summary>
/// <param name="Sort">Which sort of file.</param>
/// <param name="Id">The id that it belongs to: of the module (also of its pictures and their labels), procedure, scenario or competency, or the language of a glossary.</param>
/// <param name="Language">The language of a translation; null for the file itself.</param>
internal sealed partial record ContentPlace(ContentSort Sort, string Id, string? Language)
{
    /// <summary>The place of a path, or null where no content stands there.</summary>
    public static ContentPlace? Of(string path)
    {
        if (Place().Match(path) is not { Success: true } match) return null;
        var language = match.Groups["language"] is { Success: true } group ? group.Value : null;
        if (match.Groups["module"] is { Success: true } module)
        {
            var within = match.Groups["labels"].Success ? ContentSort.Labels : match.Groups["picture"].Success ? ContentSort.Picture : ContentSort.Lesson;
            return new(within, module.Value, language);
        }

        var sort = match.Groups["folder"].Value switch
        {
            "procedures" => ContentSort.Procedure,
            "competencies" => ContentSort.Competency,
            "glossary" => ContentSort.Glossary,
            _ => ContentSort.Scenario,
        };
        return new(sort, match.Groups["id"].Value, language);
    }

    /// <summary>Whether the author of a file takes it for content: it stands in a folder of content. What stands beside does no harm.</summary>
    public static bool IsMeant(string path) =>
        path.Split('/') is var parts && parts[0] is "modules" or "procedures" or "scenarios" or "competencies" or "glossary" && parts[^1] != "README.md";

    [GeneratedRegex(
        """
        \A(?:
          modules/(?<module>[0-9]{2,3}-[a-z0-9-]+)/(?:lesson(?:\.(?<language>[a-z]{2,3}(?:-[a-z0-9]{2,8})*))?\.md|(?<picture>pictures/[A-Za-z0-9._-]+\.svg)|(?<labels>pictures/labels)\.(?<language>[a-z]{2,3}(?:-[a-z0-9]{2,8})*)\.yaml)
        | (?<folder>procedures|competencies)/(?<id>[a-z0-9-]+)(?:\.(?<language>[a-z]{2,3}(?:-[a-z0-9]{2,8})*))?\.yaml
        | (?<folder>glossary)/(?<id>[a-z]{2,3}(?:-[a-z0-9]{2,8})*)\.yaml
        | (?<folder>scenarios)/(?<id>[a-z0-9-]+)(?:\.(?<language>[a-z]{2,3}(?:-[a-z0-9]{2,8})*))?\.md
        )\z
        """,
        RegexOptions.IgnorePatternWhitespace | RegexOptions.CultureInvariant)]
    private static partial Regex Place();
}

/// <summary>The sorts of content file.</summary>
internal enum ContentSort
{
    Lesson,
    Picture,
    Labels,
    Procedure,
    Scenario,
    Competency,
    Glossary,
}
