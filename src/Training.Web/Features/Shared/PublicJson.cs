using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Sequencing;

namespace Training.Web.Features.Shared;

/// <summary>Files of canonical JSON for whoever asks: the very bytes that were signed or hashed.</summary>
public static class PublicJson
{
    /// <summary>The bytes, or a problem (RFC 9457) with the sentence as its detail.</summary>
    /// <param name="controller">The controller.</param>
    /// <param name="outcome">The bytes, or why there are none.</param>
    /// <param name="type">The media type.</param>
    /// <param name="name">The name under which a browser keeps the file; null to show it.</param>
    public static IActionResult Bytes(
        this ControllerBase controller, Outcome<byte[], Refusal> outcome, string type = "application/json", string? name = null)
    {
        ArgumentNullException.ThrowIfNull(controller);
        // Whoever checks may do so in a page of their own: these files are meant for everybody.
        controller.Response.Headers.AccessControlAllowOrigin = "*";
        controller.Response.Headers.CacheControl = "no-store";
        if (outcome.IsOk) return name is null ? controller.File(outcome.Value, type) : controller.File(outcome.Value, type, name);
        return controller.Problem(
            outcome.Fault.Sentence,
            statusCode: outcome.Fault == Refused.NotFound ? StatusCodes.Status404NotFound : StatusCodes.Status409Conflict);
    }
}
