using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Examining;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.PaperAnswers;

/// <summary>
/// The quiet saves of a script while an answer is being made: 200 saved; 409 a newer answer is held already; 410 the
/// paper is closed; 422 the answer cannot be read, with the sentence as the problem's detail (RFC 9457).
/// </summary>
[Authorize(Roles = Roles.Technician)]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
public sealed class PaperAnswersController(Training.Records.Examining.Papers papers, CurrentActor current, CurrentReader reader) : Controller
{
    /// <summary>Saves the answer so far.</summary>
    /// <param name="paper">The paper.</param>
    /// <param name="number">The question's number, from 1.</param>
    /// <param name="form">The order.</param>
    [AcceptVerbs("POST", "PUT", Route = "/papers/{paper}/answers/{number:int}")]
    public async Task<IActionResult> Update(PaperId paper, int number, AnswerForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        var actor = await current.Get();
        var answer = form.ToJson([]);
        if (!answer.IsOk) answer = form.ToJson(await Offered(actor, paper, number));
        if (!answer.IsOk) return Problem(this.Say(answer.Fault), statusCode: StatusCodes.Status422UnprocessableEntity);
        var saved = await papers.Save(actor, paper, number, answer.Value, form.SaveNumber);
        if (!saved.IsOk) return Problem(this.Say(saved.Fault), statusCode: await WhyNot(actor, paper));
        return saved.Value.Counter > form.SaveNumber
            ? Problem("A newer answer is held.", statusCode: StatusCodes.Status409Conflict)
            : Json(new SavedAnswer(saved.Value.Counter, saved.Value.SavedAt.ToString()));
    }

    // The sentence about a time names its step as the page does; a save that can be read needs no look at the question.
    private async Task<IReadOnlyList<OfferedStep>> Offered(Actor actor, PaperId paper, int number)
    {
        var open = await papers.Open(actor, paper, await reader.Language());
        return open.IsOk && open.Value.Questions.FirstOrDefault(question => question.Number == number) is { } found
            ? AnswerSheet.OfferedBy(found.Question)
            : [];
    }

    private async Task<int> WhyNot(Actor actor, PaperId paper)
    {
        var found = await papers.Look(actor, paper);
        if (!found.IsOk) return StatusCodes.Status404NotFound;
        return found.Value.Paper.State == PaperState.Open ? StatusCodes.Status422UnprocessableEntity : StatusCodes.Status410Gone;
    }
}

/// <summary>That an answer is held.</summary>
/// <param name="Counter">The number that it was saved with.</param>
/// <param name="SavedAt">When, in UTC (ISO 8601).</param>
public sealed record SavedAnswer(long Counter, string SavedAt);
