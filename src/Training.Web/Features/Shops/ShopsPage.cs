using NodaTime.TimeZones;
using Training.Records.Accounts;

namespace Training.Web.Features.Shops;

/// <summary>The shops and the form that adds one.</summary>
/// <param name="Shops">The shops, by name.</param>
/// <param name="Form">What was typed.</param>
public sealed record ShopsPage(IReadOnlyList<ShopView> Shops, AddShopForm Form)
{
    /// <summary>The time zones that people live in, by name.</summary>
    public static IReadOnlyList<string> TimeZones { get; } =
    [
        .. (TzdbDateTimeZoneSource.Default.ZoneLocations ?? []).Select(location => location.ZoneId)
            .Distinct().Order(StringComparer.Ordinal),
    ];
}

/// <summary>What is typed to add a shop.</summary>
public sealed class AddShopForm
{
    /// <summary>What it is called.</summary>
    public string? Name { get; init; }

    /// <summary>The IANA name of its time zone.</summary>
    public string? TimeZone { get; init; }
}
