using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Content;
using Training.Content.Writing;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Writing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Drafts;

/// <summary>Drafts: beginning one, writing on it.</summary>
[Route("/desk/drafts")]
[Authorize(Roles = Roles.Trainer)]
[ShutDuringPaper]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
public sealed class DraftsController(
    Training.Records.Writing.Drafts drafts, CurrentActor current, CurrentReader reader, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Takes up a file that is served, or the draft that somebody has begun of it.</summary>
    /// <param name="path">The file.</param>
    [HttpPost]
    public async Task<IActionResult> Create(string path)
    {
        var begun = await drafts.Begin(await current.Get(), path ?? "");
        return begun.IsOk ? Redirect($"/desk/drafts/{begun.Value}") : this.NotDone(begun.Fault, "/desk");
    }

    /// <summary>Begins a new file.</summary>
    /// <param name="sort">Its sort.</param>
    /// <param name="name">Its short name.</param>
    /// <param name="title">What it is called.</param>
    [HttpPost("new")]
    public async Task<IActionResult> CreateFile(NewFileSort sort, string name, string title)
    {
        var begun = await drafts.BeginFile(await current.Get(), sort, name ?? "", title ?? "");
        return begun.IsOk ? Redirect($"/desk/drafts/{begun.Value}") : this.NotDone(begun.Fault, "/desk");
    }

    /// <summary>The text with everything that is to be said of it.</summary>
    /// <param name="draft">The draft.</param>
    [HttpGet("{draft}")]
    public async Task<IActionResult> Show(DraftId draft)
    {
        var actor = await current.Get();
        var found = await drafts.Look(actor, draft);
        if (!found.IsOk) return this.NotShown(found.Fault);
        var view = found.Value;
        var beside = new List<DraftTextView>();
        foreach (var line in view.Beside) beside.Add((await drafts.Text(actor, draft, line.Number)).Value);
        var file = new ContentFile(view.Line.Path, view.Text);
        var files = (await drafts.Files(actor)).Value;
        var report = DraftCheck.Of(files, file, await drafts.OftenGiven(actor, file.Path));
        return View(new DraftPage(view, new DraftCheckView(report), beside)
        {
            English = ContentFile.OriginalOf(file.Path) is { } original ? files.FirstOrDefault(other => other.Path == original) : null,
        });
    }

    /// <summary>Keeps the text. A script is told what became of it.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="version">The version that was on the screen.</param>
    /// <param name="text">The text.</param>
    [HttpPost("{draft}")]
    [RequestSizeLimit(4 * ContentFile.LargestSize)]
    public async Task<IActionResult> Save(DraftId draft, int version, string text)
    {
        var saved = await drafts.Save(await current.Get(), draft, version, text ?? "");
        if (!saved.IsOk) return this.NotDone(saved.Fault, $"/desk/drafts/{draft}");
        var at = Dates.Second(saved.Value.At, await reader.Zone());
        string said = saved.Value.IsBeside
            ? words["Somebody else changed this draft meanwhile. Your text is kept beside it: look at both."]
            : words["Saved {0}", at];
        if (this.WantsJson()) return Json(new { saved.Value.Version, saved.Value.IsBeside, Said = said });
        if (!saved.Value.IsBeside) return this.Done(said, $"/desk/drafts/{draft}");
        TempData["SaidWrong"] = said;
        return Redirect($"/desk/drafts/{draft}#beside");
    }

    /// <summary>For a script: which version is the newest, and who else has the draft open.</summary>
    /// <param name="draft">The draft.</param>
    [HttpGet("{draft}/now")]
    public async Task<IActionResult> Now(DraftId draft)
    {
        var found = await drafts.Look(await current.Get(), draft);
        if (!found.IsOk) return this.NotShown(found.Fault);
        var (line, others) = (found.Value.Line, found.Value.Others);
        return Json(new
        {
            line.Version,
            Changed = words["{0} changed it at {1}.", line.ChangedBy, Dates.Second(line.ChangedAt, await reader.Zone())].Value,
            Others = others.Count == 0 ? "" : words["Open on another screen too: {0}.", string.Join(", ", others)].Value,
        });
    }
}
