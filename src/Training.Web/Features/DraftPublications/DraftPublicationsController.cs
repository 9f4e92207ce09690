using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Content;
using Training.Content.Comparing;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Publishing;
using Training.Records.Writing;
using Training.Sequencing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.DraftPublications;

/// <summary>The last look before a draft is published, and the act.</summary>
[Route("/desk/drafts/{draft}/publication")]
[Authorize(Roles = Roles.Trainer)]
[ShutDuringPaper]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
public sealed class DraftPublicationsController(
    Training.Records.Writing.Drafts drafts,
    DraftPublishing publishing,
    Training.Records.Publishing.Revisions revisions,
    CurrentActor current,
    IStringLocalizer<Words> words) : Controller
{
    /// <summary>What would change, and what stands in the way.</summary>
    /// <param name="draft">The draft.</param>
    [HttpGet]
    public async Task<IActionResult> Index(DraftId draft)
    {
        var actor = await current.Get();
        var found = await drafts.Look(actor, draft);
        if (!found.IsOk) return this.NotShown(found.Fault);
        var missing = await publishing.Missing(actor, draft);
        var others = new List<DraftView>();
        foreach (var line in (await drafts.Desk(actor)).Value.Drafts.Where(line => line.Id != draft))
            others.Add((await drafts.Look(actor, line.Id)).Value);
        var changes = new List<DraftChange>();
        foreach (var view in others.Where(other => other.Way is ApprovalWay.Approve or ApprovalWay.Alone).Prepend(found.Value))
            changes.Add(new(view, await Compared(actor, view, changes.Count)));
        return View(new DraftPublicationPage(found.Value, changes, missing)
        {
            IsFitTogether = missing.Count == 0 || await publishing.FaultTogether(actor, draft) is null,
        });
    }

    /// <summary>Publishes the draft, and with it those that were ticked.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="chosen">Each draft with the version that was looked at, as in <c>id/3</c>.</param>
    [HttpPost]
    public async Task<IActionResult> Create(DraftId draft, [FromForm(Name = "drafts")] IReadOnlyList<string>? chosen)
    {
        var versions = (chosen ?? []).Select(Read).OfType<DraftVersion>().ToList();
        var back = $"/desk/drafts/{draft}/publication";
        if (versions.TrueForAll(version => version.Draft != draft)) return this.NotDone(new Refusal("Look at the draft first."), back);
        var published = await publishing.Publish(await current.Get(), versions);
        return published.IsOk
            ? this.Done(words["Published. People are served publication {0} from now on.", published.Value], "/desk")
            : this.NotDone(published.Fault, back);
    }

    private async Task<ComparisonPage> Compared(Actor actor, DraftView view, int place)
    {
        var served = view.Served is { } text ? new ContentFile(view.Line.Path, text) : null;
        var judged = served is null ? null : (await revisions.JudgedBy(actor, served.Hash)).Match(counts => counts, _ => (JudgedCounts?)null);
        return new(FileComparison.Of(served, new(view.Line.Path, view.Text)), judged) { Id = $"comparison-{place}" };
    }

    private static DraftVersion? Read(string text) => text.Split('/') is [var id, var version]
        && DraftId.TryParse(id, null, out var draft) && int.TryParse(version, out var number) ? new DraftVersion(draft, number) : null;
}
