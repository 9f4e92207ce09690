using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Content.Writing;
using Training.Records.Accounts;
using Training.Records.Publishing;
using Training.Records.Results;
using Training.Records.Writing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Desk;

/// <summary>The trainer's desk: what is broken and what people get wrong, what is in work, what has problems, what waits for approval, and where to begin.</summary>
[Authorize(Roles = Roles.Trainer)]
[ShutDuringPaper]
public sealed class DeskController(
    Training.Records.Writing.Drafts drafts, Publisher publisher, RuleResults results, CurrentActor current) : Controller
{
    /// <summary>Everything on the desk.</summary>
    [HttpGet("/desk")]
    [ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
    public async Task<IActionResult> Index()
    {
        var actor = await current.Get();
        var desk = await drafts.Desk(actor);
        if (!desk.IsOk) return this.NotShown(desk.Fault);
        var files = (await drafts.Files(actor)).Value;
        var paths = desk.Value.Drafts.Select(draft => draft.Path).ToHashSet();
        var faults = files.Where(file => paths.Contains(file.Path)).ToDictionary(
            file => file.Path, file => DraftCheck.Faults(Surroundings.Of(files, file), file));
        var state = publisher.State(actor);
        var worst = await results.Worst(actor, WorkSource.Practice, 1);
        return View(new DeskPage(desk.Value, faults)
        {
            Broken = state.IsOk ? state.Value.Problems.Count(problem => problem.HoldsBack) : 0,
            Worst = worst is { IsOk: true, Value: [var first, ..] } ? first : null,
        });
    }
}

/// <summary>The desk as it is shown.</summary>
/// <param name="Desk">What lies on it.</param>
/// <param name="Faults">How many things keep each draft back, by its file.</param>
public sealed record DeskPage(DeskView Desk, IReadOnlyDictionary<string, int> Faults)
{
    /// <summary>How many things keep the content folder from being published.</summary>
    public required int Broken { get; init; }

    /// <summary>What people get wrong most surely in practice; null where nothing is, or of too few people to be shown.</summary>
    public required ProcedureResultLine? Worst { get; init; }

    /// <summary>The files that are published in English and lack another language.</summary>
    public IReadOnlyList<string> Untranslated { get; } = [.. Desk.Files.Where(path => Tongues.LackedBy(path, Desk.Files.Contains).Count > 0)];
}
