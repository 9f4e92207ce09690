using System.IO.Compression;
using System.Text;

namespace Training.Content.Packing;

/// <summary>Writes packs.</summary>
internal static class PackWriter
{
    // The first moment that a ZIP file can tell (APPNOTE.TXT 4.4.6): a pack says nothing about when it was made.
    private static readonly DateTimeOffset NoTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    // A plain file that its owner may write and everybody may read, as Unix has it in the upper half.
    private const int PlainFile = unchecked((int)0x81A40000);

    public static byte[] Write(Pack pack)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true, Encoding.UTF8))
        {
            Add(zip, PackNoteFile.Name, PackNoteFile.Write(pack));
            foreach (var file in pack.Files) Add(zip, file.Path, Encoding.UTF8.GetBytes(file.Text));
        }

        return bytes.ToArray();
    }

    // Stored as it is: how a compressor packs the same bytes may differ from one version of it to the next.
    private static void Add(ZipArchive zip, string name, byte[] content)
    {
        var entry = zip.CreateEntry(name, CompressionLevel.NoCompression);
        entry.LastWriteTime = NoTime;
        entry.ExternalAttributes = PlainFile;
        using var stream = entry.Open();
        stream.Write(content);
    }
}
