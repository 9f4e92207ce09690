using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.SigningKeys;

/// <summary>The keys that proofs are signed with.</summary>
[Authorize(Roles = Roles.Administrator)]
public sealed class SigningKeysController(Training.Records.Issuers.SigningKeys keys, CurrentActor current) : Controller
{
    /// <summary>The keys, and the forms that change them.</summary>
    [HttpGet("/signing-key")]
    public async Task<IActionResult> Index()
    {
        var outcome = await keys.Look(await current.Get());
        return outcome.IsOk ? View(outcome.Value) : this.NotShown(outcome.Fault);
    }
}
