using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records.Accounts;
using Training.Sequencing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.SigningKeyGivings;

/// <summary>Giving the key up because somebody else may hold it.</summary>
[Authorize(Roles = Roles.Administrator)]
public sealed class SigningKeyGivingsController(
    Training.Records.Issuers.SigningKeys keys, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Gives it up, if the box was ticked.</summary>
    /// <param name="sure">The box.</param>
    [HttpPost("/signing-key/givings-up")]
    public async Task<IActionResult> Create(string? sure)
    {
        if (sure != "yes") return this.NotDone(new Refusal(words["Nothing was changed. Tick the box if everything that this key signed is to be void."]), "/signing-key", nameof(sure));
        var outcome = await keys.GiveUp(await current.Get());
        return outcome.IsOk
            ? this.Done(words["The key is given up and a new one signs from now on. Tell customers to download their proofs anew."], "/signing-key")
            : this.NotDone(outcome.Fault, "/signing-key");
    }
}
