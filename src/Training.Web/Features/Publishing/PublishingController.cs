using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Accounts;
using Training.Records.Publishing;
using Training.Records.Results;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Publishing;

/// <summary>What is served, what stands in the way of the rest, and what people get wrong.</summary>
[Authorize(Roles = Roles.Trainer + "," + Roles.Administrator)]
[ShutDuringPaper]
public sealed class PublishingController(Publisher publisher, RuleResults results, CurrentActor current) : Controller
{
    private const int MostWrong = 5;

    /// <summary>What is broken now and what is served.</summary>
    [HttpGet("/publishing")]
    public async Task<IActionResult> Index()
    {
        var actor = await current.Get();
        var state = publisher.State(actor);
        if (!state.IsOk) return this.NotShown(state.Fault);
        return View(new PublishingPage(state.Value, (await results.Worst(actor, WorkSource.Practice, MostWrong)).Value));
    }
}
