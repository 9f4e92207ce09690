using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Content.Rendering;
using Training.Records;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Checks;

/// <summary>Answers to the questions between the sections of a lesson. They are for the reader alone: nothing is kept.</summary>
[Authorize(Roles = $"{Roles.Technician},{Roles.Trainer},{Roles.Examiner},{Roles.Owner}")]
[ShutDuringPaper]
public sealed class ChecksController(Lessons lessons, CurrentReader reader, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Answers a question: back to it with the reply, or, for a script, the reply alone.</summary>
    /// <param name="module">The module.</param>
    /// <param name="number">The question's number in the lesson.</param>
    /// <param name="answer">The answer's place, from 1.</param>
    /// <param name="language">The language that the question was read in.</param>
    [HttpPost("/modules/{module}/checks/{number:int}")]
    public async Task<IActionResult> Create(string module, int number, int answer, string? language)
    {
        if (lessons.Find(module) is not { } found) return NotFound();
        var asked = language ?? await reader.Language();
        if (lessons.Renderer.Reply(found, asked, number, answer) is not { } reply) return this.NotShown(Refused.NotFound);
        if (this.WantsJson()) return Json(new { isRight = reply.IsRight, heading = words[CheckPage.Heading(reply.IsRight)].Value, html = reply.Html });
        return Redirect(FormattableString.Invariant(
            $"/modules/{found.Id}?language={Uri.EscapeDataString(asked)}&check={number}&answer={answer}#{LessonPage.CheckFragment(number)}"));
    }
}
