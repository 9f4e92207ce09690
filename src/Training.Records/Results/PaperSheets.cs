using Training.Content;
using Training.Content.Competencies;
using Training.Content.Scenarios;

namespace Training.Records.Results;

/// <summary>A closed paper, as far as its figures need it.</summary>
/// <param name="Competency">What was examined.</param>
/// <param name="CompetencyHash">By which text of it.</param>
/// <param name="IsPassed">Whether it was passed.</param>
/// <param name="Answers">The questions by number, and whether each was answered wholly rightly; no answer is none.</param>
internal sealed record ClosedPaper(
    CompetencyId Competency, ContentHash CompetencyHash, bool IsPassed, IReadOnlyList<(QuestionKind Kind, ScenarioId Scenario, bool IsRight)> Answers);

/// <summary>The sums of papers in memory, and how a paper is added to them.</summary>
internal sealed class PaperSheets
{
    public Dictionary<ContentHash, PaperSum> Papers { get; } = [];

    public Dictionary<(ContentHash, QuestionKind, ScenarioId), ItemSum> Items { get; } = [];

    /// <summary>Called with everything that is new on the sheets.</summary>
    public Action<object> Added { get; init; } = _ => { };

    public void Add(ClosedPaper paper)
    {
        if (!Papers.TryGetValue(paper.CompetencyHash, out var sum))
        {
            sum = new() { CompetencyHash = paper.CompetencyHash, Competency = paper.Competency };
            Papers.Add(paper.CompetencyHash, sum);
            Added(sum);
        }

        sum.Add([.. paper.Answers.Select(answer => answer.IsRight)], paper.IsPassed);
        var total = paper.Answers.Count(answer => answer.IsRight);
        foreach (var (kind, scenario, isRight) in paper.Answers)
        {
            var key = (paper.CompetencyHash, kind, scenario);
            if (!Items.TryGetValue(key, out var item))
            {
                item = new() { CompetencyHash = paper.CompetencyHash, Kind = kind, Scenario = scenario };
                Items.Add(key, item);
                Added(item);
            }

            item.Add(isRight, isRight ? total - 1 : total);
        }
    }
}
