using System.ComponentModel;
using System.Security.Claims;

namespace Training.Web.Features.Shared;

/// <summary>Where a person can go, by what they may do: the row of links at the top of every page.</summary>
/// <param name="configuration">Names the provider (<c>Provider:Name</c>) and its time zone (<c>Provider:TimeZone</c>).</param>
public sealed class Rooms(IConfiguration configuration)
{
    /// <summary>The claim that carries the name that a person is called by.</summary>
    public const string NameClaim = "called";

    private static readonly (string Role, Room Room)[] All =
    [
        ("technician", new("Next", "/next")),
        ("technician", new("Learn", "/modules")),
        ("technician", new("Practise", "/scenarios")),
        ("technician", new("My records", "/records")),
        ("technician", new("Bench", "/bench")),
        ("examiner", new("Sittings", "/sittings")),
        ("examiner", new("Observed runs", "/runs")),
        ("examiner", new("Results", "/results")),
        ("examiner", new("Bench", "/bench")),
        ("owner", new("Coverage", "/coverage")),
        ("owner", new("Jobs", "/jobs")),
        ("owner", new("Reminders", "/reminders")),
        ("owner", new("Our people", "/people")),
        ("owner", new("Proofs", "/proofs")),
        ("owner", new("Results", "/results")),
        ("owner", new("Bench", "/bench")),
        ("trainer", new("Desk", "/desk")),
        ("trainer", new("Content", "/publishing")),
        ("trainer", new("Results", "/results")),
        ("trainer", new("Learn", "/modules")),
        ("trainer", new("Bench", "/bench")),
        ("administrator", new("Shops", "/shops")),
        ("administrator", new("People", "/people")),
        ("administrator", new("Results", "/results")),
        ("administrator", new("Signing key", "/signing-key")),
    ];

    /// <summary>What the provider is called.</summary>
    public string Provider { get; } = configuration["Provider:Name"] ?? "Training centre";

    /// <summary>The IANA name of the provider's time zone, in which its own staff read times.</summary>
    public string TimeZone { get; } = configuration["Provider:TimeZone"] ?? Dates.NoShop;

    /// <summary>The links for a person: each address once.</summary>
    /// <param name="person">Who is signed in.</param>
    public static IReadOnlyList<Room> For(ClaimsPrincipal person) =>
        [.. All.Where(entry => person.IsInRole(entry.Role)).Select(entry => entry.Room).DistinctBy(room => room.Address)];

    /// <summary>What a person is called.</summary>
    /// <param name="person">Who is signed in.</param>
    public static string NameOf(ClaimsPrincipal person)
    {
        ArgumentNullException.ThrowIfNull(person);
        return person.FindFirstValue(NameClaim) ?? person.Identity?.Name ?? "";
    }
}

/// <summary>A link at the top of the page.</summary>
/// <param name="Name">What it says.</param>
/// <param name="Address">Where it leads.</param>
public sealed record Room([Localizable(true)] string Name, string Address)
{
    /// <summary>Whether a page belongs to this room.</summary>
    /// <param name="path">The page's path.</param>
    public bool Holds(PathString path) => path.StartsWithSegments(Address, StringComparison.Ordinal);
}
