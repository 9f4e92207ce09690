using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.DraftEndings;

/// <summary>A draft that is put away.</summary>
[Authorize(Roles = Roles.Trainer)]
public sealed class DraftEndingsController(
    Training.Records.Writing.Drafts drafts, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Puts it away; its texts are kept.</summary>
    /// <param name="draft">The draft.</param>
    [HttpPost("/desk/drafts/{draft}/put-away")]
    public async Task<IActionResult> Create(DraftId draft)
    {
        var ended = await drafts.PutAway(await current.Get(), draft);
        return ended.IsOk ? this.Done(words["The draft was put away."], "/desk") : this.NotDone(ended.Fault, $"/desk/drafts/{draft}");
    }
}
