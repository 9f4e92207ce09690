namespace Training.Content.Yaml;

/// <summary>A Markdown file with YAML between two <c>---</c> lines at its head.</summary>
/// <param name="Head">The YAML; null where there is none that can be read.</param>
/// <param name="Body">The Markdown, with empty lines in place of the head, so that its lines are the file's.</param>
internal sealed record FrontMatter(YamlNode? Head, string Body)
{
    public static FrontMatter Read(ContentFile file, ProblemList problems)
    {
        if (!PlainText.IsSound(file, problems)) return new(null, "");
        var lines = file.Text.ReplaceLineEndings("\n").Split('\n');
        if (lines[0].TrimEnd() != "---")
        {
            problems.Error(Place.Start, "The file must begin with a line of \"---\", then the keys and values, then another line of \"---\".");
            return new(null, file.Text);
        }

        var end = Array.FindIndex(lines, 1, line => line.TrimEnd() == "---");
        if (end < 0)
        {
            problems.Error(Place.Start, "The head is not closed: put a line of \"---\" behind its last key.");
            return new(null, "");
        }

        var head = string.Join('\n', lines[1..end]);
        var body = new string('\n', end + 1) + string.Join('\n', lines[(end + 1)..]);
        if (!string.IsNullOrWhiteSpace(head)) return new(YamlTree.Read("\n" + head + "\n", problems), body);
        problems.Error(Place.Start, "The head is empty: write the keys and values between the two lines of \"---\".");
        return new(null, body);
    }
}
