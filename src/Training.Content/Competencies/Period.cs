using System.Globalization;
using System.Text.RegularExpressions;

namespace Training.Content.Competencies;

/// <summary>
/// A length of calendar time as ISO 8601 writes it: years and months, weeks and days; no times of day.
/// <c>P24M</c> is 24 months, <c>P2Y</c> as many, <c>P4W</c> 28 days, <c>P1Y6M10D</c> 18 months and 10 days.
/// </summary>
public readonly partial record struct Period
{
    private Period(int months, int days) => (Months, Days) = (months, days);

    /// <summary>The months, 12 for a year.</summary>
    public int Months { get; }

    /// <summary>The days, 7 for a week.</summary>
    public int Days { get; }

    /// <summary>Whether it is no time at all.</summary>
    public bool IsZero => Months == 0 && Days == 0;

    /// <summary>Reads an ISO 8601 period of whole years, months, weeks and days.</summary>
    /// <param name="text">The text.</param>
    /// <param name="period">The period where the text is one.</param>
    /// <returns>False where the text is none, has a time of day, or is longer than a hundred years.</returns>
    public static bool TryParse(string? text, out Period period)
    {
        period = default;
        if (text is null || text.Length > 20) return false;
        var match = Iso8601().Match(text);
        if (!match.Success || text.Length < 3) return false;
        var months = (Number("y") * 12) + Number("m");
        var days = (Number("w") * 7) + Number("d");
        if (months > 1200 || days > 36_525) return false;
        period = new(months, days);
        return true;

        int Number(string unit) => match.Groups[unit] is { Success: true } group
            ? int.Parse(group.ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture)
            : 0;
    }

    /// <summary>The date that lies this far after another. A month's end that does not exist is its last day.</summary>
    /// <param name="date">The date.</param>
    public DateOnly After(DateOnly date) => date.AddMonths(Months).AddDays(Days);

    /// <summary>The date that lies this far before another.</summary>
    /// <param name="date">The date.</param>
    public DateOnly Before(DateOnly date) => date.AddMonths(-Months).AddDays(-Days);

    /// <summary>The period in ISO 8601, such as <c>P24M</c>.</summary>
    public override string ToString() => (Months, Days) switch
    {
        (0, var days) => string.Create(CultureInfo.InvariantCulture, $"P{days}D"),
        (var months, 0) => string.Create(CultureInfo.InvariantCulture, $"P{months}M"),
        var (months, days) => string.Create(CultureInfo.InvariantCulture, $"P{months}M{days}D"),
    };

    [GeneratedRegex(@"\AP(?:(?<y>[0-9]{1,5})Y)?(?:(?<m>[0-9]{1,5})M)?(?:(?<w>[0-9]{1,5})W)?(?:(?<d>[0-9]{1,5})D)?\z", RegexOptions.CultureInvariant)]
    private static partial Regex Iso8601();
}
