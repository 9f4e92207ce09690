using Training.Content;
using Training.Content.Competencies;
using Training.Content.Scenarios;
using Training.Records.Asking;
using Training.Records.Publishing;
using Training.Sequencing;
using Training.Sequencing.Drawing;

namespace Training.Records.Examining;

/// <summary>Draws a paper's questions from its seed, the first time and every time that they are needed again.</summary>
internal sealed class PaperDraw(Questions questions, BlindScores blind)
{
    // Of so many draws the paper is taken whose blind points lie nearest to what the blueprint gives on average; the first
    // that comes as near as this is near enough.
    private const int Draws = 16;
    private const double NearEnough = 1;

    // Lots of the questions themselves come far behind those of the blueprint's lines.
    private const int FirstQuestion = 1000;

    /// <summary>
    /// The questions of a blueprint in its order, each scenario at most once a line of it; of those that a line names,
    /// the ones come first that the fewest neighbours have, so that two papers of a sitting share none before all are used,
    /// unless one question would tell of another.
    /// Papers are of like difficulty, measured by the points of blind answers.
    /// </summary>
    /// <param name="library">The publication that is drawn from.</param>
    /// <param name="blueprint">What is drawn.</param>
    /// <param name="seed">The paper's seed.</param>
    /// <param name="neighbours">How often the other papers of the sitting ask about a scenario in a way.</param>
    public async Task<Outcome<List<PaperQuestion>, Refusal>> Draw(
        PublishedLibrary library, PaperBlueprint blueprint, long seed, IReadOnlyDictionary<(QuestionKind, ScenarioId), int> neighbours)
    {
        var drawn = new List<PaperQuestion>();
        foreach (var (kind, scenario) in await Scenarios(library, blueprint, seed, neighbours))
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

    /// <summary>The blind points of a paper: the mean over its questions.</summary>
    public async Task<double> BlindPoints(PublishedLibrary library, IEnumerable<(QuestionKind, ScenarioId)> asked)
    {
        var points = new List<double>();
        foreach (var (kind, scenario) in asked) points.Add(await blind.Of(library, kind, scenario));
        return points.Average();
    }

    /// <summary>The blind points that a blueprint's papers have on average.</summary>
    public async Task<double> BlindPoints(PublishedLibrary library, PaperBlueprint blueprint)
    {
        var (sum, count) = (0.0, 0);
        foreach (var draw in blueprint.Questions)
        {
            sum += draw.Count * await BlindPoints(library, draw.From.Select(scenario => (draw.Kind, scenario)));
            count += draw.Count;
        }

        return sum / count;
    }

    /// <summary>What a paper asks: scenarios and in which way, in the blueprint's order.</summary>
    public async Task<IReadOnlyList<(QuestionKind Kind, ScenarioId Scenario)>> Scenarios(
        PublishedLibrary library, PaperBlueprint blueprint, long seed, IReadOnlyDictionary<(QuestionKind, ScenarioId), int> neighbours)
    {
        var lots = new SeededDraw(seed);
        var wanted = await BlindPoints(library, blueprint);
        var (nearest, off) = ((IReadOnlyList<(QuestionKind, ScenarioId)>)[], double.PositiveInfinity);
        for (var turn = 0; turn < Draws && off > NearEnough; turn++)
        {
            var chosen = Chosen(library.Content, blueprint, lots.For(turn), neighbours);
            var away = Math.Abs(await BlindPoints(library, chosen) - wanted);
            if (away < off) (nearest, off) = (chosen, away);
        }

        return nearest;
    }

    /// <summary>
    /// One choice of scenarios by lot, before anybody looks at how hard it is: no question shows anything of what another
    /// asks (<see cref="PaperOffer.TellsOf"/>) wherever the blueprint can be drawn so, and of these choices one of the least used.
    /// </summary>
    public static IReadOnlyList<(QuestionKind Kind, ScenarioId Scenario)> Chosen(
        ContentLibrary content, PaperBlueprint blueprint, SeededDraw lots, IReadOnlyDictionary<(QuestionKind, ScenarioId), int> neighbours)
    {
        var offered = blueprint.Questions.Select((draw, line) => new PaperOffers(
            [.. lots.For(line).Shuffle(draw.From).Select(scenario => PaperOffer.Of(draw.Kind, scenario, content))], draw.Count));
        return [.. PaperChoice.Of(offered, offer => neighbours.GetValueOrDefault((offer.Kind, offer.Scenario)))
            .Asked.Select(offer => (offer.Kind, offer.Scenario))];
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
