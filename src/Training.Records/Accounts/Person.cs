using Microsoft.AspNetCore.Identity;
using NodaTime;

namespace Training.Records.Accounts;

/// <summary>Somebody who signs in.</summary>
public sealed class Person : IdentityUser<PersonId>
{
    /// <summary>The name that is shown and printed on records.</summary>
    public required string DisplayName { get; set; }

    /// <summary>The shop that the person belongs to; null for staff of the provider.</summary>
    public ShopId? ShopId { get; init; }

    /// <summary>The language that the person would rather read, such as <c>en</c> or <c>es</c>.</summary>
    public required string Language { get; set; }

    /// <summary>Whether the password was given by somebody else and must be replaced at the next sign-in.</summary>
    public bool HasOneTimePassword { get; set; }

    /// <summary>When the name was removed, because the person left the trade; null while it is there.</summary>
    public Instant? NameRemovedAt { get; set; }

    /// <summary>When the person was added.</summary>
    public required Instant AddedAt { get; init; }
}

/// <summary>One of <see cref="Roles"/>, as sign-in keeps it. Its key has the type of a person's because Identity wants one key type.</summary>
public sealed class Role : IdentityRole<PersonId>
{
}
