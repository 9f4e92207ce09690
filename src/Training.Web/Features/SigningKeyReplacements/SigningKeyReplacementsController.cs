using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.SigningKeyReplacements;

/// <summary>A new key in the place of the present one, which ends.</summary>
[Authorize(Roles = Roles.Administrator)]
public sealed class SigningKeyReplacementsController(
    Training.Records.Issuers.SigningKeys keys, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Makes the new key.</summary>
    [HttpPost("/signing-key/replacements")]
    public async Task<IActionResult> Create()
    {
        var outcome = await keys.Replace(await current.Get());
        return outcome.IsOk
            ? this.Done(words["A new key signs from now on and the old one has ended. Tell customers to download their proofs anew, and back up the server's data now."], "/signing-key")
            : this.NotDone(outcome.Fault, "/signing-key");
    }
}
