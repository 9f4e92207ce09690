using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Web.Features.Shared;

namespace Training.Web.Features.Faults;

/// <summary>What is shown where a page cannot be.</summary>
[AllowAnonymous]
[IgnoreAntiforgeryToken]
public sealed class FaultsController(IStringLocalizer<Words> words) : Controller
{
    /// <summary>The page for a status code.</summary>
    /// <param name="code">The code.</param>
    [Route("/faults/{code:int}")]
    [ApiExplorerSettings(IgnoreApi = true)]
    public IActionResult Index([FromRoute] int code)
    {
        // Opened by hand, with a number that no answer has.
        if (code is < 400 or >= 600) code = 404;
        var sentence = HttpContext.Items[Refusing.SentenceKey] as string ?? code switch
        {
            400 => words["The form could not be read. Go back, load the page again and send it once more; nothing was changed."],
            403 => words["This page is not for you. Ask the person who gave you your sign-in."],
            404 => words["There is nothing here that you can see. It may have moved, or it belongs to another shop."],
            413 => words["What you sent is too large. Nothing was changed: choose a smaller file and send it again."],
            _ => words["Something went wrong on our side. Nothing that you were told is saved is lost. Try again in a minute."],
        };
        Response.StatusCode = code;
        return View("Index", sentence);
    }
}
