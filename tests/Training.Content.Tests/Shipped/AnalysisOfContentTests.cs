using Training.Sequencing;
using Training.Sequencing.Analysis;
using Training.Sequencing.Drawing;
using Training.Sequencing.Procedures;
using Training.Sequencing.Questions;

namespace Training.Content.Tests.Shipped;

/// <summary>What the engine tells the authors of the shipped procedures, and the questions that can be drawn of them.</summary>
public sealed class AnalysisOfContentTests
{
    private static readonly ChoiceKind[] OfAllProcedures = [ChoiceKind.FirstFault, ChoiceKind.Next, ChoiceKind.WhatIf];

    public static TheoryData<string, string> Procedures
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (var written in ShippedContent.Library.Procedures)
            {
                if (written.Procedure.Variants.Count == 0) data.Add(written.Id.Value, "");
                foreach (var variant in written.Procedure.Variants) data.Add(written.Id.Value, variant.Value);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Procedures))]
    public void A_procedure_has_many_right_orders_that_nobody_guesses_and_no_rule_in_vain(string id, string variant)
    {
        var report = ProcedureAnalysis.Of(GraderOf(id, variant));
        Assert.True(report.Accepted.IsExact);
        Assert.True(report.Accepted.Count > 1, "With one right order the questions would test memory.");
        Assert.InRange(report.GuessChance, 0, 0.0001);
        Assert.Empty(report.RedundantRules);
        Assert.NotNull(report.Shortest);
        Assert.Empty(report.Remarks);
    }

    [Theory]
    [MemberData(nameof(Procedures))]
    public void Every_kind_of_question_can_be_drawn_of_it_from_any_seed(string id, string variant)
    {
        var orders = RightOrderDraw.Of(GraderOf(id, variant));
        StepId[] decoys = [.. orders.Grader.Procedure.Decoys.Select(decoy => decoy.Id)];
        var waits = orders.Grader.Procedure.Rules.OfType<OrderRule>().Any(rule => rule.AtLeast is not null);
        foreach (var kind in OfAllProcedures.Concat(waits ? [ChoiceKind.Wait] : []))
        {
            for (var seed = 1; seed <= 25; seed++)
            {
                var question = ChoiceQuestions.Draw(kind, orders, decoys, new SeededDraw(seed));
                Assert.True(question.IsOk, $"{kind} from {seed}");
                Assert.NotEmpty(question.Value.Right);
            }
        }
    }

    private static Grader GraderOf(string id, string variant) => Grader.For(
        ShippedContent.Library.FindProcedure(new(id))!.Procedure,
        variant.Length == 0 ? null : new VariantId(variant)).Value;
}
