using System.Buffers;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using Training.Content.Modules;
using Training.Content.Yaml;
using Training.Sequencing;

namespace Training.Content.Packing;

/// <summary>
/// Reads packs of people who are not trusted. Nothing is taken from a header that can be counted: every entry is read
/// with a limit of its own, and nothing is given out before all of it has passed.
/// </summary>
internal static partial class PackReader
{
    // Text shrinks to a fifth, drawings to a tenth; whoever needs a hundredth wants to fill somebody's memory.
    private const int MostGrowth = 100;
    private const int SmallEnough = 64 * 1024;

    // How Unix tells a plain file from a link or a device, in the upper half of an entry's attributes.
    private const int SortOfFile = 0xF000;
    private const int PlainFile = 0x8000;
    private const int WindowsLink = 0x400;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
    private static readonly Refusal NoPack = new("This is no pack: a pack is a ZIP file that this program has written.");

    public static Outcome<Pack, Refusal> Read(ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Length > Pack.LargestSize) return new Refusal("The pack is larger than 16 MiB.");
        try
        {
            using var stream = new MemoryStream(bytes.ToArray(), writable: false);
            using var zip = new ZipArchive(stream, ZipArchiveMode.Read, leaveOpen: false, Encoding.UTF8);
            return Read(zip, bytes.Length);
        }
        catch (Exception fault) when (fault is InvalidDataException or IOException or NotSupportedException or ArgumentException or OverflowException)
        {
            // What the library says of a broken or foreign ZIP file; all of it means the same to whoever chose the file.
            return NoPack;
        }
    }

    private static Outcome<Pack, Refusal> Read(ZipArchive zip, long size)
    {
        if (zip.Entries.Count > Pack.MostFiles + 1) return new Refusal($"The pack has more than {Pack.MostFiles} files.");
        HashSet<string> names = new(StringComparer.OrdinalIgnoreCase);
        foreach (var entry in zip.Entries)
        {
            if (Fault(entry) is { } fault) return fault;
            if (!names.Add(entry.FullName)) return new Refusal($"The pack has two files of the name “{Shown(entry.FullName)}”.");
        }

        string? note = null;
        List<ContentFile> files = [];
        var room = Math.Min(Pack.LargestText, (size * MostGrowth) + SmallEnough);
        foreach (var entry in zip.Entries)
        {
            var read = Text(entry, ref room);
            if (!read.IsOk) return read.Fault;
            if (entry.FullName == PackNoteFile.Name) note = read.Value;
            else files.Add(new(entry.FullName, read.Value));
        }

        if (note is null) return new Refusal($"There is no note “{PackNoteFile.Name}” in it, so it is no pack of content.");
        if (files.Count == 0) return new Refusal("There is nothing in the pack.");
        return PackNoteFile.Read(note, [.. files.OrderBy(file => file.Path, StringComparer.Ordinal)]);
    }

    private static Refusal? Fault(ZipArchiveEntry entry)
    {
        var (name, shown) = (entry.FullName, Shown(entry.FullName));
        var sort = (entry.ExternalAttributes >> 16) & SortOfFile;
        if (entry.IsEncrypted) return new Refusal($"The file “{shown}” is locked with a password: a pack has none.");
        if (sort is not (0 or PlainFile) || (entry.ExternalAttributes & WindowsLink) != 0) return new Refusal($"“{shown}” is a link and no file.");
        if (name.Contains('\\', StringComparison.Ordinal)) return new Refusal($"The name “{shown}” has a backslash in it.");
        if (name.StartsWith('/') || Drive().IsMatch(name)) return new Refusal($"The name “{shown}” leads out of the content.");
        if (name.EndsWith('/')) return new Refusal($"“{shown}” is a folder: a pack has files alone.");
        if (name.Split('/').Any(part => part is "" or "." or "..")) return new Refusal($"The name “{shown}” leads out of the content.");
        if (name == PackNoteFile.Name || ContentPlace.Of(name) is not null) return null;
        return new Refusal($"“{shown}” is no file of content.");
    }

    private static Outcome<string, Refusal> Text(ZipArchiveEntry entry, ref long room)
    {
        var shown = Shown(entry.FullName);
        var buffer = ArrayPool<byte>.Shared.Rent(ContentFile.LargestSize + 1);
        try
        {
            using var stream = entry.Open();
            var length = stream.ReadAtLeast(buffer.AsSpan(0, ContentFile.LargestSize + 1), ContentFile.LargestSize + 1, throwOnEndOfStream: false);
            if (length > ContentFile.LargestSize) return new Refusal($"The file “{shown}” is larger than 1 MiB.");
            room -= length;
            if (room < 0) return new Refusal("The pack holds far more than its size says: it is not read.");
            var text = Strict.GetString(buffer, 0, length);
            var problems = new ProblemList(entry.FullName);
            if (!PlainText.IsSound(new(entry.FullName, text), problems)) return new Refusal($"The file “{shown}” is no plain text.");
            if (ContentPlace.Of(entry.FullName) is not { Sort: ContentSort.Picture }) return text;
            // A picture that could run or fetch something is not even kept as a draft.
            SvgPicture.Check(new(entry.FullName, text), problems);
            return problems.HasErrors ? new Refusal($"The picture “{shown}” is not taken: {problems.All[0].Sentence}") : text;
        }
        catch (DecoderFallbackException)
        {
            return new Refusal($"The file “{shown}” is not in UTF-8.");
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    /// <summary>A name as it can be told to somebody: short, and without signs that would do something.</summary>
    private static string Shown(string name) => Fields.Shown(string.Concat(name.Take(100).Select(c => char.IsControl(c) ? '\uFFFD' : c)));

    [GeneratedRegex("^[A-Za-z]:")]
    private static partial Regex Drive();
}
