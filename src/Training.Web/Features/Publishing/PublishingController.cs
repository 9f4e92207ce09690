using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Accounts;
using Training.Records.Publishing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Publishing;

/// <summary>What is served, and what stands in the way of the rest.</summary>
[Authorize(Roles = Roles.Trainer + "," + Roles.Administrator)]
public sealed class PublishingController(Publisher publisher, CurrentActor current) : Controller
{
    /// <summary>What is broken now and what is served.</summary>
    [HttpGet("/publishing")]
    public async Task<IActionResult> Index()
    {
        var state = publisher.State(await current.Get());
        return state.IsOk ? View(state.Value) : this.NotShown(state.Fault);
    }
}
