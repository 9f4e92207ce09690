using NodaTime;
using Training.Web.Startup;

namespace Training.Web.Features.Shared;

/// <summary>
/// Tells moments in the time zone of whoever reads the page: that of their shop; staff of the provider belong to no shop
/// and read the server's.
/// </summary>
/// <param name="current">Who reads.</param>
/// <param name="people">Knows the shops.</param>
public sealed class ReaderZone(CurrentActor current, Training.Records.Accounts.People people)
{
    private string? zone;

    /// <summary>The IANA name of the zone.</summary>
    public async Task<string> Name()
    {
        if (zone is not null) return zone;
        if (await current.Find() is { Shop: { } shop } actor)
            zone = (await people.Shops(actor)).FirstOrDefault(view => view.Id == shop)?.TimeZone;
        return zone ??= DateTimeZoneProviders.Tzdb.GetSystemDefault().Id;
    }

    /// <summary>A moment with its day: <c>25 Nov 2026, 14:05 CET</c>.</summary>
    /// <param name="moment">The moment.</param>
    public async Task<string> Moment(Instant moment) => Dates.Moment(moment, await Name());

    /// <summary>A time of the day: <c>14:05 CET</c>.</summary>
    /// <param name="moment">The moment.</param>
    public async Task<string> Time(Instant moment) => Dates.Time(moment, await Name());
}
