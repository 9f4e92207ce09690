using Training.Sequencing.Analysis;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Tests.Analysis;

public sealed class ReportTests
{
    [Fact]
    public void A_rule_that_says_nothing_new_is_told_beside_a_circle_whose_rules_put_the_facts_in_order()
    {
        // Without “bc” nothing says whether b or d sets the switch last; without “db” it is plain.
        var procedure = Sample.Plain("abcdef").With(Sample.Switch)
            .With("b", step => step with { Sets = [Sample.Set("switch", "off")] })
            .With("d", step => step with { Sets = [Sample.Set("switch", "on")] })
            .With(Sample.Order("bc", "b", "c"), Sample.Order("cd", "c", "d"), Sample.Order("db", "d", "b"), Sample.State("off", "c", "switch", "off"),
                Sample.Order("ae", "a", "e"), Sample.Order("ef", "e", "f"), Sample.Order("af", "a", "f"));
        Assert.Equal(["off", "af"], ProcedureAnalysis.Redundant(procedure, RuleLoop.Of(procedure)).Select(rule => rule.Value));
    }

    [Fact]
    public void The_relay_tray_has_as_many_orders_as_its_choices_and_a_chance_to_guess_them()
    {
        // key-off, rest, lift-tray, one of two places to park: one order each; on the crane the boom goes anywhere.
        var tipper = ProcedureAnalysis.Of(Sample.RelayTray.Grader());
        Assert.Equal((4, 2), (tipper.Steps, tipper.Accepted.Count));
        Assert.Equal(2.0 / (2 * 24), tipper.GuessChance);
        Assert.Equal(65, tipper.Shortest!.Value.Seconds);
        Assert.Equal(10, ProcedureAnalysis.Of(Sample.RelayTray.Grader("crane")).Accepted.Count);
    }

    [Fact]
    public void The_order_of_a_chain_makes_the_rule_between_its_ends_redundant() =>
        Assert.Equal(["ends"], Redundant(Sample.Plain("abc").With(
            Sample.Order("one", "a", "b"), Sample.Order("two", "b", "c"), Sample.Order("ends", "a", "c"))));

    [Fact]
    public void A_chain_through_an_optional_step_makes_nothing_redundant() =>
        Assert.Empty(Redundant(Sample.Plain("abc").With("b", step => step with { IsOptional = true }).With(
            Sample.Order("one", "a", "b"), Sample.Order("two", "b", "c"), Sample.Order("ends", "a", "c"))));

    [Fact]
    public void Of_two_rules_that_say_the_same_both_are_named() =>
        Assert.Equal(["one", "two"], Redundant(Sample.Plain("ab").With(Sample.Order("one", "a", "b"), Sample.Order("two", "a", "b"))));

    [Fact]
    public void A_rule_with_a_time_makes_the_same_rule_without_one_redundant_but_not_the_other_way_round() =>
        Assert.Equal(["bare"], Redundant(Waiting(Sample.Order("bare", "a", "c"), Gap("timed", "a", "c", 60))));

    [Fact]
    public void A_shorter_gap_within_a_longer_one_is_redundant() =>
        Assert.Equal(["short"], Redundant(Waiting(Gap("long", "a", "c", 60), Gap("short", "a", "d", 30), Sample.Order("last", "c", "d"))));

    [Fact]
    public void Gaps_one_behind_the_other_make_their_sum_redundant()
    {
        var two = Waiting(Gap("one", "a", "c", 60), Gap("two", "c", "e", 60), Sample.Order("v1", "c", "v"), Sample.Order("v2", "v", "e"));
        Assert.Contains("sum", Redundant(two.With(Gap("sum", "a", "e", 120))));
        Assert.DoesNotContain("sum", Redundant(two.With(Gap("sum", "a", "e", 121))));
    }

    [Fact]
    public void What_a_step_takes_makes_no_gap_redundant() =>
        Assert.Empty(Redundant(Sample.Plain("abc").With("b", step => step with { Takes = Sample.Seconds(90) }).With(
            Sample.Order("one", "a", "b"), Sample.Order("two", "b", "c"), Gap("gap", "a", "c", 60))));

