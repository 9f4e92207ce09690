using System.Globalization;

namespace Training.Measures.Workings;

/// <summary>A number in a sum: its letter in the formula, its exact value and its unit.</summary>
/// <param name="Symbol">The letter or word that stands for it in the formula; no spaces.</param>
/// <param name="Value">The value, never rounded.</param>
/// <param name="Unit">The unit's symbol, empty for a bare number.</param>
/// <param name="Decimals">Decimal places in print; null prints four significant digits.</param>
public sealed record Term(string Symbol, double Value, string Unit, int? Decimals = null)
{
    /// <summary>The number and its unit, rounded for print alone.</summary>
    /// <param name="format">The reader's number format.</param>
    public string Print(IFormatProvider format)
    {
        var number = Digits(Value, Decimals, format);
        return Unit.Length == 0 ? number : $"{number}\u00A0{Unit}";
    }

    /// <inheritdoc/>
    public override string ToString() => Print(CultureInfo.InvariantCulture);

    internal static string Digits(double value, int? decimals, IFormatProvider format)
    {
        if (decimals is { } places)
            return value.ToString("F" + places.ToString(CultureInfo.InvariantCulture), format);
        var magnitude = value == 0 ? 0 : (int)Math.Floor(Math.Log10(Math.Abs(value)));
        var shown = Math.Clamp(3 - magnitude, 0, 9);
        return value.ToString(shown == 0 ? "0" : "0." + new string('#', shown), format);
    }
}
