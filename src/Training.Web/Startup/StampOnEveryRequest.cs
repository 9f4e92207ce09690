using System.Security.Claims;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;
using Training.Records;
using Training.Records.Accounts;

namespace Training.Web.Startup;

/// <summary>
/// Looks on every request whether a sign-in still holds: a new password, a one-time password and the removal of a name give
/// their person a new stamp, and every other sign-in ends with the old one. It is one read by the primary key; the claims
/// are made anew as seldom as Identity does by itself.
/// </summary>
public sealed class StampOnEveryRequest(
    IOptions<SecurityStampValidatorOptions> options, SignInManager<Person> signIn, ILoggerFactory logging, People people)
    : SecurityStampValidator<Person>(options, signIn, logging)
{
    /// <inheritdoc/>
    public override async Task ValidateAsync(CookieValidatePrincipalContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var borne = context.Principal?.FindFirstValue(SignInManager.Options.ClaimsIdentity.SecurityStampClaimType);
        var id = context.Principal?.FindFirstValue(ClaimTypes.NameIdentifier);
        if (borne is null || !Guid.TryParse(id, out var person) || await people.StampOf(new PersonId(person)) != borne)
        {
            context.RejectPrincipal();
            await SignInManager.SignOutAsync();
            return;
        }

        await base.ValidateAsync(context);
    }
}
