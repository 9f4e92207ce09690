using System.Globalization;
using Training.Sequencing.Analysis;
using Training.Sequencing.Answers;
using Training.Sequencing.Drawing;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Questions;

/// <summary>Draws questions with options from a seed: the same seed, procedure and decoys give the same question.</summary>
public static class ChoiceQuestions
{
    /// <summary>Draws a question, or says why this procedure has none of its kind.</summary>
    /// <param name="kind">How it is asked.</param>
    /// <param name="orders">The right orders of the procedure on its kind of vehicle.</param>
    /// <param name="decoys">The decoys of the procedure that may appear.</param>
    /// <param name="lots">The lots.</param>
    /// <param name="start">
    /// What is done already, for <see cref="ChoiceKind.Next"/>; empty stops somewhere in a random right order. The other
    /// kinds show an order of their own.
    /// </param>
    /// <exception cref="ArgumentException">A decoy is none of the procedure's: a fault of ours.</exception>
    public static Outcome<ChoiceQuestion, Refusal> Draw(
        ChoiceKind kind, RightOrderDraw orders, IReadOnlyList<StepId> decoys, SeededDraw lots, IReadOnlyList<Entry>? start = null)
    {
        ArgumentNullException.ThrowIfNull(orders);
        ArgumentNullException.ThrowIfNull(decoys);
        ArgumentNullException.ThrowIfNull(lots);
        var known = orders.Grader.Procedure.Decoys;
        if (decoys.Any(id => known.All(decoy => decoy.Id != id)))
            throw new ArgumentException("The procedure does not have all of these decoys.", nameof(decoys));
        return kind switch
        {
            ChoiceKind.FirstFault => FirstFaultQuestion.Draw(orders, decoys, lots),
            ChoiceKind.Next => NextQuestion.Draw(orders, decoys, lots, start ?? []),
            ChoiceKind.Wait => WaitQuestion.Draw(orders, lots),
            ChoiceKind.WhatIf => WhatIfQuestion.Draw(orders, decoys, lots),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such kind."),
        };
    }

    /// <summary>The id of the option at a place from 0.</summary>
    internal static string IdAt(int place) => (place + 1).ToString(CultureInfo.InvariantCulture);
}
