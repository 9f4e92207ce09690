using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records.Accounts;
using Training.Records.Writing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.FolderFiles;

/// <summary>Files of the content folder where the desk has another text.</summary>
[Authorize(Roles = Roles.Trainer)]
public sealed class FolderFilesController(DraftPublishing publishing, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Decides which of the two is served.</summary>
    /// <param name="path">The file.</param>
    /// <param name="take">The desk's or the folder's.</param>
    [HttpPost("/desk/folder-files")]
    public async Task<IActionResult> Create(string path, string take)
    {
        var actor = await current.Get();
        if (take != "folder")
        {
            var kept = await publishing.KeepDesk(actor, path ?? "");
            return kept.IsOk ? this.Done(words["The text from the desk is served on."], "/desk") : this.NotDone(kept.Fault, "/desk");
        }

        var taken = await publishing.TakeFolder(actor, path ?? "");
        return taken.IsOk ? this.Done(words["The folder's file is served: publication {0}.", taken.Value], "/desk") : this.NotDone(taken.Fault, "/desk");
    }
}
