using Training.Sequencing;
using Training.Sequencing.Analysis;
using Training.Sequencing.Drawing;
using Training.Sequencing.Procedures;
using Training.Sequencing.Questions;

namespace Training.Content.Scenarios;

/// <summary>How a scenario is asked with options: the one way for the check of an author's file and for what is put.</summary>
public static class ScenarioQuestions
{
    // A drawn order may have no place for the fault or the stop that a question needs; then other lots are drawn.
    private const int MostDraws = 16;

    /// <summary>The kind of question with options that is meant, or null where it is none.</summary>
    /// <param name="kind">How a question is put.</param>
    public static ChoiceKind? AsChoice(this QuestionKind kind) => kind switch
    {
        QuestionKind.FirstFault => ChoiceKind.FirstFault,
        QuestionKind.Next => ChoiceKind.Next,
        QuestionKind.Wait => ChoiceKind.Wait,
        QuestionKind.WhatIf => ChoiceKind.WhatIf,
        _ => null,
    };

    /// <summary>The decoys of a procedure that a scenario offers, as listed; a step that cannot be done in it is always among them.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="procedure">Its procedure, as it is judged by in the scenario (<see cref="ScenarioJobs"/>).</param>
    public static IReadOnlyList<StepId> DecoysOf(this Scenario scenario, Procedure procedure)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(procedure);
        return [.. procedure.Decoys.Where(decoy => decoy.IsAbsentStep || (scenario.Show?.Contains(decoy.Id) ?? true)).Select(decoy => decoy.Id)];
    }

    /// <summary>
    /// Draws a question with options, or says why there is none. What may be done next is asked at the scenario's own
    /// start where it has one; the other kinds show an order of their own.
    /// </summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="kind">How it is asked.</param>
    /// <param name="orders">The right orders of its procedure, as it is judged by in the scenario (<see cref="ScenarioJobs"/>), on its kind of vehicle.</param>
    /// <param name="lots">The lots.</param>
    public static Outcome<ChoiceQuestion, Refusal> Draw(
        this Scenario scenario, ChoiceKind kind, RightOrderDraw orders, SeededDraw lots)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(orders);
        ArgumentNullException.ThrowIfNull(lots);
        var decoys = scenario.DecoysOf(orders.Grader.Procedure);
        var question = ChoiceQuestions.Draw(kind, orders, decoys, lots, scenario.Start);
        for (var draw = 1; draw < MostDraws && !question.IsOk; draw++)
            question = ChoiceQuestions.Draw(kind, orders, decoys, lots.For(draw), scenario.Start);
        return question;
    }
}
