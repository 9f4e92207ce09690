using Training.Content.Procedures;
using Training.Content.Scenarios;
using Training.Records.Publishing;
using Training.Sequencing;
using Training.Sequencing.Answers;
using Training.Sequencing.Drawing;
using Training.Sequencing.Json;
using Training.Sequencing.Procedures;

namespace Training.Records.Asking;

/// <summary>A question as it was drawn: what it is about, what was done before and what is offered in which order.</summary>
internal sealed record Question(
    QuestionKind Kind,
    Scenario Scenario,
    WrittenProcedure Procedure,
    VariantId? Variant,
    IReadOnlyList<Entry> Start,
    IReadOnlyList<StepId> Offered)
{
    // An answer is a list of taps on a screen; this is far above what anybody gives and far below what would hurt.
    private const int LongestAnswer = 64 * 1024;
    private const int MostEntries = 500;

    /// <summary>Whether questions of that kind can be put yet.</summary>
    public static bool CanPut(QuestionKind kind) => kind is QuestionKind.Order or QuestionKind.Finish;

    /// <summary>
    /// Draws a question. Offered are the steps for the kind of vehicle that nobody has done yet and the scenario's decoys, shuffled.
    /// </summary>
    public static Question Draw(PublishedLibrary library, ScenarioId id, QuestionKind kind, SeededDraw lots)
    {
        var scenario = library.Content.FindScenario(id) ?? throw new InvalidOperationException($"There is no scenario {id}.");
        var written = library.Content.FindProcedure(scenario.Procedure)!;
        var procedure = written.Procedure;
        var variant = scenario.Variant ?? (procedure.Variants.Count > 0 ? procedure.Variants[0] : null);
        IReadOnlyList<Entry> start = kind == QuestionKind.Finish ? scenario.Start : [];
        var done = start.Select(entry => entry.Step).ToHashSet();
        var offered = StepsFor(procedure, variant).Select(step => step.Id).Where(step => !done.Contains(step))
            .Concat(procedure.Decoys.Select(decoy => decoy.Id).Where(decoy => scenario.Show?.Contains(decoy) ?? true));
        return new(kind, scenario, written, variant, start, lots.Shuffle([.. offered]));
    }

    /// <summary>The steps that a procedure has for a kind of vehicle, as listed.</summary>
    public static IEnumerable<Step> StepsFor(Procedure procedure, VariantId? variant) => procedure.Steps.Where(step =>
        step.Variants.Count == 0 || (variant is { } kind && step.Variants.Contains(kind)));

    /// <summary>What may be shown of it before an answer is in.</summary>
    public QuestionView View(string language)
    {
        var texts = Procedure.In(language);
        return new(
            Kind,
            Scenario.Id,
            Scenario.In(language).Title,
            Scenario with { Show = null, Start = [] },
            texts.Title,
            Variant,
            [.. Start.Select(entry => new DoneView(entry.Step, Words.Of(texts, entry.Step).Do, entry.Stated))],
            [.. Offered.Select(id => Words.Of(texts, id))]);
    }

    /// <summary>Reads an answer to it, or says in a sentence why it is none.</summary>
    public Outcome<Answer, Refusal> Read(string answerJson)
    {
        if (answerJson is null || answerJson.Length > LongestAnswer) return new Refusal("The answer is too long to be read.");
        var parsed = AnswerJson.Parse(answerJson);
        if (!parsed.IsOk) return parsed.Fault;
        var answer = parsed.Value;
        if (answer.Entries.Count > MostEntries) return new Refusal($"An answer has at most {MostEntries} entries.");
        if (answer.Start.Count > 0 || answer.Entries.Any(entry => entry.Observed is not null))
            return new Refusal("An answer is a list of what is done, without a start and without real times.");
        if (answer.Entries.FirstOrDefault(entry => !Offered.Contains(entry.Step)) is { } foreign)
            return new Refusal($"“{foreign.Step}” is not among what this question offers.");
        return answer with { Start = Start };
    }
}

/// <summary>What steps and decoys say.</summary>
internal static class Words
{
    public static OfferedView Of(Procedure procedure, StepId id) =>
        procedure.Steps.FirstOrDefault(step => step.Id == id) is { } step
            ? new(id, step.Do, step.IsWait)
            : new(id, procedure.Decoys.First(decoy => decoy.Id == id).Do, false);
}
