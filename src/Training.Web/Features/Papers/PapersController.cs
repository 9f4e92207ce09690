using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Examining;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Papers;

/// <summary>A paper as it stands: to be begun, under way, handed in or lapsed.</summary>
[Authorize(Roles = $"{Roles.Technician},{Roles.Examiner},{Roles.Owner},{Roles.Administrator}")]
[ShutDuringPaper]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
public sealed class PapersController(Training.Records.Examining.Papers papers, CurrentActor current, CurrentReader reader) : Controller
{
    /// <summary>How the paper stands.</summary>
    /// <param name="paper">The paper.</param>
    [HttpGet("/papers/{paper}")]
    public async Task<IActionResult> Show(PaperId paper)
    {
        var actor = await current.Get();
        var language = await reader.Language();
        var found = await papers.Look(actor, paper, language);
        if (!found.IsOk) return this.NotShown(found.Fault);
        var isOwn = found.Value.Paper.Person == actor.Person;
        var zone = await reader.Zone();
        if (isOwn && found.Value.Paper.State == PaperState.Open)
        {
            var open = await papers.Open(actor, paper, language);
            if (open.IsOk) return View("Open", new OpenPaperPage(open.Value, zone));
            found = await papers.Look(actor, paper, language);
            if (!found.IsOk) return this.NotShown(found.Fault);
        }

        return View(found.Value.Paper.State == PaperState.HandedIn ? "Result" : "Waiting", new PaperPage(found.Value, isOwn, zone));
    }
}
