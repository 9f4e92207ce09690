using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Writing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.DraftBases;

/// <summary>What a draft is based on.</summary>
[Authorize(Roles = Roles.Trainer)]
public sealed class DraftBasesController(DraftPublishing publishing, CurrentActor current) : Controller
{
    /// <summary>Goes on with a draft though what is served of its file was changed after it began: somebody looked at both.</summary>
    /// <param name="draft">The draft.</param>
    [HttpPost("/desk/drafts/{draft}/base")]
    public async Task<IActionResult> Create(DraftId draft)
    {
        var gone = await publishing.GoOn(await current.Get(), draft);
        return gone.IsOk ? Redirect($"/desk/drafts/{draft}") : this.NotDone(gone.Fault, $"/desk/drafts/{draft}");
    }
}
