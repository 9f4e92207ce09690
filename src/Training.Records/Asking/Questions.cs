using Training.Content.Scenarios;
using Training.Records.Publishing;
using Training.Sequencing;
using Training.Sequencing.Answers;
using Training.Sequencing.Drawing;

namespace Training.Records.Asking;

/// <summary>Draws questions about scenarios from lots. One for the whole process.</summary>
internal sealed class Questions(Graders graders)
{
    /// <summary>
    /// Draws a question. An order of work offers the steps for the kind of vehicle that nobody has done yet and the
    /// scenario's decoys, shuffled; what cannot be done in the scenario is one of these.
    /// </summary>
    public async ValueTask<Outcome<Question, Refusal>> Draw(
        PublishedLibrary library, ScenarioId id, QuestionKind kind, SeededDraw lots)
    {
        if (library.Content.FindScenario(id) is not { } scenario) return Refused.NotFound;
        if (!scenario.Kinds.Contains(kind)) return new Refusal("That scenario is not asked in that way.");
        if (kind == QuestionKind.Reading) return new AskedReading(scenario, scenario.Reading!, scenario.Reading!.Question.Draw(lots.Next));
        var written = library.Content.JobOf(scenario)!;
        var grader = await graders.For(written.File.Hash, scenario.Variant, scenario.Absent);
        if (kind.AsChoice() is { } choice)
        {
            var drawn = scenario.Draw(choice, await graders.OrdersFor(written.File.Hash, scenario.Variant, scenario.Absent), lots);
            return drawn.IsOk ? new AskedChoice(kind, scenario, written, grader, drawn.Value) : drawn.Fault;
        }

        IReadOnlyList<Entry> start = kind == QuestionKind.Finish ? scenario.Start : [];
        var done = start.Select(entry => entry.Step).ToHashSet();
        var offered = written.Procedure.StepsFor(grader.Variant).Select(step => step.Id).Where(step => !done.Contains(step))
            .Concat(scenario.DecoysOf(written.Procedure));
        return new AskedOrder(kind, scenario, written, grader, start, lots.Shuffle([.. offered]));
    }
}
