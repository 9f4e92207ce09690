using Training.Content.Competencies;
using Training.Records.Asking;
using Training.Records.Publishing;
using Training.Sequencing.Answers;
using Training.Sequencing.Drawing;
using Training.Sequencing.Json;
using Training.Sequencing.Procedures;

namespace Training.Records.Examining;

/// <summary>Draws a paper's questions from its seed, and makes questions again of what was kept.</summary>
internal static class PaperDraw
{
    /// <summary>The questions of a blueprint in its order, each scenario at most once a line of it.</summary>
    public static List<PaperQuestion> Draw(PublishedLibrary library, PaperBlueprint blueprint, long seed)
    {
        var lots = new SeededDraw(seed);
        var chosen = blueprint.Questions.SelectMany((draw, line) =>
            lots.For(line).Choose(draw.From, draw.Count).Select(scenario => (draw.Kind, scenario)));
        return [.. chosen.Select((choice, index) => Keep(
            index + 1, Question.Draw(library, choice.scenario, choice.Kind, lots.For(1000 + index))))];
    }

    /// <summary>The question as it was put.</summary>
    public static Question Restore(PaperQuestion kept, PublishedLibrary library) => new(
        kept.Kind,
        library.Content.FindScenario(kept.Scenario)!,
        library.Content.FindProcedure(kept.Procedure)!,
        kept.Variant,
        AnswerJson.Parse(kept.StartJson).Value.Entries,
        [.. kept.Offered.Select(id => new StepId(id))]);

    private static PaperQuestion Keep(int number, Question question) => new()
    {
        Number = number,
        Kind = question.Kind,
        Scenario = question.Scenario.Id,
        ScenarioHash = question.Scenario.Text.File.Hash,
        Procedure = question.Procedure.Id,
        ProcedureHash = question.Procedure.File.Hash,
        Variant = question.Variant,
        StartJson = AnswerJson.Write(new Answer(question.Start)),
        Offered = [.. question.Offered.Select(id => id.Value)],
    };
}
