using CsCheck;
using Training.Sequencing.Ordering;
using Training.Sequencing.Procedures;
using Training.Sequencing.Tests.Generating;

namespace Training.Sequencing.Tests.Ordering;

/// <summary>The waits that a line plan is drawn from, held to a brute search over all right orders.</summary>
public sealed class StepOrderTests
{
    [Fact]
    public void Without_optional_steps_the_waits_imply_just_what_holds_in_every_right_order() =>
        ForProcedures((procedure, grader, order) =>
        {
            var right = RightOrders.For(procedure, grader.Variant, []);
            var mine = right.Steps.Select(step => step.Id).ToHashSet();
            Assert.Equal(AlwaysBefore(right), Implied(order.Waits.Where(wait => mine.Contains(wait.First) && mine.Contains(wait.Then))));
        });

    [Fact]
    public void With_every_optional_step_the_waits_imply_just_what_holds_in_every_right_order() =>
        ForProcedures((procedure, grader, order) =>
        {
            var right = RightOrders.For(procedure, grader.Variant, order.Steps);
            Assert.Equal(right.Steps.Select(step => step.Id), order.Steps);
            Assert.Equal(AlwaysBefore(right), Implied(order.Waits));
        });

    [Fact]
    public void No_wait_between_steps_that_are_not_optional_follows_from_the_others() =>
        ForProcedures((procedure, _, order) =>
        {
            var optional = procedure.Steps.Where(step => step.IsOptional && step.Choice is null).Select(step => step.Id).ToHashSet();
            var waits = order.Waits.Where(wait => !optional.Contains(wait.First) && !optional.Contains(wait.Then)).ToArray();
            foreach (var wait in waits)
                Assert.DoesNotContain((wait.First, wait.Then), Implied(waits.Where(other => other != wait)));
        });

    [Fact]
    public void A_rule_that_others_imply_draws_no_line_of_its_own()
    {
        var procedure = new Procedure(new("p"), "P", 1)
        {
            Steps = [new(new("a"), "A"), new(new("b"), "B"), new(new("c"), "C")],
            Rules = [Rule("ab", "a", "b"), Rule("bc", "b", "c"), Rule("ac", "a", "c")],
        };
        Assert.Equal([new(new("a"), new("b")), new(new("b"), new("c"))], Grader.For(procedure).Value.Order().Waits);
    }

    [Fact]
    public void A_wait_that_also_runs_through_an_optional_step_keeps_its_own_line()
    {
        var procedure = new Procedure(new("p"), "P", 1)
        {
            Steps = [new(new("a"), "A"), new(new("b"), "B") { IsOptional = true }, new(new("c"), "C")],
            Rules = [Rule("ab", "a", "b"), Rule("bc", "b", "c"), Rule("ac", "a", "c")],
        };
        Assert.Contains(new StepWait(new("a"), new("c")), Grader.For(procedure).Value.Order().Waits);
    }

    private static OrderRule Rule(string id, string first, string then) => new(new(id), [new(first)], [new(then)]);

    private static void ForProcedures(Action<Procedure, Grader, StepOrder> law) =>
        Gen.Select(Gen.Int[1, 7], Gen.ULong).Sample(
            one =>
            {
                var (procedure, grader) = RandomProcedure.Of(one.Item1, one.Item2);
                law(procedure, grader, grader.Order());
            },
            iter: 400);

    private static HashSet<(StepId, StepId)> AlwaysBefore(RightOrders right)
    {
        HashSet<(int, int)>? always = null;
        foreach (var order in right.All())
        {
            var here = order.SelectMany((first, place) => order.Skip(place + 1).Select(then => (first, then)));
            if (always is null) always = [.. here];
            else always.IntersectWith(here);
        }

        return [.. always!.Select(pair => (right.Steps[pair.Item1].Id, right.Steps[pair.Item2].Id))];
    }

    private static HashSet<(StepId, StepId)> Implied(IEnumerable<StepWait> waits)
    {
        HashSet<(StepId, StepId)> pairs = [.. waits.Select(wait => (wait.First, wait.Then))];
        while (true)
        {
            var longer = pairs.SelectMany(one => pairs.Where(next => next.Item1 == one.Item2), (one, next) => (one.Item1, next.Item2)).ToList();
            var before = pairs.Count;
            pairs.UnionWith(longer);
            if (pairs.Count == before) return pairs;
        }
    }
}
