using NodaTime;
using Training.Records.Accounts;

namespace Training.Records.Storage;

/// <summary>The time of a clock in the records' types.</summary>
internal static class Now
{
    /// <summary>The instant that the clock shows.</summary>
    public static Instant Instant(this TimeProvider clock) => NodaTime.Instant.FromDateTimeOffset(clock.GetUtcNow());

    /// <summary>The whole second that the clock shows, for documents that people read.</summary>
    public static Instant WholeSecond(this TimeProvider clock) => NodaTime.Instant.FromUnixTimeSeconds(clock.Instant().ToUnixTimeSeconds());

    /// <summary>The day that an instant falls on in a shop.</summary>
    public static LocalDate DayIn(this Instant at, Shop shop) => at.InZone(DateTimeZoneProviders.Tzdb[shop.TimeZone]).Date;

    /// <summary>A length of time of the content as one of the clock's.</summary>
    public static Duration ToNoda(this Training.Sequencing.Procedures.Duration length) => Duration.FromTicks((double)(length.Seconds * NodaConstants.TicksPerSecond));
}
