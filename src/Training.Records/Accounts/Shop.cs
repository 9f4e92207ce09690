using NodaTime;

namespace Training.Records.Accounts;

/// <summary>A body shop.</summary>
public sealed class Shop
{
    /// <summary>Its id.</summary>
    public required ShopId Id { get; init; }

    /// <summary>What it is called; no two have the same name.</summary>
    public required string Name { get; set; }

    /// <summary>The IANA name of its time zone, such as <c>Europe/London</c>; it decides which day a record begins and ends on.</summary>
    public required string TimeZone { get; set; }

    /// <summary>When it was added.</summary>
    public required Instant AddedAt { get; init; }
}
