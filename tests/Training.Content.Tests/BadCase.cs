namespace Training.Content.Tests;

/// <summary>
/// A fault in the good folder, and what its author is told. A case is a text of parts: <c>=== file PATH</c> (the whole
/// file), <c>=== edit PATH</c> (lines of <c>old => new</c>, each old once in the file, <c>\n</c> for a new line), <c>=== remove PATH</c>, and
/// <c>=== expected</c> with the problems, each as far as it is given.
/// </summary>
internal sealed record BadCase(IReadOnlyList<ContentFile> Files, IReadOnlyList<string> Expected)
{
    public static IEnumerable<string> Names =>
        Directory.EnumerateFiles(Path.Combine(ContentFolders.Data, "bad"), "*.case").Select(path => Path.GetFileNameWithoutExtension(path)!).Order(StringComparer.Ordinal);

    public static BadCase Read(string name)
    {
        var files = ContentFolders.Good.ToDictionary(file => file.Path, file => file.Text, StringComparer.Ordinal);
        var text = System.IO.File.ReadAllText(Path.Combine(ContentFolders.Data, "bad", name + ".case"));
        string[] expected = [];
        foreach (var part in text.Split("=== ", StringSplitOptions.RemoveEmptyEntries))
        {
            var end = part.IndexOf('\n', StringComparison.Ordinal);
            var (head, body) = (part[..end].Split(' ', 2), part[(end + 1)..]);
            switch (head[0])
            {
                case "file":
                    files[head[1]] = body;
                    break;
                case "edit":
                    foreach (var line in Lines(body)) files[head[1]] = Edited(files[head[1]], line);
                    break;
                case "remove":
                    Assert.True(files.Remove(head[1]));
                    break;
                default:
                    expected = Lines(body);
                    break;
            }
        }

        return new([.. files.Select(file => new ContentFile(file.Key, file.Value))], expected);
    }

    private static string[] Lines(string body) => body.Split('\n', StringSplitOptions.RemoveEmptyEntries);

    private static string Edited(string text, string line)
    {
        var sides = line.Split(" => ");
        Assert.Equal(2, text.Split(sides[0]).Length);
        return text.Replace(sides[0], sides[1].Replace("\\n", "\n", StringComparison.Ordinal), StringComparison.Ordinal);
    }
}
