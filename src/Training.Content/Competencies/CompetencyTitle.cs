using Training.Content.Yaml;

namespace Training.Content.Competencies;

/// <summary>What a competency is called in another language.</summary>
/// <param name="Language">The language, such as <c>es</c>.</param>
/// <param name="Title">What it is called.</param>
/// <param name="File">The file that it was read from.</param>
public sealed record CompetencyTitle(string Language, string Title, ContentFile File)
{
    internal static CompetencyTitle? Read(ContentFile file, string id, string original, string language, ProblemList problems)
    {
        if (!PlainText.IsSound(file, problems)
            || YamlTree.Read(file.Text, problems) is not { } root
            || Fields.Open(root, "The texts of a competency", problems, "id", "title") is not { } fields)
            return null;
        if (fields.Id("id") is { } written && written.Text != id)
            problems.Error(written.Place, $"These are the texts of \"{id}\": write that id, or leave the key out.");
        var title = fields.Text("title", needed: true);
        Untranslated.Report(title, original, problems);
        return title is null ? null : new(language, title.Text, file);
    }
}
