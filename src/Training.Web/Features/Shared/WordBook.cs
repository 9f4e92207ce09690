using System.Collections.Frozen;
using System.Globalization;
using System.Text.Json;
using Microsoft.Extensions.Localization;

namespace Training.Web.Features.Shared;

/// <summary>
/// Finds the words of the interface in the reader's language. They stand beside this class, a file a language, the
/// English sentence as the key. Not resource files: those take “Done” and “done” for one key.
/// </summary>
public sealed class WordBook : IStringLocalizer<Words>
{
    private readonly string? code;

    /// <summary>The words in the language of the request.</summary>
    public WordBook()
    {
    }

    private WordBook(string code) => this.code = code;

    private static readonly JsonSerializerOptions Strict = new() { AllowDuplicateProperties = false };

    private static readonly FrozenDictionary<string, FrozenDictionary<string, string>> Books = Tongues.All
        .ToFrozenDictionary(tongue => tongue.Code, tongue => Read(tongue.Code));

    /// <inheritdoc/>
    public LocalizedString this[string name]
    {
        get
        {
            ArgumentNullException.ThrowIfNull(name);
            var known = Books[code ?? Tongues.Current.Code].TryGetValue(name, out var words);
            return new(name, known ? words! : name, !known);
        }
    }

    /// <inheritdoc/>
    public LocalizedString this[string name, params object[] arguments]
    {
        get
        {
            var words = this[name];
            return new(name, string.Format(CultureInfo.CurrentCulture, words.Value, arguments), words.ResourceNotFound);
        }
    }

    /// <inheritdoc/>
    public IEnumerable<LocalizedString> GetAllStrings(bool includeParentCultures) =>
        Books[code ?? Tongues.Current.Code].Select(entry => new LocalizedString(entry.Key, entry.Value));

    /// <summary>The words in a language of their own, for a text that is not in the reader's.</summary>
    /// <param name="language">The language, such as <c>es</c>; English where the interface does not speak it.</param>
    public static IStringLocalizer<Words> For(string language) => new WordBook((Tongues.Find(language) ?? Tongues.All[0]).Code);

    /// <summary>The words of a language by their English; English has no book of its own.</summary>
    /// <param name="code">The language, such as <c>es</c>.</param>
    public static FrozenDictionary<string, string> Read(string code)
    {
        if (code == Tongues.All[0].Code) return FrozenDictionary<string, string>.Empty;
        using var file = typeof(Words).Assembly.GetManifestResourceStream($"{typeof(Words).FullName}.{code}.json")!;
        return JsonSerializer.Deserialize<Dictionary<string, string>>(file, Strict)!.ToFrozenDictionary(StringComparer.Ordinal);
    }
}
