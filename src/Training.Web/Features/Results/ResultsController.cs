using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Accounts;
using Training.Records.Publishing;
using Training.Records.Results;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Results;

/// <summary>What people get wrong, over all jobs.</summary>
[Authorize(Roles = $"{Roles.Trainer},{Roles.Examiner},{Roles.Owner},{Roles.Administrator}")]
[ShutDuringPaper]
public sealed class ResultsController(RuleResults results, Library library, CurrentActor current) : Controller
{
    /// <summary>All procedures with what is got wrong in each most surely.</summary>
    /// <param name="source">Where the orders were given.</param>
    [HttpGet("/results")]
    public async Task<IActionResult> Index(string? source)
    {
        var asked = ResultWords.ReadSource(source);
        var actor = await current.Get();
        var overview = await results.Overview(actor, asked);
        if (!overview.IsOk) return this.NotShown(overview.Fault);
        // The pages about papers and examiners are for the provider's own staff.
        return View(new ResultsPage(asked, overview.Value, actor.Shop is null ? library.Current.Content.Competencies : []));
    }
}
