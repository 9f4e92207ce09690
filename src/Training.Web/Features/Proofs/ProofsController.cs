using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Overviews;
using Training.Records.Proving;
using Training.Sequencing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Proofs;

/// <summary>Proofs that an owner makes for customers.</summary>
[Route("/proofs")]
[Authorize(Roles = Roles.Owner)]
public sealed class ProofsController(CustomerProofs proofs, Overview overview, Lessons taught, CurrentActor current) : Controller
{
    /// <summary>The proofs that were made, and the form that makes one.</summary>
    /// <param name="competency">The competency whose people are ticked already; null for none.</param>
    /// <param name="find">Whom to show; null for all.</param>
    [HttpGet]
    public Task<IActionResult> Index(string? competency, string? find) => Page(new MakeProofForm { Of = competency, Find = find });

    /// <summary>The form with the people who are looked for; what is ticked and typed stays. Nothing is made.</summary>
    /// <param name="form">What was ticked and typed.</param>
    [HttpPost("choice")]
    public Task<IActionResult> Choose(MakeProofForm form) => Page(form);

    /// <summary>Makes a proof.</summary>
    /// <param name="form">What was ticked and typed.</param>
    [HttpPost]
    public async Task<IActionResult> Create(MakeProofForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        var outcome = await proofs.Make(await current.Get(), [.. (form.Records ?? []).Select(id => new RecordId(id))], form.ForWhom);
        if (outcome.IsOk) return Redirect($"/proofs/{outcome.Value.Id}");
        return outcome.Fault == Refused.NotFound ? this.NotShown(outcome.Fault) : await Page(form, outcome.Fault);
    }

    /// <summary>One proof: its link to hand on.</summary>
    /// <param name="proof">The proof.</param>
    [HttpGet("{proof}")]
    public async Task<IActionResult> Show(ProofId proof)
    {
        var outcome = await proofs.Look(await current.Get(), proof);
        return outcome.IsOk ? View(outcome.Value) : this.NotShown(outcome.Fault);
    }

    private async Task<IActionResult> Page(MakeProofForm form, Refusal? wrong = null)
    {
        var actor = await current.Get();
        var made = await proofs.List(actor);
        if (!made.IsOk) return this.NotShown(made.Fault);
        var table = await overview.WhoMayDoWhat(actor);
        if (!table.IsOk) return this.NotShown(table.Fault);
        if (wrong is not null) this.Reject(wrong);
        return View(nameof(Index), new ProofsPage(made.Value, table.Value, form, taught.Titled));
    }
}
