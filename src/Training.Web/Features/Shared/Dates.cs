using System.Globalization;
using NodaTime;
using Length = Training.Sequencing.Procedures.Duration;

namespace Training.Web.Features.Shared;

/// <summary>Days and times as they are written on every page: <c>25 Nov 2026</c>, <c>25 Nov 2026, 14:05 GMT</c>.</summary>
public static class Dates
{
    /// <summary>The zone of people who belong to no shop.</summary>
    public const string NoShop = "Etc/UTC";

    /// <summary>A day.</summary>
    /// <param name="day">The day.</param>
    public static string Day(LocalDate day) => day.ToString("d MMM uuuu", Months);

    // The names of months in English are the same everywhere; British English would write one of them with four letters.
    private static CultureInfo Months => Tongues.Current == Tongues.All[0] ? CultureInfo.InvariantCulture : CultureInfo.CurrentUICulture;

    /// <summary>A month where there is little room, such as <c>Nov</c>; with its year in January.</summary>
    /// <param name="day">A day of it.</param>
    public static string Month(LocalDate day) => day.ToString(day.Month == 1 ? "MMM uuuu" : "MMM", Months);

    /// <summary>A month with its year.</summary>
    /// <param name="month">The month.</param>
    public static string YearMonth(YearMonth month) => month.OnDayOfMonth(1).ToString("MMM uuuu", Months);

    /// <summary>The day on which something happened.</summary>
    /// <param name="at">When.</param>
    /// <param name="zone">The IANA name of the zone that is told in.</param>
    public static string Day(Instant at, string zone) => Day(In(at, zone).Date);

    /// <summary>A time of day to the second, for what was saved just now.</summary>
    /// <param name="at">When.</param>
    /// <param name="zone">The IANA name of the zone that is told in.</param>
    public static string Second(Instant at, string zone) => In(at, zone).ToString("HH:mm:ss", CultureInfo.InvariantCulture);

    /// <summary>A day and a time with its zone.</summary>
    /// <param name="at">When.</param>
    /// <param name="zone">The IANA name of the zone that is told in.</param>
    public static string Moment(Instant at, string zone) => $"{Day(at, zone)}, {Time(at, zone)}";

    /// <summary>A time of day with its zone.</summary>
    /// <param name="at">When.</param>
    /// <param name="zone">The IANA name of the zone that is told in.</param>
    public static string Time(Instant at, string zone) => In(at, zone).ToString("HH:mm x", CultureInfo.InvariantCulture);

    /// <summary>
    /// How long something takes or waits: <c>90 s</c>, <c>30 min</c>, <c>2 h</c>. Whole minutes from two on are said in minutes.
    /// Number and symbol stay on one line.
    /// </summary>
    /// <param name="length">How long.</param>
    public static string Span(Length length)
    {
        var (number, symbol) = length.Seconds switch
        {
            >= 7200 and var seconds when seconds % 3600 == 0 => (seconds / 3600, "h"),
            >= 120 and var seconds when seconds % 60 == 0 => (seconds / 60, "min"),
            var seconds => (seconds, "s"),
        };
        return string.Create(CultureInfo.InvariantCulture, $"{number:0.#########}\u00a0{symbol}");
    }

    private static ZonedDateTime In(Instant at, string zone) =>
        at.InZone(DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) ?? DateTimeZone.Utc);
}
