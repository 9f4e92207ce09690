using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Sequencing;

namespace Training.Web.Features.Shared;

/// <summary>How a refusal of the services reaches the person who asked.</summary>
public static class Refusing
{
    /// <summary>Where the sentence of a page that is not shown waits for the fault page.</summary>
    public const string SentenceKey = "refusal";

    /// <summary>A page that is not shown: the sentence, as not found, or as forbidden where the role is what lacks.</summary>
    /// <param name="controller">The controller.</param>
    /// <param name="refusal">Why.</param>
    public static IActionResult NotShown(this ControllerBase controller, Refusal refusal)
    {
        ArgumentNullException.ThrowIfNull(controller);
        ArgumentNullException.ThrowIfNull(refusal);
        controller.HttpContext.Items[SentenceKey] = controller.Say(refusal);
        return controller.StatusCode(refusal == Refused.NotAllowed ? StatusCodes.Status403Forbidden : StatusCodes.Status404NotFound);
    }

    /// <summary>
    /// An act that was not done: back to the page it came from, where its form keeps what was typed and says the sentence, or,
    /// for a script, a problem (RFC 9457) with the sentence as its detail. What is not there, or not the actor's to do, has no page to go back to.
    /// </summary>
    /// <param name="controller">The controller.</param>
    /// <param name="refusal">Why.</param>
    /// <param name="back">The page to go back to.</param>
    /// <param name="field">The field that is wrong, where the refusal does not say it; null where it is not one field.</param>
    public static IActionResult NotDone(this Controller controller, Refusal refusal, string back, string? field = null)
    {
        ArgumentNullException.ThrowIfNull(controller);
        ArgumentNullException.ThrowIfNull(refusal);
        var missing = refusal == Refused.NotFound;
        var forbidden = refusal == Refused.NotAllowed;
        if (controller.WantsJson())
        {
            return controller.Problem(controller.Say(refusal), statusCode: missing ? StatusCodes.Status404NotFound
                : forbidden ? StatusCodes.Status403Forbidden : StatusCodes.Status409Conflict);
        }

        if (missing || forbidden) return controller.NotShown(refusal);
        RejectedForm.From(controller.HttpContext, controller.Say(refusal), refusal.About ?? field).ShowNext(controller.TempData);
        return controller.Redirect(back);
    }

    /// <summary>A form that is not taken: the page that is shown at once keeps what was typed and says what is wrong beside the field.</summary>
    /// <param name="controller">The controller.</param>
    /// <param name="refusal">Why.</param>
    /// <param name="field">The field that is wrong, where the refusal does not say it; null where it is not one field.</param>
    public static void Reject(this ControllerBase controller, Refusal refusal, string? field = null)
    {
        ArgumentNullException.ThrowIfNull(refusal);
        controller.Reject(controller.Say(refusal), refusal.About ?? field);
    }

    /// <summary>A form that is not taken: the page that is shown at once keeps what was typed and says what is wrong beside the field.</summary>
    /// <param name="controller">The controller.</param>
    /// <param name="sentence">Why, in the reader's language.</param>
    /// <param name="field">The field that is wrong; null where it is not one field.</param>
    public static void Reject(this ControllerBase controller, string sentence, string? field = null)
    {
        ArgumentNullException.ThrowIfNull(controller);
        controller.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
        RejectedForm.From(controller.HttpContext, sentence, field).ShowIn(controller.HttpContext);
    }

    /// <summary>An act that was done: on to a page, with a word about it.</summary>
    /// <param name="controller">The controller.</param>
    /// <param name="said">The word; null for none.</param>
    /// <param name="on">The page to go on to.</param>
    public static IActionResult Done(this Controller controller, string? said, string on)
    {
        ArgumentNullException.ThrowIfNull(controller);
        if (said is not null) controller.TempData["Said"] = said;
        return controller.Redirect(on);
    }

    /// <summary>The sentence of a refusal in the reader's language.</summary>
    /// <param name="controller">The controller.</param>
    /// <param name="refusal">The refusal.</param>
    public static string Say(this ControllerBase controller, Refusal refusal)
    {
        ArgumentNullException.ThrowIfNull(controller);
        return controller.HttpContext.RequestServices.GetRequiredService<IStringLocalizer<Words>>().Say(refusal);
    }

    /// <summary>Whether a script asks rather than a browser.</summary>
    /// <param name="controller">The controller.</param>
    public static bool WantsJson(this ControllerBase controller)
    {
        ArgumentNullException.ThrowIfNull(controller);
        return controller.Request.Headers.Accept.ToString().Contains("application/json", StringComparison.Ordinal);
    }
}
