using System.Security.Cryptography;
using System.Text;

namespace Training.Content;

/// <summary>
/// One file of content as text, wherever it was kept. A reading of the same files gives the same library, so texts
/// that were stored when something was published can be read again years later.
/// </summary>
/// <param name="Path">Where it stands below <c>content/</c>, with <c>/</c> between the parts.</param>
/// <param name="Text">Its text.</param>
public sealed record ContentFile(string Path, string Text)
{
    /// <summary>The largest file that is read, in bytes of UTF-8: 1 MiB.</summary>
    public const int LargestSize = 1024 * 1024;

    /// <summary>The path of a text that stands in no file, such as one that is read from standard input: no id must fit its name.</summary>
    public const string Nameless = "-";

    /// <summary>The whole text.</summary>
    public string Text
    {
        get;
        init
        {
            field = value;
            Hash = ContentHash.Of(value);
        }
    } = Text;

    /// <summary>The SHA-256 of the text in UTF-8, without a byte-order mark. Worked out once: what was judged by is looked up by it again and again.</summary>
    public ContentHash Hash { get; private set; } = ContentHash.Of(Text);

    /// <summary>Why it could not be read; null where it was. A file with a fault has no text.</summary>
    public string? Fault { get; init; }

    /// <summary>Whether content is read from a path, by its name.</summary>
    /// <param name="path">A path below <c>content/</c>.</param>
    public static bool IsContent(string path) => ContentPlace.Of(path) is not null;

    /// <summary>Where the translation of a file stands: <c>lesson.es.md</c> for <c>lesson.md</c>.</summary>
    /// <param name="path">A path below <c>content/</c> that ends in <c>.md</c> or <c>.yaml</c>.</param>
    /// <param name="language">The language, such as <c>es</c>.</param>
    public static string TranslationOf(string path, string language)
    {
        ArgumentNullException.ThrowIfNull(path);
        return path.LastIndexOf('.') is var dot and >= 0 ? path.Insert(dot, $".{language}") : path;
    }

    /// <summary>The file that a translation translates; null where a path is none of a translation.</summary>
    /// <param name="path">A path below <c>content/</c>.</param>
    public static string? OriginalOf(string path) => ContentPlace.Of(path) switch
    {
        { Language: { } language } => path.Replace($".{language}.", ".", StringComparison.Ordinal),
        { Sort: ContentSort.Glossary, Id: not ContentLibrary.DefaultLanguage } => $"glossary/{ContentLibrary.DefaultLanguage}.yaml",
        _ => null,
    };

    /// <summary>Whether a file can be put into another language by a file beside it: a lesson, procedure, scenario or competency in the default language.</summary>
    /// <param name="path">A path below <c>content/</c>.</param>
    public static bool CanBeTranslated(string path) =>
        ContentPlace.Of(path) is { Language: null, Sort: not ContentSort.Picture and not ContentSort.Glossary };

    /// <summary>The last part of the path.</summary>
    public string Name => Path[(Path.LastIndexOf('/') + 1)..];
}

/// <summary>The SHA-256 of a text, by which answers, runs and records name what they were judged by.</summary>
public readonly record struct ContentHash
{
    private readonly string? hex;

    private ContentHash(string hex) => this.hex = hex;

    /// <summary>The hash in 64 lower-case hexadecimal digits.</summary>
    public string Hex => hex ?? new string('0', 64);

    /// <summary>The hash of a text in UTF-8.</summary>
    /// <param name="text">The text.</param>
    public static ContentHash Of(string text) => new(Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text))));

    /// <summary>Reads 64 lower-case hexadecimal digits.</summary>
    /// <param name="text">The text.</param>
    /// <param name="hash">The hash where the text is one.</param>
    /// <returns>False where the text is no hash.</returns>
    public static bool TryParse(string? text, out ContentHash hash)
    {
        hash = default;
        if (text is not { Length: 64 } || !text.All(c => c is >= '0' and <= '9' or >= 'a' and <= 'f')) return false;
        hash = new(text);
        return true;
    }

    /// <inheritdoc/>
    public override string ToString() => Hex;
}
