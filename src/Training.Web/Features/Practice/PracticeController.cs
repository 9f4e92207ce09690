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
    /// <summary>
    /// A question as its address names it, with the order so far where the address has one: loaded again it is the same.
    /// An address without a seed leads on to one with a fresh seed.
    /// </summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="kind">How it is put; the scenario's first kind where it is not said.</param>
    /// <param name="seed">The seed of the order in which things are offered.</param>
    /// <param name="form">The order so far.</param>
    /// <param name="refused">Given where the order was handed in and not taken, so that the page says why.</param>
    [HttpGet("practice")]
    public async Task<IActionResult> Show(string scenario, string? kind, long? seed, AnswerForm form, string? refused)
    {
        ArgumentNullException.ThrowIfNull(form);
        var drawn = await Draw(scenario, kind, seed);
        if (!drawn.IsOk) return this.NotShown(drawn.Fault);
        if (seed is null) return Redirect(PracticeAddress.Of(drawn.Value.Ticket, new()));
        var wrong = refused is null ? null : await WhyNot(drawn.Value, form);
        if (wrong is not null) Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
        return View(await Page(drawn.Value, form, wrong));
    }

    /// <summary>Makes a change to the order so far, for browsers without script. Nothing is kept on the server: the order goes along in the address.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="form">The order and the change.</param>
    /// <param name="ticket">The question.</param>
    [HttpPost("practice")]
    public async Task<IActionResult> Change(string scenario, AnswerForm form, PracticeTicketForm ticket)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(ticket);
        var drawn = await Draw(scenario, ticket.Kind, ticket.Seed);
        return drawn.IsOk ? Redirect(PracticeAddress.Of(drawn.Value.Ticket, form)) : this.NotShown(drawn.Fault);
    }

    /// <summary>Hands the answer in and goes on to what is said of it, or back to the order where it cannot be judged.</summary>
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
        var answer = Answer(drawn.Value, form);
        if (answer.IsOk)
        {
            var result = await practice.HandIn(await current.Get(),
                new(ticket.Key, drawn.Value.Ticket with { Publication = ticket.Publication }, answer.Value));
            if (result.IsOk) return Redirect($"/tries/{result.Value.Id}");
        }

        return Redirect(PracticeAddress.Of(drawn.Value.Ticket, form, isRefused: true));
    }

    private async Task<Outcome<PracticeQuestion, Refusal>> Draw(string scenario, string? kind, long? seed) =>
        lessons.FindScenario(new(scenario)) is { } found
            ? await practice.Draw(await current.Get(), found.Id, QuestionKinds.Read(kind, found.Kinds), seed, await reader.Language())
            : new Refusal(words["This scenario is not served any more. Choose another one."]);

    private Outcome<string, Refusal> Answer(PracticeQuestion drawn, AnswerForm form)
    {
        if (drawn.Question.Offered.Count > 0 && form.Placed().Count == 0) return new Refusal(words["Your order is empty. Tap what you would do first, then hand in."]);
        return WrongTimes(drawn, form) is [var wrong, ..] ? wrong.Why : form.ToJson(AnswerSheet.OfferedBy(drawn.Question));
    }

    private async Task<Refusal?> WhyNot(PracticeQuestion drawn, AnswerForm form)
    {
        var answer = Answer(drawn, form);
        return answer.IsOk ? await practice.WhyNot(drawn.Ticket, answer.Value) : answer.Fault;
    }

    private static IReadOnlyList<WrongTime> WrongTimes(PracticeQuestion drawn, AnswerForm form) =>
        AnswerForm.WrongTimes(form.Placed(), AnswerSheet.OfferedBy(drawn.Question), areNeeded: true);

    private async Task<PracticePage> Page(PracticeQuestion drawn, AnswerForm form, Refusal? wrong)
    {
        var at = $"/scenarios/{drawn.Ticket.Scenario}";
        var sheet = Sheet.For(drawn.Question, form, at + "/practice") with
        {
            Carried = PracticeTicketForm.Of(drawn.Ticket, Guid.NewGuid()),
            KeptAs = PractisedQuestion.KeptAs(drawn.Ticket),
            Acts = [new(words["Hand in"], at + "/tries", IsMain: true)],
        };
        return new(
            QuestionPage.Of(drawn.Question, lessons.Renderer, await reader.Language()),
            wrong is null ? sheet : sheet.Refused(this.Say(wrong), WrongTimes(drawn, form)));
    }
}
