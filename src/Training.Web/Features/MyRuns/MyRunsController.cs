using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Observing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.MyRuns;

/// <summary>A technician's own observed runs.</summary>
[Authorize(Roles = Roles.Technician)]
[ShutDuringPaper]
public sealed class MyRunsController(Training.Records.Observing.Runs runs, CurrentActor current, CurrentReader reader) : Controller
{
    /// <summary>What is said of a run that was signed or given up.</summary>
    /// <param name="run">The run.</param>
    [HttpGet("/my-runs/{run}")]
    public async Task<IActionResult> Show(RunId run)
    {
        var actor = await current.Get();
        var found = await runs.Look(actor, run, await reader.Language());
        if (!found.IsOk) return this.NotShown(found.Fault);
        return found.Value.Run.Technician == actor.Person ? View(new MyRunPage(found.Value, await reader.Zone())) : NotFound();
    }
}

/// <summary>One's own observed run.</summary>
/// <param name="View">The run.</param>
/// <param name="Zone">The time zone that times are told in.</param>
public sealed record MyRunPage(RunView View, string Zone)
{
    /// <summary>The verdict; null where the run was given up.</summary>
    public VerdictView? Verdict => View.Judged is { } judged ? new(judged.Procedure, judged.Answer, judged.Verdict) : null;
}
