using Training.Content;
using Training.Content.Competencies;
using Training.Content.Scenarios;
using Training.Sequencing.Drawing;

namespace Training.Records.Examining;

/// <summary>A paper as it could be drawn, for whoever writes its blueprint.</summary>
public static class SamplePaper
{
    /// <summary>
    /// The scenarios of a draw by the same lots as a paper's (<see cref="PaperDraw"/>), without neighbours and without
    /// looking at how hard it is.
    /// </summary>
    /// <param name="content">What is drawn from.</param>
    /// <param name="blueprint">What is drawn.</param>
    /// <param name="seed">The seed.</param>
    public static IReadOnlyList<(QuestionKind Kind, ScenarioId Scenario)> Draw(
        ContentLibrary content, PaperBlueprint blueprint, long seed)
    {
        ArgumentNullException.ThrowIfNull(content);
        ArgumentNullException.ThrowIfNull(blueprint);
        return PaperDraw.Chosen(content, blueprint, new SeededDraw(seed).For(0), new Dictionary<(QuestionKind, ScenarioId), int>());
    }
}
