using System.Globalization;
using Training.Content;

namespace Training.Web.Features.Shared;

/// <summary>The languages that the interface speaks.</summary>
public static class Tongues
{
    /// <summary>The cookie that keeps the choice of a reader who is not signed in, until the browser is closed.</summary>
    public const string Cookie = "training-language";

    /// <summary>All of them, the default first.</summary>
    public static IReadOnlyList<Tongue> All { get; } =
    [
        new(ContentLibrary.DefaultLanguage, "English", "en-GB"), new("es", "Español", "es"), new("hi", "हिन्दी", "hi"),
    ];

    /// <summary>All but the default: those that texts are translated into.</summary>
    public static IReadOnlyList<Tongue> Others { get; } = [.. All.Skip(1)];

    /// <summary>The languages that a file in English is not there in yet; none where such a file is never translated.</summary>
    /// <param name="path">The file in English.</param>
    /// <param name="isThere">Whether there is a file of a path.</param>
    public static IReadOnlyList<Tongue> LackedBy(string path, Func<string, bool> isThere) =>
        ContentFile.CanBeTranslated(path) ? [.. Others.Where(tongue => !isThere(ContentFile.TranslationOf(path, tongue.Code)))] : [];

    /// <summary>The language of this request.</summary>
    public static Tongue Current => Find(CultureInfo.CurrentUICulture.TwoLetterISOLanguageName) ?? All[0];

    /// <summary>The language of a code, or null.</summary>
    /// <param name="code">The code, such as <c>es</c>.</param>
    public static Tongue? Find(string? code) =>
        All.FirstOrDefault(tongue => string.Equals(tongue.Code, code, StringComparison.OrdinalIgnoreCase));

    /// <summary>Writes something in a language, whichever the request's is.</summary>
    /// <typeparam name="T">What is written.</typeparam>
    /// <param name="code">The language, such as <c>es</c>; one that the interface does not speak is English.</param>
    /// <param name="write">Writes it.</param>
    public static T In<T>(string? code, Func<T> write)
    {
        ArgumentNullException.ThrowIfNull(write);
        var (culture, ui) = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo((Find(code) ?? All[0]).Culture);
            return write();
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (culture, ui);
        }
    }

    /// <summary>What a language calls itself; its code where the interface does not speak it.</summary>
    /// <param name="code">The code, such as <c>es</c>.</param>
    public static string NameOf(string code) => Find(code)?.Name ?? code;
}

/// <summary>A language of the interface.</summary>
/// <param name="Code">Its code in addresses, files and records, such as <c>es</c>.</param>
/// <param name="Name">What it calls itself.</param>
/// <param name="Culture">How it writes numbers and days.</param>
public sealed record Tongue(string Code, string Name, string Culture)
{
    /// <summary>Whether the letters of printed sheets can write it: those of Devanagari would have to be shaped, which the printing cannot do.</summary>
    public bool CanBePrinted => Code != "hi";

    /// <summary>Which way it is written, as HTML says it.</summary>
    public string Direction => CultureInfo.GetCultureInfo(Culture).TextInfo.IsRightToLeft ? "rtl" : "ltr";
}
