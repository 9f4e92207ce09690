using System.Text;

namespace Training.Content;

/// <summary>The files of a content folder on disk.</summary>
public static class ContentFolder
{
    private static readonly string[] Kinds = [".md", ".yaml", ".yml", ".json", ".svg"];

    /// <summary>Reads every content file of a folder: Markdown, YAML, JSON and SVG, in the order of their paths.</summary>
    /// <param name="folder">The folder that holds <c>modules/</c>, <c>procedures/</c> and the rest.</param>
    /// <exception cref="IOException">The folder or a file in it cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder or a file in it may not be read.</exception>
    public static IReadOnlyList<ContentFile> Read(string folder)
    {
        var root = Path.GetFullPath(folder);
        return [.. Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories)
            .Where(path => Kinds.Contains(Path.GetExtension(path).ToLowerInvariant()))
            .Select(path => ReadFile(path, Path.GetRelativePath(root, path).Replace(Path.DirectorySeparatorChar, '/')))
            .OrderBy(file => file.Path, StringComparer.Ordinal)];
    }

    /// <summary>
    /// Reads one file. Bytes that are not UTF-8 become U+FFFD and a file above the largest size is cut just behind
    /// it, so that the reader of the text can say both with their place.
    /// </summary>
    /// <param name="path">The file on disk.</param>
    /// <param name="name">The path that the content file is to have.</param>
    /// <exception cref="IOException">The file cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be read.</exception>
    public static ContentFile ReadFile(string path, string name)
    {
        using var stream = File.OpenRead(path);
        var bytes = new byte[Math.Min(stream.CanSeek ? stream.Length : int.MaxValue, ContentFile.LargestSize) + 8];
        var length = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        var text = Encoding.UTF8.GetString(bytes, 0, length);
        return new(name, text.StartsWith('\uFEFF') ? text[1..] : text);
    }
}
