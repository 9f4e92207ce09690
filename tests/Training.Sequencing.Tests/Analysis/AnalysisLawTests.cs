using CsCheck;
using Training.Sequencing.Analysis;
using Training.Sequencing.Answers;
using Training.Sequencing.Authoring;
using Training.Sequencing.Procedures;
using Training.Sequencing.Tests.Generating;

namespace Training.Sequencing.Tests.Analysis;

/// <summary>What an analysis says of random procedures against what looking through all right orders says.</summary>
public sealed class AnalysisLawTests
{
    private static readonly Gen<(Procedure Procedure, Grader Grader, int Seed)> Small =
        from size in Gen.Int[1, 7]
        from seed in Gen.ULong
        from draws in Gen.Int
        select (RandomProcedure.Of(size, seed).Procedure, RandomProcedure.Of(size, seed).Grader, draws);

    [Fact]
    public void The_number_of_right_orders_is_that_of_all_choices_together() => Small.Sample(one =>
    {
        var counted = Combinations(one.Procedure, one.Grader.Variant)
            .Sum(given => RightOrders.For(one.Procedure, one.Grader.Variant, given).All().Count());
        var report = ProcedureAnalysis.Of(one.Grader);
        Assert.True(report.Accepted.IsExact);
        Assert.Equal(counted, report.Accepted.Count);
        Assert.InRange(report.GuessChance, double.Epsilon, 1);
    }, iter: 400);

    [Fact]
    public void The_least_time_is_the_shortest_of_all_right_orders_with_least_waits() => Small.Sample(one =>
    {
        var least = decimal.MaxValue;
        foreach (var given in Combinations(one.Procedure, one.Grader.Variant))
        {
            var orders = RightOrders.For(one.Procedure, one.Grader.Variant, given);
            foreach (var order in orders.All())
            {
                var mended = one.Grader.Grade(new([.. order.Select(step => new Entry(orders.Steps[step].Id))])).Value.Nearest;
                var replay = one.Grader.Grade(new(mended)).Value.Replay;
                least = Math.Min(least, replay.Count == 0 ? 0 : replay[^1].EndsAt.Seconds);
            }
        }

        Assert.Equal(least, ProcedureAnalysis.Of(one.Grader).Shortest!.Value.Seconds);
        Assert.Equal(least, SearchedTime(one.Grader));
    }, iter: 400);

    [Fact]
    public void Whoever_breaks_a_redundant_rule_breaks_another_one_too() => Small.Sample(one =>
    {
        var redundant = ProcedureAnalysis.Of(one.Grader).RedundantRules.Select(rule => rule.Value).ToHashSet();
        var random = new Random(one.Seed);
        for (var a = 0; a < 20; a++)
        {
            var answer = RandomAnswer.Of(one.Procedure, one.Grader, random);
            if (a % 2 == 1) answer = RandomAnswer.Observed(answer, random);
            var broken = one.Grader.Grade(answer).Value.Findings.Select(finding => finding.Subject).Distinct().ToArray();
            Assert.False(broken.Length == 1 && redundant.Contains(broken[0]), $"{broken.FirstOrDefault()} is needed.");
        }
    }, iter: 400);

    [Fact]
    public void A_rule_of_order_without_which_no_more_orders_are_right_is_redundant() => Small.Sample(one =>
    {
        var redundant = ProcedureAnalysis.Of(one.Grader).RedundantRules;
        foreach (var rule in one.Procedure.Rules.OfType<OrderRule>().Where(rule => rule.AtLeast is null))
        {
            var without = one.Procedure with { Rules = [.. one.Procedure.Rules.Where(other => other != rule)] };
            if (!Grader.For(without, one.Grader.Variant).IsOk || !Touches(one.Procedure, one.Grader.Variant, rule)) continue;
            Assert.Equal(
                StepSets(one.Procedure, one.Grader.Variant).All(given =>
                    RightOrders.For(one.Procedure, one.Grader.Variant, given).All().Count()
                    == RightOrders.For(without, one.Grader.Variant, given).All().Count()),
                redundant.Contains(rule.Id));
        }
    }, iter: 200);

    private static decimal? SearchedTime(Grader grader)
    {
        var room = 1_000_000L;
        return Choices.Of(grader.Layout, Choices.Least(grader.Layout)).Min(steps =>
            TimeSearch.Of(new WorkCourse(grader.Layout, grader.Plans.For(steps)), ref room));
    }

    private static bool Touches(Procedure procedure, VariantId? variant, OrderRule rule)
    {
        var mine = procedure.Steps.Where(step => Exists(step, variant)).ToDictionary(step => step.Id);
        return rule.First.Where(mine.ContainsKey).Any(first => rule.Then.Where(mine.ContainsKey).Any(then =>
            mine[first].Choice is not { } choice || mine[then].Choice != choice));
    }

    /// <summary>One member of each one-of group, in every combination.</summary>
    private static StepId[][] Combinations(Procedure procedure, VariantId? variant) => procedure.Steps
        .Where(step => step.Choice is not null && Exists(step, variant))
        .GroupBy(step => step.Choice)
        .Aggregate(new StepId[][] { [] }, (all, group) => [.. all.SelectMany(one => group.Select(step => (StepId[])[.. one, step.Id]))]);

    /// <summary>Every combination with every choice of optional steps.</summary>
    private static StepId[][] StepSets(Procedure procedure, VariantId? variant) => procedure.Steps
        .Where(step => step.IsOptional && Exists(step, variant))
        .Aggregate(Combinations(procedure, variant), (all, step) => [.. all, .. all.Select(one => (StepId[])[.. one, step.Id])]);

    private static bool Exists(Step step, VariantId? variant) =>
        step.Variants.Count == 0 || variant is { } one && step.Variants.Contains(one);
}
