using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Accounts;
using Training.Records.Practising;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Scenarios;

/// <summary>What can be practised.</summary>
[Authorize(Roles = Roles.Technician)]
[ShutDuringPaper]
public sealed class ScenariosController(Lessons lessons, Training.Records.Practising.Practice practice, CurrentActor current, CurrentReader reader) : Controller
{
    /// <summary>The scenarios by module, each with the last try.</summary>
    [HttpGet("/scenarios")]
    public async Task<IActionResult> Index()
    {
        var actor = await current.Get();
        var tries = await practice.Of(actor, actor.Person);
        if (!tries.IsOk) return this.NotShown(tries.Fault);
        var language = await reader.Language();
        return View(lessons.Modules.Select(module => new ScenarioGroup(module.In(language).Title,
            [.. lessons.QuestionsOf(module).Select(question => new ScenarioLine(
                question, question.Scenario.In(language).Title, LastOf(question, tries.Value)))]))
            .Where(group => group.Lines.Count > 0).ToList());
    }

    private static PracticeLine? LastOf(PractisedQuestion question, IReadOnlyList<PracticeLine> tries) =>
        tries.FirstOrDefault(line => line.Scenario == question.Scenario.Id && line.Kind == question.Kind);
}

/// <summary>What can be practised for a module.</summary>
/// <param name="Title">What the module is called.</param>
/// <param name="Lines">The questions.</param>
public sealed record ScenarioGroup(string Title, IReadOnlyList<ScenarioLine> Lines);

/// <summary>A question that can be practised.</summary>
/// <param name="Question">The question.</param>
/// <param name="Title">What its scenario is called.</param>
/// <param name="Last">The last try; null where there is none.</param>
public sealed record ScenarioLine(PractisedQuestion Question, string Title, PracticeLine? Last);
