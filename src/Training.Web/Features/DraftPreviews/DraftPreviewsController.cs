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
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
public sealed class DraftPreviewsController(
    Training.Records.Writing.Drafts drafts, ILessonDrawings drawings, CurrentActor current) : Controller
{
    /// <summary>Shows it in a language.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="language">The language; the draft's own where none is asked for.</param>
    [HttpGet("/desk/drafts/{draft}/preview")]
    public async Task<IActionResult> Index(DraftId draft, string? language)
    {
        var actor = await current.Get();
        var found = await drafts.Look(actor, draft);
        if (!found.IsOk) return this.NotShown(found.Fault);
        var file = new ContentFile(found.Value.Line.Path, found.Value.Text);
        var library = DraftCheck.Of((await drafts.Files(actor)).Value, file).Library;
        return View(DraftPreviewPage.Of(found.Value, library, drawings, language));
    }
}
