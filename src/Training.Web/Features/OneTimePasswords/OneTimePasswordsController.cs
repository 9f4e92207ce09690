using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.OneTimePasswords;

/// <summary>A new password for somebody who forgot theirs.</summary>
[Authorize(Roles = Roles.Owner + "," + Roles.Administrator)]
public sealed class OneTimePasswordsController(Training.Records.Accounts.People people, CurrentActor current) : Controller
{
    /// <summary>Gives a one-time password; the person's page shows it once.</summary>
    /// <param name="person">Who forgot theirs.</param>
    [HttpPost("/people/{person}/password")]
    public async Task<IActionResult> Create(PersonId person)
    {
        var outcome = await people.GiveOneTimePassword(await current.Get(), person);
        if (!outcome.IsOk) return this.NotDone(outcome.Fault, $"/people/{person}");
        TempData["one-time-password"] = outcome.Value.OneTimePassword;
        return Redirect($"/people/{person}");
    }
}
