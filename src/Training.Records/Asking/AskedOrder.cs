using Training.Content.Procedures;
using Training.Content.Scenarios;
using Training.Sequencing;
using Training.Sequencing.Answers;
using Training.Sequencing.Drawing;
using Training.Sequencing.Json;
using Training.Sequencing.Procedures;

namespace Training.Records.Asking;

/// <summary>A job to put in order, from the beginning or from what a colleague has done; the answer is the order.</summary>
internal sealed class AskedOrder(
    QuestionKind kind, Scenario scenario, WrittenProcedure procedure, Grader grader, IReadOnlyList<Entry> start, IReadOnlyList<StepId> offered)
    : Question(kind, scenario, procedure, grader.Variant)
{
    private const int MostEntries = 500;

    public override QuestionView View(string language)
    {
        var texts = Written!.In(language);
        return new(Kind, Scenario, language)
        {
            ProcedureTitle = texts.Title,
            Variant = Variant,
            Start = [.. start.Select(entry => Words.Done(texts, entry))],
            Offered = [.. offered.Select(id => Words.Of(texts, id))],
        };
    }

    /// <summary>What the order can be made of.</summary>
    public IReadOnlyList<StepId> Offered => offered;

    public override Refusal? Lacks(KeptAnswer answer) => null;

    public override JudgedAnswerView Judge(string? keptJson, string language) => new JudgedOrderView(View(language), Grade(keptJson, language));

    /// <summary>Judges an order and shows nothing: for whoever counts.</summary>
    public GradedOrder Grade(string? keptJson, string language)
    {
        var answer = AnswerJson.Parse(keptJson ?? "[]").Value with { Start = start };
        return new(answer, grader.Grade(answer).Value, Written!.In(language));
    }

    public override string RightAnswer() =>
        AnswerJson.Write(new(grader.Grade(new([]) { Start = start }).Value.Nearest));

    /// <summary>All that is offered in any order, with a minute for each wait.</summary>
    public override string BlindAnswer(SeededDraw lots) => AnswerJson.Write(new([.. lots.Shuffle(offered).Select(id =>
        grader.Procedure.Steps.Any(step => step.Id == id && step.IsWait) ? new Entry(id) { Stated = Duration.FromSeconds(60) } : new Entry(id))]));

    protected override Outcome<KeptAnswer, Refusal> Take(string answerJson)
    {
        var parsed = AnswerJson.Parse(answerJson);
        if (!parsed.IsOk) return parsed.Fault;
        var answer = parsed.Value;
        if (answer.Entries.Count > MostEntries) return new Refusal($"An answer has at most {MostEntries} entries.");
        if (answer.Start.Count > 0 || answer.Entries.Any(entry => entry.Observed is not null))
            return new Refusal("An answer is a list of what is done, without a start and without real times.");
        if (answer.Entries.FirstOrDefault(entry => !offered.Contains(entry.Step)) is { } foreign)
            return new Refusal($"“{foreign.Step}” is not among what this question offers.");
        // What could not be graded at the end is refused now.
        var graded = grader.Grade(answer with { Start = start });
        return graded.IsOk ? new KeptAnswer(AnswerJson.Write(answer), answer.Entries.Count) : graded.Fault;
    }
}
