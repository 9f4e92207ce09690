using System.Globalization;
using System.Text;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Findings;

/// <summary>
/// Puts a finding into sentences for the technician, always in one order: what happened, why it matters, what can come
/// of it, what to do instead.
/// </summary>
internal static class Sentences
{
    public static string Join(string happened, string? because, string? otherwise, string instead)
    {
        var text = new StringBuilder(happened);
        if (!string.IsNullOrWhiteSpace(because)) text.Append(' ').Append(Closed(because));
        if (!string.IsNullOrWhiteSpace(otherwise)) text.Append(" What can happen: ").Append(Closed(otherwise));
        return text.Append(' ').Append(instead).ToString();
    }

    public static string Join(string happened, Rule rule, string instead) =>
        Join(happened, rule.Because, rule.Otherwise, instead);

    /// <summary>A time as people say it: seconds up to two minutes, then minutes and hours.</summary>
    public static string Spoken(decimal seconds) => seconds switch
    {
        < 120 => Number(seconds) + " s",
        < 7200 => Number(seconds / 60) + " min",
        _ => Number(seconds / 3600) + " h",
    };

    /// <summary>Where something stands, in words.</summary>
    public static string Place(int place) =>
        place < 0 ? "done before you began" : string.Create(CultureInfo.InvariantCulture, $"place {place + 1}");

    // Rounded upwards to a hundredth: a time to wait is never told shorter than it must be.
    private static string Number(decimal value) =>
        (Math.Ceiling(value * 100) / 100).ToString("0.##", CultureInfo.InvariantCulture);

    private static string Closed(string text)
    {
        var trimmed = text.Trim();
        return trimmed[^1] is '.' or '!' or '?' ? trimmed : trimmed + ".";
    }
}
