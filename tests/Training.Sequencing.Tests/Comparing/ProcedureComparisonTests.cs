using Training.Sequencing.Comparing;
using Training.Sequencing.Procedures;
using static Training.Sequencing.Tests.Sample;

namespace Training.Sequencing.Tests.Comparing;

/// <summary>What is told of two revisions, by examples.</summary>
public sealed class ProcedureComparisonTests
{
    [Fact]
    public void A_rule_that_is_gone_is_named_with_the_orders_that_it_lets_in()
    {
        // Four free steps have 24 orders; with a before b half of them.
        var before = Plain("abcd").With(Order("a-first", "a", "b"));
        var comparison = ProcedureComparison.Of(before, Plain("abcd"));
        Assert.Equal(["The rule “a-first” is gone: “Do a” before “Do b”."], Said(comparison));
        var orders = Assert.Single(comparison.Orders);
        Assert.Equal((12, 24, 12, 0), ((int)orders.Before.Count, (int)orders.After.Count, (int)orders.BecameRight.Count, (int)orders.BecameWrong.Count));
        Assert.Equal("The rule “a-first” is gone, so 12 more orders are right.", Assert.Single(orders.Effects).Said.ToString());
        Assert.Null(orders.NowWrong);
        Assert.Equal(["b", "a"], orders.NowRight!.Order.Select(id => id.Value).Where(id => id is "a" or "b"));
    }

    [Fact]
    public void A_rule_that_says_nothing_new_changes_no_order()
    {
        var before = Plain("abc").With(Order("one", "a", "b"), Order("two", "b", "c"));
        var comparison = ProcedureComparison.Of(before, before.With(Order("three", "a", "c")));
        var orders = Assert.Single(comparison.Orders);
        Assert.Contains("changes no order by itself", Assert.Single(orders.Effects).Said.ToString(), StringComparison.Ordinal);
        Assert.Equal("The right orders of the 3 steps that both have are the same as before: 1.", Assert.Single(orders.Said).ToString());
    }

    [Fact]
    public void A_rule_that_was_turned_round_makes_right_wrong_and_wrong_right()
    {
        var comparison = ProcedureComparison.Of(Plain("ab").With(Order("r", "a", "b")), Plain("ab").With(Order("r", "b", "a")));
        Assert.Equal(["The rule “r” says now: “Do b” before “Do a”. Before, it said: “Do a” before “Do b”."], Said(comparison));
        var orders = Assert.Single(comparison.Orders);
        Assert.Equal(["b", "a"], orders.NowRight!.Order.Select(id => id.Value));
        Assert.Equal(["a", "b"], orders.NowWrong!.Order.Select(id => id.Value));
        Assert.Equal("r", orders.NowWrong.Why.Subject);
    }

    [Fact]
    public void A_time_that_is_no_longer_asked_for_changes_no_order_and_is_told()
    {
        var comparison = ProcedureComparison.Of(RelayTray, RelayTray with
        {
            Rules = [.. RelayTray.Rules.Select(rule => rule is OrderRule { AtLeast: not null } timed ? timed with { AtLeast = null } : rule)],
        });
        Assert.Equal(["The rule “rest-first” no longer asks for a time between; it asked for at least 60 s."], Said(comparison));
        Assert.All(comparison.Orders, orders => Assert.Equal(0, (int)orders.BecameRight.Count));
    }

    [Fact]
    public void Words_that_changed_are_given_before_and_after()
    {
        var change = Assert.Single(ProcedureComparison.Of(Plain("ab"), Plain("ab").With("b", step => step with { Do = "Do it" })).Changes);
        Assert.Equal(new WordsChange("Do b", "Do it"), change.Words);
        Assert.Equal(new ProblemSubject(SubjectKind.Step, "b"), change.Subject);
    }

    [Fact]
    public void Graver_stakes_are_told_in_the_words_of_the_findings()
    {
        var said = Said(ProcedureComparison.Of(
            Plain("ab").With(Order("r", "a", "b")), Plain("ab").With(Order("r", "a", "b") with { Stakes = Burn })));
        Assert.Equal(["What comes of breaking the rule “r”: can kill or maim. Before, it was: work to do again."], said);
    }

    [Fact]
    public void The_order_that_became_wrong_is_shown_with_the_gravest_rule_that_it_breaks()
    {
        var comparison = ProcedureComparison.Of(
            Plain("abcd"), Plain("abcd").With(Order("mild", "a", "b"), Order("grave", "c", "d") with { Stakes = Burn }));
        Assert.Equal("grave", Assert.Single(comparison.Orders).NowWrong!.Why.Subject);
    }

    [Fact]
    public void Each_kind_of_vehicle_is_counted_by_itself()
    {
        var comparison = ProcedureComparison.Of(RelayTray, RelayTray.With(Order("boom", ["lift-tray"], ["stow-boom"])));
        Assert.Equal(["tipper", "crane"], comparison.Orders.Select(orders => orders.Variant!.Value.Value));
        Assert.Empty(comparison.Orders[0].Effects);
        Assert.Null(comparison.Orders[0].NowWrong);
        Assert.NotNull(comparison.Orders[1].NowWrong);
    }

    [Fact]
    public void A_procedure_that_cannot_be_graded_by_is_compared_by_its_words_alone()
    {
        var loop = Plain("ab").With(Order("r", "a", "b"), Order("s", "b", "a"));
        var comparison = ProcedureComparison.Of(Plain("ab"), loop);
        Assert.Equal(2, comparison.Changes.Count);
        Assert.Empty(comparison.Orders);
    }

    [Fact]
    public void Of_more_than_two_hundred_steps_the_changes_are_told_and_the_orders_are_not()
    {
        var large = new Procedure(new("large"), "Large", 1) { Steps = [.. Enumerable.Range(0, 201).Select(i => new Step(new($"s{i}"), $"Do {i}"))] };
        var comparison = ProcedureComparison.Of(large, large.With(Order("r", "s0", "s1")));
        Assert.Single(comparison.Changes);
        Assert.Empty(comparison.Orders);
    }

    [Fact]
    public void Where_there_are_too_many_orders_to_count_an_estimate_says_that_it_is_one()
    {
        // Without a rule 20 steps have 20! orders; with one rule half of them. Crowns keep the counting from falling apart.
        var ids = "abcdefghijklmnopqrst";
        var crown = Enumerable.Range(0, 10).SelectMany(i => Enumerable.Range(0, 10).Where(j => j != i && (i * 7 + j * 3) % 4 > 0)
            .Select(j => (Rule)Order($"r{i}-{j}", ids[i].ToString(), ids[10 + j].ToString()))).ToArray();
        var before = Plain(ids).With(crown);
        var exact = Assert.Single(ProcedureComparison.Of(before, before.With(Order("x", "a", "b"))).Orders);
        var rough = Assert.Single(ProcedureComparison.Of(before, before.With(Order("x", "a", "b")), new(10, 2_000)).Orders);
        Assert.True(exact.IsExact);
        Assert.False(rough.IsExact);
        Assert.Contains("so this is an estimate", rough.Said[0].ToString(), StringComparison.Ordinal);
        Assert.InRange(exact.BecameWrong.Count, rough.BecameWrong.Low * 9 / 10, rough.BecameWrong.High * 11 / 10);
        Assert.True(rough.BecameRight.IsExact, "That nothing became right is known without counting.");
    }

    private static string[] Said(ProcedureComparison comparison) => [.. comparison.Changes.Select(change => change.Said.ToString())];
}
