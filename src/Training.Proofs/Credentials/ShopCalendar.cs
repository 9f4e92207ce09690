using System.Globalization;
using Training.Proofs.Log;

namespace Training.Proofs.Credentials;

/// <summary>
/// The calendar of the shop that a record belongs to. A record holds by whole days of that calendar, wherever in the
/// world it is looked at. The entry of the log names its time zone; where it names none that is known here, days are
/// those of UTC.
/// </summary>
public sealed class ShopCalendar
{
    private const string ZoneMember = "zone";

    private readonly TimeZoneInfo zone;

    private ShopCalendar(TimeZoneInfo zone) => this.zone = zone;

    /// <summary>The calendar of UTC.</summary>
    public static ShopCalendar Utc { get; } = new(TimeZoneInfo.Utc);

    /// <summary>The calendar that an entry of the log names.</summary>
    /// <param name="entry">The entry that issued the record; null where it is not at hand.</param>
    public static ShopCalendar Of(LogEntry? entry) =>
        entry?.Content()[ZoneMember] is { } name && CanonicalJson.JsonMembers.AsText(name) is { } id
        && TimeZoneInfo.TryFindSystemTimeZoneById(id, out TimeZoneInfo? zone)
            ? new(zone)
            : Utc;

    /// <summary>The day on which an instant falls.</summary>
    public DateOnly DayOf(DateTimeOffset instant)
    {
        // The first and the last hours of all time have no day in some zones.
        try
        {
            return DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(instant, zone).DateTime);
        }
        catch (ArgumentOutOfRangeException)
        {
            return DateOnly.FromDateTime(instant.UtcDateTime);
        }
    }

    /// <summary>The day of an instant as it is told: <c>30 Jun 2028</c>.</summary>
    public string Day(DateTimeOffset instant) => Written(DayOf(instant));

    /// <summary>A day as it is told: <c>30 Jun 2028</c>.</summary>
    public static string Written(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);
}
