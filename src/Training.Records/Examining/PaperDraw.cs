using Training.Content.Competencies;
using Training.Content.Scenarios;
using Training.Records.Asking;
using Training.Records.Publishing;
using Training.Sequencing;
using Training.Sequencing.Drawing;

namespace Training.Records.Examining;

/// <summary>Draws a paper's questions from its seed, the first time and every time that they are needed again.</summary>
internal sealed class PaperDraw(Questions questions)
{
    // Lots of the questions themselves come far behind those of the blueprint's lines.
    private const int FirstQuestion = 1000;

    /// <summary>The questions of a blueprint in its order, each scenario at most once a line of it.</summary>
    public async Task<Outcome<List<PaperQuestion>, Refusal>> Draw(PublishedLibrary library, PaperBlueprint blueprint, long seed)
    {
        var lots = new SeededDraw(seed);
        var chosen = blueprint.Questions.SelectMany((draw, line) =>
            lots.For(line).Choose(draw.From, draw.Count).Select(scenario => (draw.Kind, scenario)));
        var drawn = new List<PaperQuestion>();
        foreach (var (kind, scenario) in chosen)
        {
            var question = await Question(library, scenario, kind, seed, drawn.Count + 1);
            if (!question.IsOk) return question.Fault;
            drawn.Add(Keep(drawn.Count + 1, question.Value));
        }

        return drawn;
    }

    /// <summary>A question of a paper as it is put.</summary>
    /// <exception cref="InvalidOperationException">What could be drawn once no longer can: a fault of ours.</exception>
    public async Task<Question> Again(PublishedLibrary library, Paper paper, PaperQuestion kept)
    {
        var question = await Question(library, kept.Scenario, kept.Kind, paper.Seed!.Value, kept.Number);
        return question.Match(again => again, refusal => throw new InvalidOperationException(
            $"Question {kept.Number} of the paper {paper.Id} cannot be drawn again: {refusal}"));
    }

    private ValueTask<Outcome<Question, Refusal>> Question(
        PublishedLibrary library, ScenarioId scenario, QuestionKind kind, long seed, int number) =>
        questions.Draw(library, scenario, kind, new SeededDraw(seed).For(FirstQuestion + number - 1));

    private static PaperQuestion Keep(int number, Question question) => new()
    {
        Number = number,
        Kind = question.Kind,
        Scenario = question.Scenario.Id,
        ScenarioHash = question.Scenario.Text.File.Hash,
        Procedure = question.Written?.Id,
        ProcedureHash = question.Written?.File.Hash,
        Variant = question.Variant,
    };
}
