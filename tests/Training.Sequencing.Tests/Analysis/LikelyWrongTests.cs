using Training.Sequencing.Analysis;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Tests.Analysis;

public sealed class LikelyWrongTests
{
    private static Procedure Job(params Rule[] rules) => new(new("job"), "A job", 1)
    {
        Steps = [new(new("a"), "A"), new(new("b"), "B"), new(new("c"), "C")],
        Rules = rules,
    };

    private static OrderRule Before(string id, string first, string then, Severity severity = Severity.Serious) =>
        new(new(id), [new(first)], [new(then)]) { Stakes = new(Harm.Work, severity) };

    [Fact]
    public void The_two_steps_of_the_gravest_rule_are_swapped()
    {
        var wrong = LikelyWrong.Of(Grader.For(Job(Before("light", "a", "b"), Before("grave", "b", "c", Severity.Critical))).Value)!;
        Assert.Equal("grave", wrong.Rule!.Value.Value);
        Assert.Equal(["a", "c", "b"], wrong.Answer.Entries.Select(entry => entry.Step.Value));
        Assert.False(wrong.Verdict.Accepted);
    }

    [Fact]
    public void A_job_without_rules_has_no_wrong_order() => Assert.Null(LikelyWrong.Of(Grader.For(Job()).Value));

    [Fact]
    public void An_order_that_is_right_is_no_wrong_one()
    {
        var grader = Grader.For(Job(Before("r", "a", "b"))).Value;
        Assert.Null(LikelyWrong.OfGiven(grader, new([new(new("a")), new(new("b")), new(new("c"))])));
        Assert.Null(LikelyWrong.OfGiven(grader, new([new(new("nothing"))])));
        Assert.NotNull(LikelyWrong.OfGiven(grader, new([new(new("b")), new(new("a")), new(new("c"))])));
    }

    [Fact]
    public void A_circle_is_told_part_by_part()
    {
        var loop = RuleLoop.Of(Job(Before("one", "a", "b"), Before("two", "b", "c"), Before("three", "c", "a")));
        Assert.Equal(3, loop.Count);
        Assert.Equal(["one", "three", "two"], loop.Select(pair => pair.Rule.Value).Order(StringComparer.Ordinal));
        Assert.Empty(RuleLoop.Of(Job(Before("one", "a", "b"))));
    }

    [Fact]
    public void A_rule_is_idle_where_it_is_on_every_kind_of_vehicle_that_it_speaks_of()
    {
        var job = Job(Before("one", "a", "b"), Before("two", "b", "c"), Before("idle", "a", "c"));
        Assert.Equal(["idle"], ProcedureAnalysis.Redundant(job, []).Select(rule => rule.Value));
        var kinds = job with
        {
            Variants = [new("x"), new("y")],
            Steps = [job.Steps[0], job.Steps[1] with { Variants = [new("x")] }, job.Steps[2]],
        };
        Assert.Empty(ProcedureAnalysis.Redundant(kinds, []));
    }

    [Fact]
    public void Rules_in_a_circle_hide_no_idle_rule()
    {
        var job = Job(Before("one", "a", "b"), Before("again", "a", "b"), Before("back", "c", "a"), Before("forth", "a", "c"));
        Assert.Equal(["again", "one"], ProcedureAnalysis.Redundant(job, RuleLoop.Of(job)).Select(rule => rule.Value).Order(StringComparer.Ordinal));
    }
}
