using System.Text;
using System.Xml;
using Training.Content.Yaml;

namespace Training.Content.Modules;

/// <summary>The labels of one language as their file has them, sound or not.</summary>
internal sealed record PictureLabelsDraft(ContentFile File, string Language, ProblemList Problems)
{
    // Three lines of a picture at the smallest size; more is a caption.
    private const int Longest = 120;

    public IReadOnlyList<(YamlText Label, string Words)> Labels { get; private init; } = [];

    public PictureLabels ToPictureLabels() => new(Language, Labels.ToDictionary(entry => PictureText.Plain(entry.Label.Text), entry => entry.Words), File);

    public static PictureLabelsDraft Read(ContentFile file, string language)
    {
        var draft = new PictureLabelsDraft(file, language, new(file.Path));
        if (!PlainText.IsSound(file, draft.Problems)
            || YamlTree.Read(file.Text, draft.Problems) is not { } root
            || Fields.Open(root, "A file of labels", draft.Problems, "labels") is not { } fields)
            return draft;
        List<(YamlText, string)> labels = [];
        HashSet<string> seen = new(StringComparer.Ordinal);
        foreach (var (label, node) in fields.Entries("labels", needed: true))
        {
            if (fields.AsText(node, $"The translation of \"{Fields.Shown(label.Text)}\"") is not { } words) continue;
            if (!IsOneLine(words.Text))
                draft.Problems.Error(words.Place, $"A label is one line of at most {Longest} letters, without control characters: shorten it.");
            else if (!seen.Add(PictureText.Plain(label.Text)))
                draft.Problems.Error(label.Place, $"The label \"{Fields.Shown(label.Text)}\" is here twice: keep one.");
            else labels.Add((label, words.Text.Trim()));
        }

        return draft with { Labels = labels };
    }

    // A quoted text of YAML can spell any character, also those that no picture can hold.
    private static bool IsOneLine(string text)
    {
        if (text.Length > Longest) return false;
        foreach (var rune in text.EnumerateRunes())
            if (Rune.IsControl(rune) || rune.Value is 0xFFFD or 0x2028 or 0x2029 || (rune.IsBmp && !XmlConvert.IsXmlChar((char)rune.Value))) return false;
        return true;
    }
}
