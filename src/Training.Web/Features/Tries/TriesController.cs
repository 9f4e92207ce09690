using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Practising;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Tries;

/// <summary>What is said of an answer that was handed in for practice.</summary>
[Authorize(Roles = $"{Roles.Technician},{Roles.Trainer},{Roles.Examiner},{Roles.Owner},{Roles.Administrator}")]
[ShutDuringPaper]
public sealed class TriesController(Lessons lessons, Training.Records.Practising.Practice practice, CurrentActor current, CurrentReader reader) : Controller
{
    /// <summary>The verdict with its replay, and where to go from here.</summary>
    /// <param name="id">The try.</param>
    [HttpGet("/tries/{id}")]
    public async Task<IActionResult> Show(PracticeId id)
    {
        var actor = await current.Get();
        var result = await practice.Look(actor, id, await reader.Language());
        if (!result.IsOk) return this.NotShown(result.Fault);
        var judged = result.Value.Judged;
        var tries = await practice.Of(actor, actor.Person);
        return View(new TryPage(result.Value)
        {
            Lesson = lessons.Teaching(judged.Question.Situation),
            Next = NextOf(result.Value.Ticket, tries.IsOk ? tries.Value : []),
        });
    }

    /// <summary>The first question behind this one whose last try was not right; past the end it is looked for from the top.</summary>
    private PractisedQuestion? NextOf(PracticeTicket ticket, IReadOnlyList<PracticeLine> tries)
    {
        var all = lessons.Modules.SelectMany(lessons.QuestionsOf).ToList();
        var here = all.FindIndex(question => question.Scenario.Id == ticket.Scenario && question.Kind == ticket.Kind);
        return all.Skip(here + 1).Concat(all.Take(Math.Max(0, here))).FirstOrDefault(question =>
            tries.FirstOrDefault(line => line.Scenario == question.Scenario.Id && line.Kind == question.Kind) is not { Accepted: true });
    }
}
