using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.RunEndings;

/// <summary>The end of the work of an observed run.</summary>
[Authorize(Roles = Roles.Examiner)]
public sealed class RunEndingsController(Training.Records.Observing.Runs runs, CurrentActor current) : Controller
{
    /// <summary>Ends the work: from now on the examiner sees what the rules say, and signs.</summary>
    /// <param name="run">The run.</param>
    [HttpPost("/runs/{run}/ending")]
    public async Task<IActionResult> Create(RunId run)
    {
        var outcome = await runs.End(await current.Get(), run);
        return outcome.IsOk ? Redirect($"/runs/{run}") : this.NotDone(outcome.Fault, $"/runs/{run}");
    }
}
