using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Content;
using Training.Content.Writing;
using Training.Records;
using Training.Records.Accounts;
using Training.Sequencing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.DraftForms;

/// <summary>The form beside the text of a procedure.</summary>
[Authorize(Roles = Roles.Trainer)]
[ShutDuringPaper]
public sealed class DraftFormsController(
    Training.Records.Writing.Drafts drafts, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Keeps the text as it stands on the screen, and makes one edit in it.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="version">The version that was on the screen.</param>
    /// <param name="text">The text.</param>
    /// <param name="edit">What is done to which part, as in <c>set|Rule|told-first</c>.</param>
    [HttpPost("/desk/drafts/{draft}/form")]
    [RequestSizeLimit(4 * ContentFile.LargestSize)]
    [FieldsAtMost(20_000)]
    public async Task<IActionResult> Create(DraftId draft, int version, string text, string edit)
    {
        var actor = await current.Get();
        var address = $"/desk/drafts/{draft}";
        var saved = await drafts.Save(actor, draft, version, text ?? "");
        if (!saved.IsOk) return this.NotDone(saved.Fault, address);
        if (saved.Value.IsBeside)
        {
            TempData["SaidWrong"] = words["Somebody else changed this draft meanwhile. Your text is kept beside it: look at both."].Value;
            return Redirect($"{address}#beside");
        }

        var written = (await drafts.Look(actor, draft)).Value.Text;
        if (ProcedureForm.Read(written) is not { } parts) return this.NotDone(new Refusal("The text cannot be read as it stands: mend its errors there first."), address);
        var asked = EditForm.Read(edit ?? "", parts, Request.Form);
        if (!asked.IsOk) return this.NotDone(asked.Fault, address);
        foreach (var one in asked.Value)
        {
            var edited = ProcedureForm.Apply(written, one);
            if (!edited.IsOk) return this.NotDone(edited.Fault, address);
            written = edited.Value;
        }

        var kept = await drafts.Save(actor, draft, saved.Value.Version, written);
        return kept.IsOk ? Redirect($"{address}#{Part(edit ?? "")}") : this.NotDone(kept.Fault, address);
    }

    private static string Part(string edit) => edit.Split('|') is [_, var part, var id] && part != "State" ? $"{part}-{Uri.EscapeDataString(id)}" : "sentences";
}
