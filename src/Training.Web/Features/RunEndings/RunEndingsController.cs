using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Observing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.RunEndings;

/// <summary>The end of the work of an observed run.</summary>
[Route("/runs/{run}/ending")]
[Authorize(Roles = Roles.Examiner)]
[ShutDuringPaper]
public sealed class RunEndingsController(Training.Records.Observing.Runs runs, CurrentActor current, CurrentReader reader) : Controller
{
    /// <summary>Asks whether the work is done although steps of the job are not tapped.</summary>
    /// <param name="run">The run.</param>
    [HttpGet]
    [ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
    public async Task<IActionResult> Index(RunId run)
    {
        var actor = await current.Get();
        var language = await reader.Language();
        var lacking = await runs.NotTapped(actor, run, language);
        if (!lacking.IsOk) return this.NotDone(lacking.Fault, $"/runs/{run}");
        var found = await runs.Look(actor, run, language);
        return found.IsOk ? View(new EndingPage(found.Value.Run, lacking.Value)) : this.NotShown(found.Fault);
    }

    /// <summary>
    /// Ends the work: from now on the examiner sees what the rules say, and signs. Where steps of the job are not tapped it
    /// is asked once, for a tap by mistake cannot be taken back here.
    /// </summary>
    /// <param name="run">The run.</param>
    /// <param name="sure">Given where it was asked.</param>
    [HttpPost]
    public async Task<IActionResult> Create(RunId run, string? sure)
    {
        var actor = await current.Get();
        if (sure is null && await runs.NotTapped(actor, run) is { IsOk: true, Value.Count: > 0 }) return Redirect($"/runs/{run}/ending");
        var outcome = await runs.End(actor, run);
        return outcome.IsOk ? Redirect($"/runs/{run}") : this.NotDone(outcome.Fault, $"/runs/{run}");
    }
}

/// <summary>A run that is about to end with steps of the job not tapped.</summary>
/// <param name="Run">The run.</param>
/// <param name="NotTapped">What is not tapped.</param>
public sealed record EndingPage(RunLine Run, IReadOnlyList<string> NotTapped);
