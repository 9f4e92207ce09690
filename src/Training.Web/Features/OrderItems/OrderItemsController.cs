using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Content.Qti;
using Training.Content.Scenarios;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Publishing;
using Training.Sequencing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.OrderItems;

/// <summary>Order questions as items of 1EdTech QTI 3.0, out and in.</summary>
/// <param name="library">What is served.</param>
/// <param name="drafts">What is in work.</param>
/// <param name="current">Who asks.</param>
/// <param name="words">The sentences.</param>
[Authorize(Roles = Roles.Trainer)]
[ShutDuringPaper]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
public sealed class OrderItemsController(
    Library library, Training.Records.Writing.Drafts drafts, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>The item of a scenario.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="language">The language; null for the default language.</param>
    [HttpGet("/order-items/{scenario}.xml")]
    public IActionResult Show(string scenario, string? language)
    {
        var content = library.Current.Content;
        if (content.FindScenario(new(scenario)) is not { Procedure: { } job } found || !found.Kinds.Contains(QuestionKind.Order)
            || content.FindProcedure(job) is not { } procedure)
            return this.NotShown(Refused.NotFound);
        return File(QtiOrderItem.Write(found, procedure, language ?? "en"), "application/xml", $"{found.Id}.xml");
    }

    /// <summary>Begins a draft of a procedure, and of a scenario where the item tells a situation.</summary>
    /// <param name="file">The item.</param>
    [HttpPost("/order-items")]
    [RequestSizeLimit(2 * QtiOrder.LargestSize)]
    public async Task<IActionResult> Create(IFormFile? file)
    {
        if (file is null or { Length: 0 }) return this.NotDone(new Refusal("Choose the file of the question first."), "/packs", nameof(file));
        using var bytes = new MemoryStream();
        await file.CopyToAsync(bytes);
        var read = QtiOrder.Read(bytes.ToArray());
        if (!read.IsOk) return this.NotDone(read.Fault, "/packs", nameof(file));
        var actor = await current.Get();
        var here = await drafts.Files(actor);
        if (!here.IsOk) return this.NotShown(here.Fault);
        var taken = here.Value.Select(known => known.Path).ToHashSet(StringComparer.Ordinal);
        var brought = await drafts.Bring(actor, QtiDraft.Of(read.Value, taken.Contains));
        if (!brought.IsOk) return this.NotDone(brought.Fault, "/packs", nameof(file));
        return this.Done(words["It is on the desk. Take out the rules that the work does not ask for, and justify the others."], $"/desk/drafts/{brought.Value.Drafts[0]}");
    }
}
