using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Examining;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.PaperAnswers;

/// <summary>
/// The quiet saves of a script while an answer is being made: 200 saved; 409 another answer is held, saved from another
/// page, with its number as the problem's <c>held</c>; 410 the paper is closed; 422 the answer cannot be read, with the sentence as the problem's detail (RFC 9457).
/// </summary>
[Authorize(Roles = Roles.Technician)]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
public sealed class PaperAnswersController(
    Training.Records.Examining.Papers papers, CurrentActor current, CurrentReader reader, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Saves the answer so far.</summary>
    /// <param name="paper">The paper.</param>
    /// <param name="number">The question's number, from 1.</param>
    /// <param name="form">The order.</param>
    [AcceptVerbs("POST", "PUT", Route = "/papers/{paper}/answers/{number:int}")]
    public async Task<IActionResult> Update(PaperId paper, int number, AnswerForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        var answer = form.ToJson([]);
        var actor = await current.Get();
        if (!answer.IsOk) return Problem(await SayWhy(actor, paper, number, form), statusCode: StatusCodes.Status422UnprocessableEntity);
        var saved = await papers.Save(actor, paper, number, answer.Value, form.SaveNumber, form.Bases());
        if (!saved.IsOk) return Problem(this.Say(saved.Fault), statusCode: await WhyNot(actor, paper));
        return saved.Value.IsAnother
            ? Problem(
                words["Another page or device has saved another answer to this question. Yours is not saved: choose which of the two is to stay."],
                statusCode: StatusCodes.Status409Conflict, extensions: new Dictionary<string, object?> { ["held"] = saved.Value.Counter })
            : Json(new SavedAnswer(saved.Value.Counter, saved.Value.SavedAt.ToString()));
    }

    /// <summary>What cannot be read, in the words of the steps: they are looked up only when there is something to say.</summary>
    private async Task<string> SayWhy(Actor actor, PaperId paper, int number, AnswerForm form)
    {
        var open = await papers.Open(actor, paper, await reader.Language());
        var asked = open.IsOk ? open.Value.Questions.FirstOrDefault(question => question.Number == number)?.Question : null;
        return this.Say(form.ToJson(asked is null ? [] : AnswerSheet.OfferedBy(asked)).Fault);
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
