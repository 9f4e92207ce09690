using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Content;
using Training.Content.Rendering;
using Training.Content.Writing;
using Training.Records;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.DraftPreviews;

/// <summary>A draft as technicians will see it.</summary>
[Authorize(Roles = Roles.Trainer)]
[ShutDuringPaper]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
public sealed class DraftPreviewsController(
    Training.Records.Writing.Drafts drafts, ILessonDrawings drawings, CurrentActor current) : Controller
{
    /// <summary>Shows it in a language.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="language">The language; the draft's own where none is asked for.</param>
    /// <param name="paper">The number by which the sample paper of a competency is drawn.</param>
    [HttpGet("/desk/drafts/{draft}/preview")]
    public async Task<IActionResult> Index(DraftId draft, string? language, int paper = 1)
    {
        var actor = await current.Get();
        var found = await drafts.Look(actor, draft);
        if (!found.IsOk) return this.NotShown(found.Fault);
        var file = new ContentFile(found.Value.Line.Path, found.Value.Text);
        var reading = PreviewReading.Of((await drafts.OnDesk(actor)).Value, file);
        return View(DraftPreviewPage.Of(found.Value, reading.Report, drawings, language, paper) with { LeftOut = reading.LeftOut });
    }
}
