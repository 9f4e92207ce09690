using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Training.Sequencing;

namespace Training.Content.Packing;

/// <summary>The note of a pack as JSON.</summary>
internal static class PackNoteFile
{
    public const string Name = "pack.json";
    public const string Format = "chassis-training-pack";
    public const int Version = 1;
    private const int LongestLine = 300;

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        MaxDepth = 8,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
    };

    public static byte[] Write(Pack pack) => Encoding.UTF8.GetBytes(JsonSerializer.Serialize(
        new Written(Format, Version, pack.Note.MadeBy, pack.Note.Licence, pack.Note.Modules,
            [.. pack.Files.Select(file => new WrittenFile(file.Path, file.Hash.Hex))]), Options) + "\n");

    /// <summary>Reads the note and holds the files against it.</summary>
    public static Outcome<Pack, Refusal> Read(string text, IReadOnlyList<ContentFile> files)
    {
        Written? note;
        try
        {
            // The version first: a later one may have keys that this reader does not know.
            if (VersionOf(text) is { } later && later != Version)
                return new Refusal($"The pack is of version {later}, and version {Version} is read here: ask for it in that version.");
            note = JsonSerializer.Deserialize<Written>(text, Options);
        }
        catch (JsonException)
        {
            return new Refusal($"The note “{Name}” of the pack cannot be read: ask for the pack again.");
        }

        if (note is null || note.Format != Format) return new Refusal($"The note “{Name}” is not that of a pack of content.");
        if (!IsLine(note.MadeBy) || !IsLine(note.Licence) || note.Modules.Any(module => !IsLine(module)))
            return new Refusal($"The note “{Name}” of the pack has a line that is too long, or none at all: ask for the pack again.");
        if (!note.Files.Select(file => file.Path).SequenceEqual(files.Select(file => file.Path)))
            return new Refusal("What is in the pack is not what its note lists: it was altered on the way. Ask for it again.");
        foreach (var (told, file) in note.Files.Zip(files))
            if (told.Sha256 != file.Hash.Hex)
                return new Refusal($"The file “{file.Path}” is not what the note of the pack says: it was altered on the way. Ask for it again.");
        return new Pack(new(note.MadeBy, note.Licence, note.Modules), files);
    }

    private static int? VersionOf(string text)
    {
        using var json = JsonDocument.Parse(text, new JsonDocumentOptions { MaxDepth = Options.MaxDepth });
        return json.RootElement.ValueKind == JsonValueKind.Object && json.RootElement.TryGetProperty("version", out var version)
            && version.ValueKind == JsonValueKind.Number && version.TryGetInt32(out var number) ? number : null;
    }

    private static bool IsLine(string line) => !string.IsNullOrWhiteSpace(line) && line.Length <= LongestLine && !line.Any(char.IsControl);

    private sealed record Written(
        string Format, int Version, string MadeBy, string Licence, IReadOnlyList<string> Modules, IReadOnlyList<WrittenFile> Files);

    private sealed record WrittenFile(string Path, string Sha256);
}
