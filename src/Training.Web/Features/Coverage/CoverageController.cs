using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Coverage;

/// <summary>Who may do what today and in the next twelve months, and whom to send when: an owner's first page.</summary>
[Route("/coverage")]
[Authorize(Roles = Roles.Owner)]
public sealed class CoverageController(
    Training.Records.Covering.Coverage coverage, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>The own shop's coverage.</summary>
    [HttpGet]
    public Task<IActionResult> Index() => Page(new());

    /// <summary>Keeps how many people are needed.</summary>
    /// <param name="form">What was typed.</param>
    [HttpPost("needs")]
    public async Task<IActionResult> SetNeeds(NeedsForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        var actor = await current.Get();
        if (form.Read() is not { } needs)
        {
            this.Reject(words["Write whole numbers, such as 2; 0 where you need nobody."], form.FirstWrong is { } wrong ? $"need-{wrong}" : null);
            return await Page(form);
        }

        var outcome = await coverage.SetNeeds(actor, needs);
        if (outcome.IsOk) return this.Done(words["Saved how many people you need."], "/coverage");
        if (outcome.Fault == Training.Records.Refused.NotFound) return this.NotShown(outcome.Fault);
        this.Reject(words.Say(outcome.Fault), outcome.Fault.About is { } competency ? $"need-{competency}" : null);
        return await Page(form);
    }

    private async Task<IActionResult> Page(NeedsForm form)
    {
        var outcome = await coverage.Look(await current.Get());
        if (!outcome.IsOk) return this.NotShown(outcome.Fault);
        return View(nameof(Index), new CoveragePage(outcome.Value, form));
    }
}
