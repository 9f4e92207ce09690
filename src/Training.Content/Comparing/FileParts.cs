using Training.Content.Yaml;

namespace Training.Content.Comparing;

/// <summary>A file taken apart into what can be compared: its keys with their values, and its paragraphs.</summary>
internal sealed record FileParts(IReadOnlyList<FilePart> Keys, IReadOnlyList<FilePart> Paragraphs)
{
    private static readonly FileParts None = new([], []);

    public static FileParts Of(ContentFile? file)
    {
        if (file is null) return None;
        var problems = new ProblemList(file.Path);
        if (file.Path.EndsWith(".md", StringComparison.Ordinal))
        {
            var front = FrontMatter.Read(file, problems);
            // A head that cannot be read is a text like any other.
            return front.Head is { } head ? new([.. Fields(head, "")], Texts(front.Body)) : new([], Texts(file.Text));
        }

        return PlainText.IsSound(file, problems) && YamlTree.Read(file.Text, problems) is { } root
            ? new([.. Fields(root, "")], [])
            : new([], Texts(file.Text));
    }

    /// <summary>Every value under the keys that lead to it; the parts of a list are named by their ids, or else by their places.</summary>
    private static IEnumerable<FilePart> Fields(YamlNode node, string name) => node switch
    {
        YamlMap map => map.Fields.SelectMany(field => Fields(field.Value, Under(name, field.Key.Text))),
        YamlList list when list.Items.All(item => item is YamlText) =>
            [new FilePart(name, string.Join(", ", list.Items.Select(item => ((YamlText)item).Text)))],
        YamlList list => list.Items.SelectMany((item, place) => Fields(item, Under(name, NameOf(item, place)))),
        YamlText text => [new FilePart(name, text.Text)],
        _ => [],
    };

    private static string NameOf(YamlNode item, int place) =>
        item is YamlMap map && map.Fields.FirstOrDefault(field => field.Key.Text == "id")?.Value is YamlText { IsEmpty: false } id
            ? id.Text
            : (place + 1).ToString(System.Globalization.CultureInfo.InvariantCulture);

    private static string Under(string name, string key) => name.Length == 0 ? key : $"{name}.{key}";

    /// <summary>Paragraphs between empty lines, each with the heading that it stands below.</summary>
    private static List<FilePart> Texts(string text)
    {
        List<FilePart> paragraphs = [];
        List<string> lines = [];
        var heading = "";
        foreach (var line in text.ReplaceLineEndings("\n").Split('\n'))
        {
            if (!string.IsNullOrWhiteSpace(line)) lines.Add(line.TrimEnd());
            else Close();
        }

        Close();
        return paragraphs;

        void Close()
        {
            if (lines.Count == 0) return;
            if (lines[0].StartsWith("##", StringComparison.Ordinal)) heading = lines[0].TrimStart('#').Trim();
            paragraphs.Add(new(heading, string.Join('\n', lines)));
            lines = [];
        }
    }
}

/// <summary>A named piece of a file.</summary>
/// <param name="Name">The key, or the heading that a paragraph stands below.</param>
/// <param name="Text">What it says.</param>
internal sealed record FilePart(string Name, string Text);
