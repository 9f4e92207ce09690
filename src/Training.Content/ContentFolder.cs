using System.IO.Enumeration;
using System.Text;

namespace Training.Content;

/// <summary>The files of a content folder on disk.</summary>
public static class ContentFolder
{
    private const string Link = "This is a link, which may lead anywhere: put the file or the folder itself here.";
    private const string Unread = "The file cannot be read: see that it is there, and that it may be read.";
    private const string Nothing = "There is nothing in it, or it is no file (a pipe, a socket or a device): write it, or remove it.";
    private static readonly string[] Kinds = [".md", ".yaml", ".yml", ".json", ".svg"];

    // All is looked at, and nothing behind a link: it could lead out of the folder, or round in a circle.
    private static readonly EnumerationOptions All = new() { RecurseSubdirectories = true, AttributesToSkip = 0, IgnoreInaccessible = false };

    /// <summary>
    /// Reads every content file of a folder: Markdown, YAML, JSON and SVG, in the order of their paths. What is no file that
    /// can be read (a link, a pipe) has its <see cref="ContentFile.Fault"/> in place of a text.
    /// </summary>
    /// <param name="folder">The folder that holds <c>modules/</c>, <c>procedures/</c> and the rest.</param>
    /// <exception cref="IOException">The folder cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be read.</exception>
    public static IReadOnlyList<ContentFile> Read(string folder) =>
    [
        .. Entries(folder).Select(entry => Taken(entry.Entry, entry.Path)).OfType<ContentFile>().OrderBy(file => file.Path, StringComparer.Ordinal),
    ];

    /// <summary>
    /// What tells whether a folder has changed, without reading its files: path, time and length of each. Another name, an
    /// older time and another order of the same files count.
    /// </summary>
    /// <param name="folder">The folder that holds <c>modules/</c>, <c>procedures/</c> and the rest.</param>
    /// <exception cref="IOException">The folder cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be read.</exception>
    public static IReadOnlyList<FileStamp> Stamps(string folder) =>
    [
        .. Entries(folder)
            .Select(entry => new FileStamp(entry.Path, entry.Entry.LastWriteTimeUtc.Ticks, IsLink(entry.Entry) ? -1 : LengthOf(entry.Entry)))
            .OrderBy(stamp => stamp.Path, StringComparer.Ordinal),
    ];

    /// <summary>Why something that stands in a folder is not read as a file; null where it can be tried.</summary>
    /// <param name="path">Where it stands on disk.</param>
    public static string? WhyNot(string path) => WhyNot(new FileInfo(path));

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

    /// <summary>The files by the names of content, and all links. The lock that an editor lays beside a file (<c>.#lesson.md</c>) is a link and no content.</summary>
    private static IEnumerable<(FileSystemInfo Entry, string Path)> Entries(string folder)
    {
        var root = Path.GetFullPath(folder);
        var entries = new FileSystemEnumerable<FileSystemInfo>(root, (ref FileSystemEntry entry) => entry.ToFileSystemInfo(), All)
        {
            ShouldRecursePredicate = (ref FileSystemEntry entry) => (entry.Attributes & FileAttributes.ReparsePoint) == 0,
        };
        return entries.Where(entry => IsLink(entry) ? !entry.Name.StartsWith('.') : entry is FileInfo && Kinds.Contains(entry.Extension.ToLowerInvariant()))
            .Select(entry => (entry, Path.GetRelativePath(root, entry.FullName).Replace(Path.DirectorySeparatorChar, '/')));
    }

    private static ContentFile? Taken(FileSystemInfo entry, string path)
    {
        if (WhyNot(entry) is { } fault) return ContentPlace.IsMeant(path) ? new(path, "") { Fault = fault } : null;
        try
        {
            return ReadFile(entry.FullName, path);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return new(path, "") { Fault = Unread };
        }
    }

    // What never ends has no length. It is not opened to find out, for opening a pipe waits until somebody writes to it.
    private static string? WhyNot(FileSystemInfo entry) => IsLink(entry) ? Link : LengthOf(entry) == 0 ? Nothing : null;

    private static bool IsLink(FileSystemInfo entry) => (entry.Attributes & FileAttributes.ReparsePoint) != 0;

    private static long LengthOf(FileSystemInfo entry) => entry is FileInfo { Exists: true } file ? file.Length : -1;
}

/// <summary>A file as it stands in a folder, by what can be known without reading it.</summary>
/// <param name="Path">Where it stands.</param>
/// <param name="Time">When it was written last, in ticks; an older time may be a newer text.</param>
/// <param name="Length">Its bytes; -1 for a link.</param>
public readonly record struct FileStamp(string Path, long Time, long Length);
