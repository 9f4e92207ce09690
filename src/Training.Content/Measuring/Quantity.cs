using System.Text.RegularExpressions;

namespace Training.Content.Measuring;

/// <summary>A number with a unit, or a specific gravity: what a reader may ask the source of.</summary>
internal static partial class Quantity
{
    /// <summary>The first quantity of a text as it is written; null where there is none.</summary>
    public static string? FirstIn(string text) => Pattern().Match(text) is { Success: true } match ? match.Value : null;

    /// <summary>Whether a text is a quantity with the sign of its unit, or such a sign alone, and nothing else but a plus or minus before it.</summary>
    public static bool IsAll(string text)
    {
        var bare = text.TrimStart('+', '-', '\u2212', ' ').TrimEnd();
        return IsWhole(bare) || IsWhole($"1 {bare}");
    }

    // A unit that is spelled out is a word of its language.
    private static bool IsWhole(string text) =>
        Pattern().Match(text) is { Success: true, Index: 0 } match && match.Length == text.Length && !match.Groups["spelled"].Success;

    /// <summary>The text with a no-break space in each quantity, so that no line ends between a number and its unit.</summary>
    public static string KeptTogether(string text) => Pattern().Replace(text, match => match.Value.Replace(' ', '\u00a0'));

    // A battery acid's specific gravity lies between 1.000 (water) and 1.400, and is written with three decimals.
    [GeneratedRegex(
        """
        (?<![\p{L}\p{N}.,/-])
        (?:
            [0-9]+(?:[ \u00A0\u202F][0-9]{3}|[.,][0-9]+)*[ \u00A0\u202F]*
            (?:s|min|h|ms|(?<spelled>seconds?|minutes?|hours?|days?|weeks?|months?|years?)
              |V|mV|kV|A|mA|Ah|Ω|mΩ|kΩ|Ohm|W|kW|mm[²2]?|cm|m|km|km/h|µm|°C|°F|K|%|bar|kPa|MPa|Pa|N·m|Nm|N|kN|kg|g|t|l|ml|dB)
            (?![\p{L}\p{N}])
          | 1\.[0-4][0-9]{2}(?![\p{N}.]|\p{L})
        )
        """,
        RegexOptions.IgnorePatternWhitespace | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Pattern();
}
