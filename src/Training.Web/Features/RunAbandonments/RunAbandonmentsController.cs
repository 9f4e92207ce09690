using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.RunAbandonments;

/// <summary>Giving an observed run up.</summary>
[Authorize(Roles = Roles.Examiner)]
public sealed class RunAbandonmentsController(
    Training.Records.Observing.Runs runs, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Gives a run up, with a reason; it counts for nothing.</summary>
    /// <param name="run">The run.</param>
    /// <param name="reason">Why.</param>
    [HttpPost("/runs/{run}/abandonment")]
    public async Task<IActionResult> Create(RunId run, string? reason)
    {
        var outcome = await runs.Abandon(await current.Get(), run, reason ?? "");
        return outcome.IsOk
            ? this.Done(words["The run is given up; it counts for nothing."], $"/runs/{run}")
            : this.NotDone(outcome.Fault, $"/runs/{run}");
    }
}
