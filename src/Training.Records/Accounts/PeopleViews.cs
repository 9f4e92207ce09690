using NodaTime;

namespace Training.Records.Accounts;

/// <summary>Somebody to be added.</summary>
/// <param name="DisplayName">The name that is shown and printed.</param>
/// <param name="UserName">The name for signing in: letters, digits, hyphens, dots.</param>
/// <param name="Shop">The shop; null for staff of the provider.</param>
/// <param name="Roles">What they may do, at least one of <see cref="Accounts.Roles"/>.</param>
/// <param name="Language">The language that they would rather read.</param>
public sealed record NewPerson(string DisplayName, string UserName, ShopId? Shop, IReadOnlyList<string> Roles, string Language = "en");

/// <summary>Somebody's one-time password: shown once, to be handed over in person.</summary>
/// <param name="Person">The person.</param>
/// <param name="UserName">The name for signing in.</param>
/// <param name="OneTimePassword">The password, to be replaced at the first sign-in.</param>
public sealed record AddedPerson(PersonId Person, string UserName, string OneTimePassword);

/// <summary>A shop.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What it is called.</param>
/// <param name="TimeZone">The IANA name of its time zone.</param>
public sealed record ShopView(ShopId Id, string Name, string TimeZone);

/// <summary>A person.</summary>
/// <param name="Id">Their id.</param>
/// <param name="DisplayName">The name that is shown.</param>
/// <param name="UserName">The name for signing in.</param>
/// <param name="Shop">The shop; null for staff of the provider.</param>
/// <param name="Roles">What they may do.</param>
/// <param name="Language">The language that they would rather read.</param>
/// <param name="AddedAt">When they were added.</param>
public sealed record PersonView(
    PersonId Id, string DisplayName, string UserName, ShopView? Shop, IReadOnlyList<string> Roles, string Language, Instant AddedAt);
