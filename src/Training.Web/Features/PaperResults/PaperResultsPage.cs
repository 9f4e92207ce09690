using Training.Content.Scenarios;
using Training.Records.Results;
using Training.Web.Features.Shared;

namespace Training.Web.Features.PaperResults;

/// <summary>The papers of a competency.</summary>
/// <param name="Papers">The papers.</param>
/// <param name="Lessons">What is taught now, for the titles of scenarios.</param>
public sealed record PaperResultsPage(CompetencyPapers Papers, Lessons Lessons)
{
    /// <summary>What a scenario is called; its id where it is not taught any more.</summary>
    /// <param name="scenario">The scenario.</param>
    public string TitleOf(ScenarioId scenario) => Lessons.FindScenario(scenario)?.In(Tongues.Current.Code).Title ?? scenario.Value;
}
