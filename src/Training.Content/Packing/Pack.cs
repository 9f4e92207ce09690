using Training.Sequencing;

namespace Training.Content.Packing;

/// <summary>
/// Content that is taken from one place to another: a ZIP file of content files at their paths below <c>content/</c>, with
/// a note (<c>pack.json</c>) of who made it, under what licence, and what is in it by SHA-256. See <c>docs/packs.md</c>.
/// </summary>
/// <param name="Note">The note.</param>
/// <param name="Files">The files, in the order of their paths; at least one.</param>
public sealed record Pack(PackNote Note, IReadOnlyList<ContentFile> Files)
{
    /// <summary>The largest file that is taken for a pack, in bytes: 16 MiB.</summary>
    public const int LargestSize = 16 * 1024 * 1024;

    /// <summary>The most files that a pack holds.</summary>
    public const int MostFiles = 2_000;

    /// <summary>The most text that all files of a pack hold together, in bytes of UTF-8: 32 MiB.</summary>
    public const int LargestText = 32 * 1024 * 1024;

    /// <summary>Makes a pack of files that are known to be sound.</summary>
    /// <param name="files">The files, in any order.</param>
    /// <param name="madeBy">Who makes it, in one line.</param>
    /// <param name="licence">What may be done with it, in one line.</param>
    /// <param name="modules">The modules that it was asked for.</param>
    public static Pack Of(IReadOnlyList<ContentFile> files, string madeBy, string licence, IReadOnlyList<string> modules)
    {
        ContentFile[] sorted = [.. files.OrderBy(file => file.Path, StringComparer.Ordinal)];
        return new(new(OneLine(madeBy), OneLine(licence), [.. modules.Order(StringComparer.Ordinal)]), sorted);
    }

    /// <summary>The bytes of the pack. The same files and note give the same bytes: names sorted, no times, nothing compressed.</summary>
    public byte[] Write() => PackWriter.Write(this);

    /// <summary>Reads a pack whole, or refuses it whole with a sentence. Whoever made it is not trusted.</summary>
    /// <param name="bytes">The bytes.</param>
    public static Outcome<Pack, Refusal> Read(ReadOnlyMemory<byte> bytes) => PackReader.Read(bytes);

    private static string OneLine(string text) => string.Concat((text ?? "").Trim().Select(c => char.IsControl(c) ? ' ' : c));
}

/// <summary>What a pack says of itself.</summary>
/// <param name="MadeBy">Who made it.</param>
/// <param name="Licence">What may be done with it.</param>
/// <param name="Modules">The modules that it was asked for; the rest is what they need.</param>
public sealed record PackNote(string MadeBy, string Licence, IReadOnlyList<string> Modules);
