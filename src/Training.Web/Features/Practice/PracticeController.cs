using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records.Accounts;
using Training.Records.Practising;
using Training.Sequencing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Practice;

/// <summary>A practice question: it is drawn, answered on a sheet and handed in.</summary>
[Authorize(Roles = Roles.Technician)]
[ShutDuringPaper]
[Route("/scenarios/{scenario}")]
public sealed class PracticeController(
    Lessons lessons,
    Training.Records.Practising.Practice practice,
    CurrentActor current,
    CurrentReader reader,
    IStringLocalizer<Words> words) : Controller
{
    /// <summary>Draws a question.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="kind">How it is put; the scenario's first kind where it is not said.</param>
    [HttpGet("practice")]
    public async Task<IActionResult> Show(string scenario, string? kind)
    {
        var drawn = await Draw(scenario, kind, null);
        return drawn.IsOk ? View(await Page(drawn.Value, new(), Guid.NewGuid(), null)) : this.NotShown(drawn.Fault);
    }

    /// <summary>Makes a change to the order so far, for browsers without script. Nothing is kept on the server.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="form">The order and the change.</param>
    /// <param name="ticket">The question.</param>
    [HttpPost("practice")]
    public async Task<IActionResult> Change(string scenario, AnswerForm form, PracticeTicketForm ticket)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(ticket);
        var drawn = await Draw(scenario, ticket.Kind, ticket.Seed);
        return drawn.IsOk ? View(nameof(Show), await Page(drawn.Value, form, ticket.Key, null)) : this.NotShown(drawn.Fault);
    }

    /// <summary>Hands the answer in and goes on to what is said of it.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="form">The order.</param>
    /// <param name="ticket">The question.</param>
    [HttpPost("tries")]
    public async Task<IActionResult> HandIn(string scenario, AnswerForm form, PracticeTicketForm ticket)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(ticket);
        var drawn = await Draw(scenario, ticket.Kind, ticket.Seed);
        if (!drawn.IsOk) return this.NotShown(drawn.Fault);
        var result = await Grade(drawn.Value, form, ticket);
        if (result.IsOk) return Redirect($"/tries/{result.Value.Id}");
        Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
        return View(nameof(Show), await Page(drawn.Value, form, ticket.Key, this.Say(result.Fault)));
    }

    private async Task<Outcome<PracticeQuestion, Refusal>> Draw(string scenario, string? kind, long? seed) =>
        lessons.FindScenario(new(scenario)) is { } found
            ? await practice.Draw(await current.Get(), found.Id, QuestionKinds.Read(kind, found.Kinds), seed, await reader.Language())
            : new Refusal(words["This scenario is not served any more. Choose another one."]);

    private async Task<Outcome<PracticeResult, Refusal>> Grade(
        PracticeQuestion drawn, AnswerForm form, PracticeTicketForm ticket)
    {
        if (drawn.Question.Offered.Count > 0 && form.Placed().Count == 0) return new Refusal(words["Your order is empty. Tap what you would do first, then hand in."]);
        var answer = form.ToJson(AnswerSheet.OfferedBy(drawn.Question));
        return answer.IsOk
            ? await practice.HandIn(await current.Get(),
                new(ticket.Key, drawn.Ticket with { Publication = ticket.Publication }, answer.Value))
            : answer.Fault;
    }

    private async Task<PracticePage> Page(PracticeQuestion drawn, AnswerForm form, Guid key, string? wrong)
    {
        var at = $"/scenarios/{drawn.Ticket.Scenario}";
        var sheet = Sheet.For(drawn.Question, form, at + "/practice") with
        {
            Carried = PracticeTicketForm.Of(drawn.Ticket, key),
            Wrong = wrong,
            Acts = [new(words["Hand in"], at + "/tries", IsMain: true)],
        };
        return new(QuestionPage.Of(drawn.Question, lessons.Renderer, await reader.Language()), sheet);
    }
}
