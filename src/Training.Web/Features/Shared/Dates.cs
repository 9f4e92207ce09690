using System.Globalization;
using NodaTime;

namespace Training.Web.Features.Shared;

/// <summary>Days and moments as people read them: <c>25 Nov 2026</c>, <c>25 Nov 2026, 14:05 CET</c>.</summary>
public static class Dates
{
    private static readonly CultureInfo Written = CultureInfo.GetCultureInfo("en-GB");

    /// <summary>A day: <c>25 Nov 2026</c>.</summary>
    /// <param name="day">The day.</param>
    public static string Day(LocalDate day) => day.ToString("d MMM uuuu", Names);

    /// <summary>A moment with its day and its time zone: <c>25 Nov 2026, 14:05 CET</c>.</summary>
    /// <param name="moment">The moment.</param>
    /// <param name="zone">The IANA name of the time zone.</param>
    public static string Moment(Instant moment, string zone) => $"{Day(Local(moment, zone).Date)}, {Time(moment, zone)}";

    /// <summary>A time of the day with its time zone: <c>14:05 CET</c>.</summary>
    /// <param name="moment">The moment.</param>
    /// <param name="zone">The IANA name of the time zone.</param>
    public static string Time(Instant moment, string zone)
    {
        var local = Local(moment, zone);
        return $"{local.TimeOfDay.ToString("HH:mm", Written)} {NameOf(local)}";
    }

    // September is "Sept" in the newer British data; three letters for every month keep columns of days even.
    private static readonly CultureInfo Names = WithEvenMonths();

    private static CultureInfo WithEvenMonths()
    {
        var culture = (CultureInfo)Written.Clone();
        string[] months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec", ""];
        culture.DateTimeFormat.AbbreviatedMonthNames = months;
        culture.DateTimeFormat.AbbreviatedMonthGenitiveNames = months;
        return CultureInfo.ReadOnly(culture);
    }

    private static ZonedDateTime Local(Instant moment, string zone) =>
        moment.InZone(DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) ?? DateTimeZone.Utc);

    // Zones without a name of their own are called by their offset in the data, such as "+03"; UTC is put before it.
    private static string NameOf(ZonedDateTime local)
    {
        var name = local.GetZoneInterval().Name;
        return name.StartsWith('+') || name.StartsWith('-') ? "UTC" + name : name;
    }
}
