using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Writing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.DraftTexts;

/// <summary>Every text that was kept of a draft.</summary>
[Route("/desk/drafts/{draft}/texts")]
[Authorize(Roles = Roles.Trainer)]
[ShutDuringPaper]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
public sealed class DraftTextsController(
    Training.Records.Writing.Drafts drafts, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>The list, the newest first.</summary>
    /// <param name="draft">The draft.</param>
    [HttpGet]
    public async Task<IActionResult> Index(DraftId draft)
    {
        var actor = await current.Get();
        var found = await drafts.Look(actor, draft);
        if (!found.IsOk) return this.NotShown(found.Fault);
        return View(new DraftTextsPage(found.Value, (await drafts.Texts(actor, draft)).Value));
    }

    /// <summary>One of them beside the newest.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="number">Its number.</param>
    [HttpGet("{number:int}")]
    public async Task<IActionResult> Show(DraftId draft, int number)
    {
        var actor = await current.Get();
        var found = await drafts.Look(actor, draft);
        if (!found.IsOk) return this.NotShown(found.Fault);
        var text = await drafts.Text(actor, draft, number);
        return text.IsOk ? View(new DraftTextPage(found.Value, text.Value)) : this.NotShown(text.Fault);
    }

    /// <summary>Makes one of them the newest text; what was the newest stays in the list.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="number">Its number.</param>
    /// <param name="version">The version that was looked at.</param>
    [HttpPost("{number:int}/take")]
    public async Task<IActionResult> Take(DraftId draft, int number, int version)
    {
        var actor = await current.Get();
        var text = await drafts.Text(actor, draft, number);
        if (!text.IsOk) return this.NotDone(text.Fault, $"/desk/drafts/{draft}");
        var saved = await drafts.Save(actor, draft, version, text.Value.Text);
        if (!saved.IsOk) return this.NotDone(saved.Fault, $"/desk/drafts/{draft}");
        if (text.Value.Line.IsBeside && !saved.Value.IsBeside) await drafts.Settle(actor, draft, number);
        return this.Done(words["That text is the draft's newest now."], $"/desk/drafts/{draft}");
    }

    /// <summary>Leaves the draft as it is.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="number">The text that was kept beside it.</param>
    [HttpPost("{number:int}/settled")]
    public async Task<IActionResult> Settle(DraftId draft, int number)
    {
        var settled = await drafts.Settle(await current.Get(), draft, number);
        return settled.IsOk ? Redirect($"/desk/drafts/{draft}") : this.NotDone(settled.Fault, $"/desk/drafts/{draft}");
    }
}

/// <summary>The texts of a draft.</summary>
/// <param name="Draft">The draft.</param>
/// <param name="Texts">Its texts.</param>
public sealed record DraftTextsPage(DraftView Draft, IReadOnlyList<DraftTextLine> Texts);

/// <summary>One text of a draft.</summary>
/// <param name="Draft">The draft.</param>
/// <param name="Text">The text.</param>
public sealed record DraftTextPage(DraftView Draft, DraftTextView Text);
