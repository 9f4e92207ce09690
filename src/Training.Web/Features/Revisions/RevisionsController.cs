using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Content;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Revisions;

/// <summary>What was published of each file, and what changed from one revision to another.</summary>
/// <param name="revisions">Knows them all.</param>
/// <param name="current">Who asks.</param>
/// <param name="reader">For whom the page is.</param>
[Authorize(Roles = Roles.Trainer + "," + Roles.Examiner)]
[ShutDuringPaper]
public sealed class RevisionsController(Training.Records.Publishing.Revisions revisions, CurrentActor current, CurrentReader reader) : Controller
{
    /// <summary>The files that have changed.</summary>
    [HttpGet("/revisions")]
    public async Task<IActionResult> Index()
    {
        var changed = await revisions.Changed(await current.Get());
        return changed.IsOk ? View(new RevisedFilesPage(changed.Value, await reader.Zone())) : this.NotShown(changed.Fault);
    }

    /// <summary>The revisions of a file, two of them compared: those that are asked for, or the newest with the one before it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="before">The hash of the older text; null for the one before the newest.</param>
    /// <param name="after">The hash of the newer text; null for the newest.</param>
    [HttpGet("/revisions/file")]
    public async Task<IActionResult> Show(string? path, string? before, string? after)
    {
        var actor = await current.Get();
        var found = await revisions.Of(actor, path ?? "");
        if (!found.IsOk) return this.NotShown(found.Fault);
        var page = new RevisionsPage(path!, found.Value, await reader.Zone());
        if (found.Value.Count < 2) return View(page);
        var now = Asked(after) ?? found.Value[0].Text;
        var old = Asked(before) ?? found.Value.SkipWhile(one => one.Text != now).Skip(1).Select(one => one.Text).FirstOrDefault(found.Value[^1].Text);
        var compared = await revisions.Compare(actor, path!, old, now);
        return compared.IsOk ? View(page with { Compared = compared.Value }) : this.NotShown(compared.Fault);
    }

    private static ContentHash? Asked(string? hash) => ContentHash.TryParse(hash, out var text) ? text : null;
}
