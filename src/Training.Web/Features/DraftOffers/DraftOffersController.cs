using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Writing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.DraftOffers;

/// <summary>A draft that waits for another trainer's approval.</summary>
[Authorize(Roles = Roles.Trainer)]
public sealed class DraftOffersController(DraftPublishing publishing, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Asks for approval.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="version">The version that was looked at.</param>
    [HttpPost("/desk/drafts/{draft}/offer")]
    public async Task<IActionResult> Create(DraftId draft, int version)
    {
        var offered = await publishing.Offer(await current.Get(), draft, version);
        return offered.IsOk
            ? this.Done(words["Another trainer finds it on the desk and can approve it."], "/desk")
            : this.NotDone(offered.Fault, $"/desk/drafts/{draft}/publication");
    }
}
