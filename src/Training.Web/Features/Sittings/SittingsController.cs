using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Content.Competencies;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Overviews;
using Training.Records.Publishing;
using Training.Sequencing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Sittings;

/// <summary>Sittings: opened and watched over by an examiner.</summary>
[Authorize(Roles = Roles.Examiner + "," + Roles.Administrator)]
[Route("/sittings")]
public sealed class SittingsController(
    Training.Records.Examining.Sittings sittings, RunsAhead runs, Library library, CurrentActor current) : Controller
{
    /// <summary>The sittings, open ones first, and the form that opens one.</summary>
    [HttpGet]
    public Task<IActionResult> Index() => Page(new OpenSittingForm());

    /// <summary>Opens a sitting.</summary>
    /// <param name="form">What was typed.</param>
    [HttpPost]
    public async Task<IActionResult> Create(OpenSittingForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        var outcome = await sittings.Open(await current.Get(), new CompetencyId(form.Competency ?? ""), form.Place ?? "");
        return outcome.IsOk ? Redirect($"/sittings/{outcome.Value}") : await Page(form, outcome.Fault);
    }

    /// <summary>Who is in a sitting and how far.</summary>
    /// <param name="sitting">The sitting.</param>
    [HttpGet("{sitting}")]
    public async Task<IActionResult> Show(SittingId sitting)
    {
        var actor = await current.Get();
        var found = await sittings.Look(actor, sitting);
        if (!found.IsOk) return this.NotShown(found.Fault);
        var admits = found.Value.Sitting is { ClosedAt: null } line && line.Examiner == actor.Person;
        var candidates = admits ? await sittings.Candidates(actor, sitting) : default;
        return View(new SittingPage(found.Value, candidates.IsOk ? candidates.Value : null,
            found.Value.Sitting.ClosedAt is null && (admits || actor.Is(Roles.Administrator))));
    }

    private async Task<IActionResult> Page(OpenSittingForm form, Refusal? wrong = null)
    {
        var actor = await current.Get();
        var list = await sittings.List(actor);
        if (!list.IsOk) return this.NotShown(list.Fault);
        var ahead = await runs.Of(actor);
        if (!ahead.IsOk) return this.NotShown(ahead.Fault);
        if (wrong is not null) this.Reject(wrong);
        return View(nameof(Index), new SittingsPage(
            list.Value, ahead.Value, actor.Is(Roles.Examiner) ? library.Current.Content.Competencies : [], form));
    }
}
