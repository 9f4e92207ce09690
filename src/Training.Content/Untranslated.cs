using System.Text.RegularExpressions;
using Training.Content.Yaml;

namespace Training.Content;

/// <summary>
/// Finds what of a translation still says word for word what it translates: where somebody has begun one, or gone past a
/// sentence. A text of one word may be the same in both languages.
/// </summary>
internal static partial class Untranslated
{
    /// <summary>The fewest words that no two languages share by chance.</summary>
    public const int FewestWords = 2;

    /// <summary>What is said of such a text.</summary>
    public const string Sentence = "This is still the English text: translate it.";

    /// <summary>Reports a text that is the same as what it translates.</summary>
    public static void Report(YamlText? text, string? original, ProblemList problems)
    {
        if (text is not null && original is not null && IsSame(text.Text, original)) problems.Hold(text.Place, Sentence);
    }

    /// <summary>Whether a text is the same as what it translates, and more than a word.</summary>
    public static bool IsSame(string text, string original) => text.Trim() == original.Trim() && IsLong(text);

    /// <summary>Whether a text is long enough to differ in another language.</summary>
    public static bool IsLong(string text) => Word().Count(text) >= FewestWords;

    [GeneratedRegex(@"\p{L}{2,}", RegexOptions.CultureInvariant)]
    private static partial Regex Word();
}
