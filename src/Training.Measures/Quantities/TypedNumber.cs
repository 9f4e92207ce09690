using System.Globalization;
using System.Text;

namespace Training.Measures.Quantities;

/// <summary>Reads a plain decimal number in any script's digits, with one decimal mark at most.</summary>
internal static class TypedNumber
{
    // Decimal point, decimal comma and the Arabic decimal separator.
    private const string DecimalMarks = ".,\u066B";

    // Hyphen-minus, minus sign, small and full-width hyphen.
    private const string Minuses = "-\u2212\uFE63\uFF0D";

    /// <summary>Where the number ends and the unit begins.</summary>
    public static int EndOf(string text)
    {
        var at = 0;
        while (at < text.Length && IsPart(text, at, out var width))
            at += width;
        return at;
    }

    /// <summary>The number, or null where the text is not one.</summary>
    public static double? Read(string text)
    {
        var plain = new StringBuilder(text.Length);
        for (var at = 0; at < text.Length;)
        {
            if (!IsPart(text, at, out var width))
                return null;
            plain.Append(Plain(text, at));
            at += width;
        }
        const NumberStyles style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
        return double.TryParse(plain.ToString(), style, CultureInfo.InvariantCulture, out var number) ? number : null;
    }

    private static bool IsPart(string text, int at, out int width)
    {
        width = char.IsSurrogatePair(text, at) ? 2 : 1;
        return DigitAt(text, at) >= 0 || DecimalMarks.Contains(text[at], StringComparison.Ordinal)
            || Minuses.Contains(text[at], StringComparison.Ordinal) || text[at] == '+';
    }

    private static char Plain(string text, int at)
    {
        var digit = DigitAt(text, at);
        if (digit >= 0)
            return (char)('0' + digit);
        if (DecimalMarks.Contains(text[at], StringComparison.Ordinal))
            return '.';
        return text[at] == '+' ? '+' : '-';
    }

    private static int DigitAt(string text, int at) => CharUnicodeInfo.GetDecimalDigitValue(text, at);
}
