using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Proving;
using Training.Sequencing;
using Training.Web.Features.Shared;
using Training.Web.Printing;

namespace Training.Web.Features.ProofSheets;

/// <summary>A proof as something to print, for whoever has its link.</summary>
/// <param name="proofs">The proofs.</param>
/// <param name="paper">Draws them.</param>
/// <param name="links">The address that the square code says.</param>
[AllowAnonymous]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
public sealed class ProofSheetsController(CustomerProofs proofs, ProofPaper paper, ProofLink links) : Controller
{
    /// <summary>The sheet, A4.</summary>
    /// <param name="token">The secret of the link.</param>
    /// <param name="on">The day that is asked for, as <c>2026-03-14</c>; empty for today.</param>
    [HttpGet("/p/{token}/sheet.pdf")]
    public Task<IActionResult> Sheet(string token, string? on) => Printed(token, on, "proof", paper.Sheet);

    /// <summary>A card for each record that holds, of the size of a bank card.</summary>
    /// <param name="token">The secret of the link.</param>
    /// <param name="on">The day that is asked for, as <c>2026-03-14</c>; empty for today.</param>
    [HttpGet("/p/{token}/cards.pdf")]
    public Task<IActionResult> Cards(string token, string? on) => Printed(token, on, "cards", paper.Cards);

    private async Task<IActionResult> Printed(
        string token, string? on, string name, Func<ShownProof.Shown, string, Outcome<byte[], Refusal>> print)
    {
        Response.Headers["X-Robots-Tag"] = "noindex, nofollow, noarchive";
        // A day that is none, a proof that was ended and one that never was: the page of the proof says so.
        if (!DayAsked.TryRead(on, out var day)) return Redirect($"/p/{Uri.EscapeDataString(token)}?on={Uri.EscapeDataString(on!)}");
        var outcome = await proofs.Show(token, day);
        if (!outcome.IsOk || outcome.Value is not ShownProof.Shown shown)
            return Redirect($"/p/{Uri.EscapeDataString(token)}{(day is { } asked ? $"?on={DayAsked.Written(asked)}" : "")}");
        var printed = print(shown, links.To(token));
        return printed.IsOk
            ? File(printed.Value, "application/pdf", $"{name}-{DayAsked.Written(shown.On)}.pdf")
            : this.NotDone(printed.Fault, $"/p/{Uri.EscapeDataString(token)}");
    }
}
