using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Observing;
using Training.Records.Publishing;
using Training.Sequencing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Runs;

/// <summary>Observed runs: who is to be observed, and the page beside the vehicle.</summary>
[Route("/runs")]
[Authorize(Roles = Roles.Examiner + "," + Roles.Administrator)]
[ShutDuringPaper]
public sealed class RunsController(Training.Records.Observing.Runs runs, Graders graders, CurrentActor current, CurrentReader reader) : Controller
{
    /// <summary>Runs under way, who is to be observed, and what is done.</summary>
    [HttpGet]
    public Task<IActionResult> Index() => Page(new StartRunForm());

    /// <summary>Starts a run.</summary>
    /// <param name="form">What was chosen and typed.</param>
    [HttpPost]
    [Authorize(Roles = Roles.Examiner)]
    public async Task<IActionResult> Create(StartRunForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        var outcome = await runs.Start(await current.Get(), form.Run());
        return outcome.IsOk ? Redirect($"/runs/{outcome.Value}") : await Page(form, outcome.Fault);
    }

    /// <summary>
    /// The page beside the vehicle for the run's examiner while the work is done; afterwards, and for others, the run as
    /// it was judged. A script is told how far the run has come.
    /// </summary>
    /// <param name="run">The run.</param>
    [HttpGet("{run}")]
    [ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
    public async Task<IActionResult> Show(RunId run)
    {
        var actor = await current.Get();
        var found = await runs.Look(actor, run, await reader.Language());
        if (!found.IsOk) return this.NotShown(found.Fault);
        var view = found.Value;
        if (this.WantsJson()) return Json(new RunProgress(view.ElapsedSeconds, view.Run.State == RunState.UnderWay));
        var isMine = view.Run.Examiner == actor.Person;
        var mayObserveBeside = view.Run.State == RunState.UnderWay && !isMine && actor.Is(Roles.Examiner);
        if (view.Run.State != RunState.UnderWay || !isMine) return View(new RunPage(view, isMine, mayObserveBeside));
        var grader = await graders.For(view.ProcedureHash, view.Run.Variant);
        return View("Observe", new ObservePage(view.Run, view.Offered, view.Taps, view.ElapsedSeconds, grader.Procedure.Decoys.Select(decoy => decoy.Id).ToHashSet()));
    }

    private async Task<IActionResult> Page(StartRunForm form, Refusal? wrong = null)
    {
        var actor = await current.Get();
        var list = await runs.List(actor);
        if (!list.IsOk) return this.NotShown(list.Fault);
        var toDo = actor.Is(Roles.Examiner) ? await runs.ToDo(actor) : default;
        if (wrong is not null) this.Reject(wrong);
        return View(nameof(Index), new RunsPage(actor.Person, list.Value, toDo.IsOk ? toDo.Value : [], form));
    }
}
