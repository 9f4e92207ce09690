using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Content;
using Training.Content.Writing;
using Training.Records;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.DraftChecks;

/// <summary>What is to be said of a text while it is written.</summary>
[Authorize(Roles = Roles.Trainer)]
[ShutDuringPaper]
public sealed class DraftChecksController(Training.Records.Writing.Drafts drafts, CurrentActor current) : Controller
{
    /// <summary>A script gets the part of the page that tells it; without a script the text is kept and the whole page shown.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="version">The version that was on the screen.</param>
    /// <param name="text">The text.</param>
    /// <param name="part">Whether a part of the page is asked for.</param>
    [HttpPost("/desk/drafts/{draft}/check")]
    [RequestSizeLimit(4 * ContentFile.LargestSize)]
    public async Task<IActionResult> Create(DraftId draft, int version, string text, bool part = false)
    {
        var actor = await current.Get();
        if (!part)
        {
            var saved = await drafts.Save(actor, draft, version, text ?? "");
            return saved.IsOk ? Redirect($"/desk/drafts/{draft}#check") : this.NotDone(saved.Fault, $"/desk/drafts/{draft}");
        }

        var found = await drafts.Look(actor, draft);
        if (!found.IsOk) return this.NotShown(found.Fault);
        var file = new ContentFile(found.Value.Line.Path, (text ?? "").ReplaceLineEndings("\n"));
        var around = Surroundings.Of((await drafts.Files(actor)).Value, file);
        return PartialView("_WhileWriting", new WhileWriting(
            new(DraftCheck.Of(around, file, await drafts.OftenGiven(actor, file.Path))),
            ProcedureFormView.Of(file.Path, file.Text, $"/desk/drafts/{draft}/form")));
    }
}

/// <summary>What a script puts in place of what was said before.</summary>
/// <param name="Check">What is to be said of the text.</param>
/// <param name="Form">The text in sentences; null where it has none.</param>
public sealed record WhileWriting(DraftCheckView Check, ProcedureFormView? Form);
