using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Accounts;
using Training.Records.Results;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.ProcedureResults;

/// <summary>What people get wrong in one job.</summary>
[Authorize(Roles = $"{Roles.Trainer},{Roles.Examiner},{Roles.Owner},{Roles.Administrator}")]
[ShutDuringPaper]
public sealed class ProcedureResultsController(RuleResults results, CurrentActor current) : Controller
{
    /// <summary>Rules, decoys and steps with how many people got each wrong.</summary>
    /// <param name="procedure">The procedure.</param>
    /// <param name="source">Where the orders were given.</param>
    /// <param name="group">Whose: <c>shop:…</c>, <c>language:es</c>, <c>revision:…</c>, <c>month:2026-11</c>; everybody where it is left out.</param>
    [HttpGet("/results/{procedure}")]
    public async Task<IActionResult> Show(string procedure, string? source, string? group)
    {
        var outcome = await results.Of(await current.Get(), new(procedure), ResultWords.ReadSource(source), ProcedureResultsPage.Read(group));
        return outcome.IsOk ? View(new ProcedureResultsPage(outcome.Value)) : this.NotShown(outcome.Fault);
    }
}
