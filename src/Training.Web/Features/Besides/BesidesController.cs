using System.Globalization;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Observing;
using Training.Records.Publishing;
using Training.Sequencing.Procedures;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Besides;

/// <summary>Observing a run beside its examiner.</summary>
[Route("/runs/{run}/beside")]
[Authorize(Roles = Roles.Examiner)]
[ShutDuringPaper]
public sealed class BesidesController(BesideRuns besides, Graders graders, CurrentActor current, CurrentReader reader) : Controller
{
    /// <summary>The page beside the vehicle while the work is done, afterwards the run as it was seen. A script is told how far it has come.</summary>
    /// <param name="run">The run.</param>
    [HttpGet]
    [ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
    public async Task<IActionResult> Show(RunId run)
    {
        var found = await besides.Look(await current.Get(), run, await reader.Language());
        if (!found.IsOk) return this.NotShown(found.Fault);
        var view = found.Value;
        if (this.WantsJson()) return Json(new RunProgress(view.ElapsedSeconds, view.Judged is null));
        if (view.Judged is not null) return View(view);
        var decoys = (await graders.For(view.ProcedureHash, view.Run.Variant)).Procedure.Decoys.Select(decoy => decoy.Id).ToHashSet();
        return View("Observe", new ObservePage(view.Run, view.Offered, view.Taps, view.ElapsedSeconds, decoys) { IsBeside = true });
    }

    /// <summary>Begins to observe beside.</summary>
    /// <param name="run">The run.</param>
    [HttpPost]
    public async Task<IActionResult> Create(RunId run)
    {
        var begun = await besides.Begin(await current.Get(), run);
        return begun.IsOk ? Redirect($"/runs/{run}/beside") : this.NotDone(begun.Fault, $"/runs/{run}");
    }

    /// <summary>Notes that a step was just done.</summary>
    /// <param name="run">The run.</param>
    /// <param name="id">The tap's id: sent twice it counts once.</param>
    /// <param name="step">The step or decoy.</param>
    /// <param name="seconds">Seconds since the start of the run, with a decimal point; null for now.</param>
    [HttpPost("taps")]
    public async Task<IActionResult> Tap(RunId run, Guid id, string? step, string? seconds)
    {
        var actor = await current.Get();
        if (!decimal.TryParse(seconds, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var at))
        {
            var found = await besides.Look(actor, run);
            if (!found.IsOk) return this.NotDone(found.Fault, "/runs");
            at = found.Value.ElapsedSeconds;
        }

        var outcome = await besides.Tap(actor, run, new NewTap(id, new StepId(step ?? ""), at));
        if (!outcome.IsOk) return this.NotDone(outcome.Fault, $"/runs/{run}/beside");
        return this.WantsJson() ? NoContent() : Redirect($"/runs/{run}/beside#step-{Uri.EscapeDataString(outcome.Value.Value)}");
    }

    /// <summary>Takes the last tap back.</summary>
    /// <param name="run">The run.</param>
    /// <param name="id">The tap.</param>
    [HttpPost("taps/undoing")]
    public async Task<IActionResult> Undo(RunId run, Guid id)
    {
        var outcome = await besides.Undo(await current.Get(), run, id);
        if (!outcome.IsOk) return this.NotDone(outcome.Fault, $"/runs/{run}/beside");
        return this.WantsJson() ? NoContent() : Redirect($"/runs/{run}/beside");
    }

    /// <summary>Ends observing beside.</summary>
    /// <param name="run">The run.</param>
    [HttpPost("ending")]
    public async Task<IActionResult> End(RunId run)
    {
        var outcome = await besides.End(await current.Get(), run);
        return outcome.IsOk ? Redirect($"/runs/{run}/beside") : this.NotDone(outcome.Fault, $"/runs/{run}/beside");
    }
}
