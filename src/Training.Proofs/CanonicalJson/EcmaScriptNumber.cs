using System.Globalization;

namespace Training.Proofs.CanonicalJson;

/// <summary>
/// Writes a double as ECMAScript's <c>Number::toString</c> does (ECMA-262, section 6.1.6.1.20), which RFC 8785,
/// section 3.2.2.3, prescribes: the fewest digits that read back as the same double.
/// </summary>
public static class EcmaScriptNumber
{
    /// <summary>The text of a number.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite: JSON has no such number.</exception>
    public static string Format(double number)
    {
        if (!double.IsFinite(number))
            throw new ArgumentOutOfRangeException(nameof(number), number, "JSON has no number that is not finite.");
        if (number == 0)
            return "0";
        (string digits, int point) = ShortestDigits(Math.Abs(number));
        return (number < 0 ? "-" : "") + Lay(digits, point);
    }

    /// <summary>The digits d and the place n of the point, so that the number is 0.d times ten to the n.</summary>
    private static (string Digits, int Point) ShortestDigits(double number)
    {
        string text = number.ToString("R", CultureInfo.InvariantCulture);
        int e = text.IndexOf('E', StringComparison.Ordinal);
        int exponent = e < 0 ? 0 : int.Parse(text.AsSpan(e + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        string mantissa = e < 0 ? text : text[..e];
        int dot = mantissa.IndexOf('.', StringComparison.Ordinal);
        int whole = dot < 0 ? mantissa.Length : dot;
        string digits = dot < 0 ? mantissa : mantissa.Remove(dot, 1);
        int leading = digits.Length - digits.TrimStart('0').Length;
        return (digits.Trim('0'), whole + exponent - leading);
    }

    private static string Lay(string digits, int point)
    {
        int count = digits.Length;
        if (count <= point && point <= 21)
            return digits + new string('0', point - count);
        if (0 < point && point <= 21)
            return $"{digits[..point]}.{digits[point..]}";
        if (-6 < point && point <= 0)
            return $"0.{new string('0', -point)}{digits}";
        string power = (point - 1).ToString("+0;-0", CultureInfo.InvariantCulture);
        return count == 1 ? $"{digits}e{power}" : $"{digits[0]}.{digits[1..]}e{power}";
    }
}
