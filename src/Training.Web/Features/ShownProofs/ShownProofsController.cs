using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records.Proving;
using Training.Web.Features.Shared;

namespace Training.Web.Features.ShownProofs;

/// <summary>What a customer sees by the link of a proof. Nobody need be signed in.</summary>
[AllowAnonymous]
public sealed class ShownProofsController(CustomerProofs proofs, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Yes or no, for whom, since when, until when; or that the proof was ended; or that there is none.</summary>
    /// <param name="token">The secret of the link.</param>
    /// <param name="on">The day that is asked for, as <c>2026-03-14</c>; empty for today.</param>
    [HttpGet("/p/{token}")]
    [ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
    public async Task<IActionResult> Show(string token, string? on)
    {
        Response.Headers["X-Robots-Tag"] = "noindex, nofollow, noarchive";
        var isDay = DayAsked.TryRead(on, out var day);
        var outcome = await proofs.Show(token, day);
        var wrong = isDay ? null : words["“{0}” is no day; this is today. Write a day as 2026-03-14.", on!].Value;
        if (!outcome.IsOk && day is not null)
        {
            // The day may be what is wrong, not the link.
            outcome = await proofs.Show(token);
            if (outcome is { IsOk: true, Value: ShownProof.Shown shown })
                wrong = words["{0} is yet to come: a proof speaks of today or of a day before. This is {1}.", Dates.Day(day.Value), Dates.Day(shown.On)];
        }

        if (!outcome.IsOk) return Plain(StatusCodes.Status404NotFound, "Unknown", this.Say(outcome.Fault));
        if (outcome.Value is ShownProof.Ended ended) return Plain(StatusCodes.Status410Gone, "Ended", Dates.Moment(ended.At, Dates.NoShop));
        if (wrong is not null) Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
        return View(new ShownProofPage((ShownProof.Shown)outcome.Value, token, wrong));
    }

    private ViewResult Plain(int status, string view, string sentence)
    {
        Response.StatusCode = status;
        return View(view, sentence);
    }
}