    [Fact]
    public void A_state_that_the_order_guarantees_is_redundant()
    {
        var procedure = Sample.Plain("abc").With(Sample.Switch).With("a", step => step with { Sets = [Sample.Set("switch", "off")] });
        Assert.Equal(["off"], Redundant(procedure.With(Sample.Order("one", "a", "b"), Sample.State("off", "b", "switch", "off"))
            .With(Sample.Order("other", "b", "c"))).Where(rule => rule == "off"));
        Assert.Empty(Redundant(procedure.With(Sample.State("off", "b", "switch", "off"))));
    }

    [Fact]
    public void Work_within_a_gap_shortens_its_wait()
    {
        var procedure = Waiting(Gap("gap", "a", "c", 60)).With("d", step => step with { Takes = Sample.Seconds(45) });
        Assert.Equal(60, Shortest(procedure));
        Assert.Equal(105, Shortest(procedure.With(Sample.Order("after", "c", "d"))));
    }

    [Fact]
    public void A_least_time_that_takes_too_long_to_find_is_left_open_and_said_so()
    {
        // Two gaps that compete for the same fillers.
        var procedure = Waiting(Gap("one", "a", "c", 60), Gap("two", "d", "e", 61), Sample.Order("v1", "d", "v"), Sample.Order("v2", "v", "e"))
            .With("a", step => step with { Takes = Sample.Seconds(7) }).With("c", step => step with { Takes = Sample.Seconds(11) })
            .With("d", step => step with { Takes = Sample.Seconds(40) }).With("e", step => step with { Takes = Sample.Seconds(13) });
        Assert.NotNull(ProcedureAnalysis.Of(procedure.Grader()).Shortest);
        var hurried = ProcedureAnalysis.Of(procedure.Grader(), limits: new(0, 2));
        Assert.Null(hurried.Shortest);
        Assert.Contains(hurried.Remarks, remark => remark.Code == RemarkCodes.LeftOpen);
    }

    [Fact]
    public void A_gap_that_nothing_can_fill_leaves_no_least_time_and_is_told_as_a_problem()
    {
        var report = ProcedureAnalysis.Of(Sample.Plain("ab").With(Gap("gap", "a", "b", 5)).Grader());
        Assert.Null(report.Shortest);
        Assert.Equal([AuthoringCodes.GapUnfillable], report.Problems.Select(problem => problem.Code));
        Assert.DoesNotContain(report.Remarks, remark => remark.Code == RemarkCodes.LeftOpen);
        Assert.Equal(1, report.Accepted.Count);
    }

    [Fact]
    public void A_gap_that_only_one_member_of_a_group_can_fill_leaves_no_least_time()
    {
        var procedure = Sample.Plain("axyb").With("x", step => step with { Choice = new("g"), Takes = Sample.Seconds(9) })
            .With("y", step => step with { Choice = new("g") })
            .With(Sample.Order("in", ["a"], ["x", "y"]), Sample.Order("out", ["x", "y"], ["b"]), Gap("gap", "a", "b", 5));
        Assert.Null(ProcedureAnalysis.Of(procedure.Grader()).Shortest);
    }

    [Fact]
    public void A_listing_that_is_not_right_is_a_problem_and_is_counted_all_the_same()
    {
        var report = ProcedureAnalysis.Of(Sample.Plain("ab").With(Sample.Order("back", "b", "a")).Grader());
        Assert.Equal([AuthoringCodes.Listing], report.Problems.Select(problem => problem.Code));
        Assert.Equal((1, 0), ((int)report.Accepted.Count, report.Shortest!.Value.Seconds));
    }

