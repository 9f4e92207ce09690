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
            [.. lessons.QuestionsOf(module).GroupBy(question => question.Scenario).Select(asked => new ScenarioLines(
                asked.Key.In(language).Title, [.. asked.Select(question => new ScenarioLine(question, LastOf(question, tries.Value)))]))]))
            .Where(group => group.Scenarios.Count > 0).ToList());
    }

    private static PracticeLine? LastOf(PractisedQuestion question, IReadOnlyList<PracticeLine> tries) =>
        tries.FirstOrDefault(line => line.Scenario == question.Scenario.Id && line.Kind == question.Kind);
}

/// <summary>What can be practised for a module.</summary>
/// <param name="Title">What the module is called.</param>
/// <param name="Scenarios">Its scenarios.</param>
public sealed record ScenarioGroup(string Title, IReadOnlyList<ScenarioLines> Scenarios)
{
    /// <summary>How many questions there are.</summary>
    public int Asked => Scenarios.Sum(scenario => scenario.Lines.Count);

    /// <summary>How many were answered rightly at the last try.</summary>
    public int Right => Scenarios.Sum(scenario => scenario.Lines.Count(line => line.IsRight));

    /// <summary>Whether all were answered rightly at the last try.</summary>
    public bool IsDone => Right == Asked;
}

/// <summary>The questions about one scenario.</summary>
/// <param name="Title">What the scenario is called.</param>
/// <param name="Lines">The questions.</param>
public sealed record ScenarioLines(string Title, IReadOnlyList<ScenarioLine> Lines);

/// <summary>A question that can be practised.</summary>
/// <param name="Question">The question.</param>
/// <param name="Last">The last try; null where there is none.</param>
public sealed record ScenarioLine(PractisedQuestion Question, PracticeLine? Last)
{
    /// <summary>Whether the last try was right.</summary>
    public bool IsRight => Last is { Accepted: true };
}
