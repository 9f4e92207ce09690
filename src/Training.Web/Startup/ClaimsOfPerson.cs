using System.Security.Claims;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;
using Training.Records.Accounts;
using Training.Web.Features.Shared;

namespace Training.Web.Startup;

/// <summary>Adds what a person is called to the sign-in, and whether they must choose a password first.</summary>
public sealed class ClaimsOfPerson(UserManager<Person> people, RoleManager<Role> roles, IOptions<IdentityOptions> options)
    : UserClaimsPrincipalFactory<Person, Role>(people, roles, options)
{
    /// <summary>Stands on a sign-in that was made with a password that somebody else gave.</summary>
    public const string OneTimePassword = "one-time-password";

    /// <inheritdoc/>
    protected override async Task<ClaimsIdentity> GenerateClaimsAsync(Person user)
    {
        ArgumentNullException.ThrowIfNull(user);
        var claims = await base.GenerateClaimsAsync(user);
        claims.AddClaim(new(Rooms.NameClaim, user.DisplayName));
        if (user.HasOneTimePassword) claims.AddClaim(new(OneTimePassword, "yes"));
        return claims;
    }
}