    [Fact]
    public void A_wrong_listing_does_not_hide_the_gap_that_leaves_no_least_time()
    {
        var report = ProcedureAnalysis.Of(Sample.Plain("abc").With(Gap("gap", "a", "b", 5), Sample.Order("back", "c", "a")).Grader());
        Assert.Equal([AuthoringCodes.Listing, AuthoringCodes.GapUnfillable], report.Problems.Select(problem => problem.Code));
        Assert.Null(report.Shortest);
    }

    [Fact]
    public void A_group_of_one_is_a_remark_and_its_step_is_as_any_other()
    {
        var procedure = Sample.Plain("ab").With("a", step => step with { Choice = new("g") }).With(Sample.Order("r", "a", "b"));
        Assert.Empty(ProcedureCheck.Problems(procedure));
        Assert.Equal([RemarkCodes.LonelyChoice], ProcedureAnalysis.Remarks(procedure).Select(remark => remark.Code));
        Assert.Equal([RemarkCodes.LonelyChoice], ProcedureAnalysis.Of(procedure.Grader()).Remarks.Select(remark => remark.Code));
        Assert.True(procedure.Grade("a b").Accepted);
        Assert.StartsWith("“Do a” was left out.", procedure.Grade("b").Findings[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_step_that_no_rule_touches_is_a_remark() =>
        Assert.Equal(["c"], Untouched(Sample.Plain("abc").With(Sample.Order("one", "a", "b"))));

    [Fact]
    public void A_step_that_sets_a_needed_fact_is_touched() =>
        Assert.Empty(Untouched(Sample.Plain("ab").With(Sample.Switch)
            .With("a", step => step with { Sets = [Sample.Set("switch", "off")] }).With(Sample.State("off", "b", "switch", "off"))));

    [Fact]
    public void A_step_is_untouched_only_where_it_is_so_on_every_vehicle() =>
        Assert.Empty(Untouched(Sample.RelayTray.With(Sample.Order("boom-first", "stow-boom", "lift-tray"))));

    [Fact]
    public void A_pair_without_its_reversed_pair_is_a_remark()
    {
        var there = Sample.Plain("abc").With(Sample.Order("one", "a", "b"), Sample.Order("two", "b", "c"));
        Procedure Back(params Rule[] rules) => Sample.Plain("zyx").With(rules) with
        {
            Mirror = new(there.Id, [new(Sample.Id("a"), Sample.Id("x")), new(Sample.Id("b"), Sample.Id("y")), new(Sample.Id("c"), Sample.Id("z"))]),
        };
        Assert.Empty(ProcedureAnalysis.NotMirrored(Back(Sample.Order("one", "z", "y"), Sample.Order("two", "y", "x")), there));
        var remark = Assert.Single(ProcedureAnalysis.NotMirrored(Back(Sample.Order("one", "z", "y")), there));
        Assert.Equal((RemarkCodes.NotMirrored, ProblemSubject.Mirror), (remark.Code, remark.Subject));
        Assert.Contains("“y” before “x”", remark.Sentence, StringComparison.Ordinal);
    }

    private static OrderRule Gap(string id, string first, string then, decimal seconds) =>
        Sample.Order(id, first, then) with { AtLeast = Sample.Seconds(seconds) };

    /// <summary>Steps a w c d v e, where w is a wait between a and c, and v another one.</summary>
    private static Procedure Waiting(params Rule[] rules) => Sample.Plain("awcdve")
        .With("w", step => step with { IsWait = true }).With("v", step => step with { IsWait = true })
        .With(Sample.Order("w1", "a", "w"), Sample.Order("w2", "w", "c")).With(rules);

    private static string[] Redundant(Procedure procedure) =>
        [.. ProcedureAnalysis.Of(procedure.Grader()).RedundantRules.Select(rule => rule.Value)];

    private static decimal Shortest(Procedure procedure) => ProcedureAnalysis.Of(procedure.Grader()).Shortest!.Value.Seconds;

    private static string[] Untouched(Procedure procedure) => [.. ProcedureAnalysis.Remarks(procedure)
        .Where(remark => remark.Code == RemarkCodes.UntouchedStep).Select(remark => remark.Subject.Id)];
}
