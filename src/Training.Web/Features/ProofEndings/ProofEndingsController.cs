using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Proving;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.ProofEndings;

/// <summary>Ending a proof.</summary>
[Authorize(Roles = Roles.Owner)]
public sealed class ProofEndingsController(
    CustomerProofs proofs, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Ends a proof: its link says so from now on and shows nothing else.</summary>
    /// <param name="proof">The proof.</param>
    [HttpPost("/proofs/{proof}/ending")]
    public async Task<IActionResult> Create(ProofId proof)
    {
        var outcome = await proofs.End(await current.Get(), proof);
        return outcome.IsOk
            ? this.Done(words["The proof is ended. Its link shows no names any more."], $"/proofs/{proof}")
            : this.NotDone(outcome.Fault, $"/proofs/{proof}");
    }
}
