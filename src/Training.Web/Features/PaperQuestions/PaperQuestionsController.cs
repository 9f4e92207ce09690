using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Examining;
using Training.Sequencing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.PaperQuestions;

/// <summary>A question of one's own open paper.</summary>
[Authorize(Roles = Roles.Technician)]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
[Route("/papers/{paper}/questions/{number:int}")]
public sealed class PaperQuestionsController(
    Training.Records.Examining.Papers papers, Lessons lessons, CurrentActor current, CurrentReader reader, IStringLocalizer<Words> words) : Controller
{
    /// <summary>The question with what is saved of its answer.</summary>
    /// <param name="paper">The paper.</param>
    /// <param name="number">The question's number, from 1.</param>
    [HttpGet]
    public async Task<IActionResult> Show(PaperId paper, int number)
    {
        var open = await papers.Open(await current.Get(), paper, await reader.Language());
        if (!open.IsOk) return ModelState.IsValid ? Redirect($"/papers/{paper}") : NotFound();
        return Find(open.Value, number) is { } question
            ? View(await Page(open.Value, question, AnswerForm.OfSaved(question.Saved?.AnswerJson), null))
            : NotFound();
    }

    /// <summary>Saves the order with the change that was made to it and goes on; what cannot be read is shown again.</summary>
    /// <param name="paper">The paper.</param>
    /// <param name="number">The question's number, from 1.</param>
    /// <param name="form">The order and the change.</param>
    /// <param name="then">Where to go on to: <c>next</c>, <c>previous</c> or <c>list</c>; the same question where it is not said.</param>
    [HttpPost]
    public async Task<IActionResult> Update(PaperId paper, int number, AnswerForm form, [FromQuery] string? then)
    {
        ArgumentNullException.ThrowIfNull(form);
        var open = await papers.Open(await current.Get(), paper, await reader.Language());
        if (!open.IsOk) return this.NotDone(open.Fault, $"/papers/{paper}");
        if (Find(open.Value, number) is not { } question) return NotFound();
        var saved = await Save(paper, question, form);
        if (!saved.IsOk)
        {
            Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
            return View(nameof(Show), await Page(open.Value, question, form, this.Say(saved.Fault)));
        }

        var here = $"/papers/{paper}/questions/{number}";
        if (saved.Value.IsAnother)
        {
            // What was typed stays on the page; saved again from there it is made from what is held, and wins knowingly.
            Response.StatusCode = StatusCodes.Status409Conflict;
            return View(nameof(Show), await Page(open.Value, question with { Saved = saved.Value }, form, null, isAnotherHeld: true));
        }

        return this.Done(null, then switch
        {
            "next" when number < open.Value.Questions.Count => $"/papers/{paper}/questions/{number + 1}",
            "previous" when number > 1 => $"/papers/{paper}/questions/{number - 1}",
            "next" or "previous" or "list" => $"/papers/{paper}",
            _ => here,
        });
    }

    private async Task<Outcome<SavedAnswerView, Refusal>> Save(
        PaperId paper, OpenQuestion question, AnswerForm form)
    {
        var answer = form.ToJson(AnswerSheet.OfferedBy(question.Question));
        return answer.IsOk
            ? await papers.Save(await current.Get(), paper, question.Number, answer.Value, form.SaveNumber + 1, form.Bases())
            : answer.Fault;
    }

    private async Task<PaperQuestionPage> Page(
        OpenPaper paper, OpenQuestion question, AnswerForm form, string? wrong, bool isAnotherHeld = false)
    {
        var here = $"/papers/{paper.Id}/questions/{question.Number}";
        var isLast = question.Number == paper.Questions.Count;
        var sheet = Sheet.For(question.Question, form, here) with
        {
            SaveAddress = $"/papers/{paper.Id}/answers/{question.Number}",
            SaveNumber = question.Saved?.Counter ?? 0,
            IsAnotherHeld = isAnotherHeld,
            Acts =
            [
                .. question.Number > 1 ? [new SheetAct(words["Question {0}", question.Number - 1], here + "?then=previous")] : Array.Empty<SheetAct>(),
                isLast
                    ? new(words["To the list"], here + "?then=list", IsMain: true)
                    : new(words["Question {0}", question.Number + 1], here + "?then=next", IsMain: true),
            ],
        };
        return new(
            paper,
            question,
            QuestionPage.Of(question.Question, lessons.Renderer, await reader.Language()),
            wrong is null ? sheet : sheet.Refused(wrong, AnswerForm.WrongTimes(form.Placed(), AnswerSheet.OfferedBy(question.Question), areNeeded: false)),
            await reader.Zone());
    }

    private static OpenQuestion? Find(OpenPaper paper, int number) =>
        paper.Questions.FirstOrDefault(question => question.Number == number);
}

/// <summary>A question of an open paper with its answer sheet.</summary>
/// <param name="Paper">The paper.</param>
/// <param name="Open">The question of the paper.</param>
/// <param name="Question">The question as it is put.</param>
/// <param name="Sheet">The sheet.</param>
/// <param name="Zone">The time zone that times are told in.</param>
public sealed record PaperQuestionPage(OpenPaper Paper, OpenQuestion Open, QuestionPage Question, Sheet Sheet, string Zone);
