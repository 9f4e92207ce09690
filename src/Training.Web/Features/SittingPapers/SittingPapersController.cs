using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.SittingPapers;

/// <summary>A paper of a sitting, as its examiner sees it once it is handed in.</summary>
[Authorize(Roles = Roles.Examiner + "," + Roles.Administrator)]
[ShutDuringPaper]
public sealed class SittingPapersController(Training.Records.Examining.Papers papers, CurrentActor current, CurrentReader reader) : Controller
{
    /// <summary>The answers with their verdicts.</summary>
    /// <param name="sitting">The sitting.</param>
    /// <param name="paper">The paper.</param>
    [HttpGet("/sittings/{sitting}/papers/{paper}")]
    public async Task<IActionResult> Show(SittingId sitting, PaperId paper)
    {
        var outcome = await papers.Look(await current.Get(), paper, await reader.Language());
        if (!outcome.IsOk) return this.NotShown(outcome.Fault);
        return outcome.Value.Paper.Sitting == sitting ? View(outcome.Value) : NotFound();
    }
}
