using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.SittingClosings;

/// <summary>Closing a sitting.</summary>
[Authorize(Roles = Roles.Examiner + "," + Roles.Administrator)]
public sealed class SittingClosingsController(
    Training.Records.Examining.Sittings sittings, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Closes a sitting: open papers are graded as saved, papers never begun lapse.</summary>
    /// <param name="sitting">The sitting.</param>
    [HttpPost("/sittings/{sitting}/closing")]
    public async Task<IActionResult> Create(SittingId sitting)
    {
        var outcome = await sittings.Close(await current.Get(), sitting);
        return outcome.IsOk
            ? this.Done(words["The sitting is closed."], $"/sittings/{sitting}")
            : this.NotDone(outcome.Fault, $"/sittings/{sitting}");
    }
}
