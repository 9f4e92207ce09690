using System.Globalization;
using System.Text.RegularExpressions;

namespace Training.Proofs;

/// <summary>
/// Instants as XML Schema 1.1 dateTimeStamp: a date and time that always says its zone. Verifiable Credentials 2.0
/// and Data Integrity 1.0 write every instant this way.
/// </summary>
public static partial class DateTimeStamp
{
    /// <summary>Writes an instant in UTC, with as many digits of a second as it has: <c>2026-03-01T08:00:00Z</c>.</summary>
    public static string Format(DateTimeOffset instant) =>
        instant.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.FFFFFFF'Z'", CultureInfo.InvariantCulture);

    /// <summary>The day of an instant in UTC, as a sentence tells it: <c>1 Mar 2026</c>.</summary>
    public static string Day(DateTimeOffset instant) => instant.UtcDateTime.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>Reads an instant; years 0001 to 9999, digits of a second beyond the seventh are dropped.</summary>
    public static Outcome<DateTimeOffset> Parse(string? text)
    {
        Match match = text is { Length: <= 64 } ? Shape().Match(text) : Match.Empty;
        if (!match.Success)
            return new Refused("An instant is written like 2026-03-01T08:00:00Z, with its time zone.");
        // XML Schema lets midnight at the end of a day be written as hour 24.
        bool endOfDay = match.Groups["h"].Value == "24";
        string fraction = match.Groups["f"].Value is { Length: > 0 } f ? f[..Math.Min(f.Length, 8)] : "";
        string plain = match.Groups["d"].Value + "T" + (endOfDay ? "00" : match.Groups["h"].Value)
            + match.Groups["ms"].Value + fraction + match.Groups["z"].Value;
        try
        {
            DateTimeOffset instant = DateTimeOffset.ParseExact(
                plain, "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal);
            return endOfDay ? instant.AddDays(1) : instant;
        }
        catch (Exception e) when (e is FormatException or ArgumentOutOfRangeException)
        {
            return new Refused($"There is no such day or time as {text}.");
        }
    }

    [GeneratedRegex(
        @"\A(?<d>[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01]))T"
        + @"((?<h>[01][0-9]|2[0-3])(?<ms>:[0-5][0-9]:[0-5][0-9])(?<f>\.[0-9]+)?|(?<h>24)(?<ms>:00:00)(\.0+)?)"
        + @"(?<z>Z|[+-]((0[0-9]|1[0-3]):[0-5][0-9]|14:00))\z",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Shape();
}
