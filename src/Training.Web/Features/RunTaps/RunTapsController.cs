using System.Globalization;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Observing;
using Training.Sequencing.Procedures;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.RunTaps;

/// <summary>The taps of an observed run.</summary>
[Authorize(Roles = Roles.Examiner)]
public sealed class RunTapsController(Training.Records.Observing.Runs runs, CurrentActor current) : Controller
{
    /// <summary>Notes that a step was just done. A script sends its own count of the seconds; without one the server's clock counts.</summary>
    /// <param name="run">The run.</param>
    /// <param name="id">The tap's id: sent twice it counts once.</param>
    /// <param name="step">The step or decoy.</param>
    /// <param name="seconds">Seconds since the start of the run, with a decimal point; null for now.</param>
    [HttpPost("/runs/{run}/taps")]
    public async Task<IActionResult> Create(RunId run, Guid id, string? step, string? seconds)
    {
        var actor = await current.Get();
        if (!decimal.TryParse(seconds, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var at))
        {
            var found = await runs.Look(actor, run);
            if (!found.IsOk) return this.NotDone(found.Fault, "/runs");
            at = found.Value.ElapsedSeconds;
        }

        var outcome = await runs.Tap(actor, run, new NewTap(id, new StepId(step ?? ""), at));
        if (!outcome.IsOk) return this.NotDone(outcome.Fault, $"/runs/{run}");
        return this.WantsJson() ? NoContent() : Redirect($"/runs/{run}#step-{Uri.EscapeDataString(outcome.Value.Step.Value)}");
    }

    /// <summary>Takes the last tap back.</summary>
    /// <param name="run">The run.</param>
    /// <param name="id">The tap.</param>
    [HttpPost("/runs/{run}/taps/undoing")]
    public async Task<IActionResult> Undo(RunId run, Guid id)
    {
        var outcome = await runs.Undo(await current.Get(), run, id);
        if (!outcome.IsOk) return this.NotDone(outcome.Fault, $"/runs/{run}");
        return this.WantsJson() ? NoContent() : Redirect($"/runs/{run}");
    }
}
