using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.PaperResults;

/// <summary>What the papers of a competency say about its questions.</summary>
[Authorize(Roles = $"{Roles.Trainer},{Roles.Examiner},{Roles.Administrator}")]
[ShutDuringPaper]
public sealed class PaperResultsController(Training.Records.Results.PaperResults results, Lessons lessons, CurrentActor current) : Controller
{
    /// <summary>How hard each question is, how well it tells people apart, and how far the paper measures one thing.</summary>
    /// <param name="competency">The competency.</param>
    [HttpGet("/paper-results/{competency}")]
    public async Task<IActionResult> Show(string competency)
    {
        var outcome = await results.Of(await current.Get(), new(competency));
        return outcome.IsOk ? View(new PaperResultsPage(outcome.Value, lessons)) : this.NotShown(outcome.Fault);
    }
}
