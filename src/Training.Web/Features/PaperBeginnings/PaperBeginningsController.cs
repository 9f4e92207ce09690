using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.PaperBeginnings;

/// <summary>The moment at which a paper is begun.</summary>
[Authorize(Roles = Roles.Technician)]
public sealed class PaperBeginningsController(Training.Records.Examining.Papers papers, CurrentActor current, CurrentReader reader) : Controller
{
    /// <summary>Begins the paper. Beginning again leads to the same paper.</summary>
    /// <param name="paper">The paper.</param>
    [HttpPost("/papers/{paper}/beginning")]
    public async Task<IActionResult> Create(PaperId paper)
    {
        var open = await papers.Begin(await current.Get(), paper, await reader.Language());
        return open.IsOk ? this.Done(null, $"/papers/{paper}") : this.NotDone(open.Fault, $"/papers/{paper}");
    }
}
