using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Tests.Authoring;

/// <summary>One procedure a code of what an author must mend.</summary>
public sealed class AuthoringTests
{
    private static readonly Fact Switch = Sample.Switch;

    public static TheoryData<string, Procedure> Faulty => new()
    {
        { AuthoringCodes.EmptyText, Sample.Plain("ab").With("a", step => step with { Do = " " }) },
        { AuthoringCodes.EmptyText, Sample.Plain("ab").With("a", step => step with { Id = default }) },
        { AuthoringCodes.DuplicateId, Sample.Plain("aa") },
        { AuthoringCodes.DuplicateId, Sample.Plain("ab") with { Decoys = [new(Sample.Id("a"), "Never")] } },
        { AuthoringCodes.DuplicateId, Sample.Plain("abc").With(Sample.Order("r", "a", "b"), Sample.Order("r", "b", "c")) },
        { AuthoringCodes.DuplicateId, Sample.Plain("a").With(Switch, Switch) },
        { AuthoringCodes.DuplicateId, Sample.Plain("a").With(Switch with { Values = [new("on"), new("on")] }) },
        { AuthoringCodes.DuplicateId, Sample.Plain("a") with { Variants = [new("v"), new("v")] } },
        { AuthoringCodes.EmptyList, Sample.Plain("ab").With(Sample.Order("r", [], ["a"])) },
        { AuthoringCodes.EmptyList, Sample.Plain("ab").With(Sample.Order("r", ["a"], [])) },
        { AuthoringCodes.EmptyList, Sample.Plain("a").With(new StateRule(new("r"), Sample.Id("a"), [])) },
        { AuthoringCodes.EmptyList, Sample.Plain("a").With(Switch with { Values = [] }) },
        { AuthoringCodes.NamedTwice, Sample.Plain("ab").With(Sample.Order("r", ["a", "a"], ["b"])) },
        { AuthoringCodes.NamedTwice, Sample.Plain("a").With(Switch).With("a", step => step with
            { Sets = [Sample.Set("switch", "on"), Sample.Set("switch", "off")] }) },
        { AuthoringCodes.UnknownStep, Sample.Plain("a").With(Sample.Order("r", "a", "x")) },
        { AuthoringCodes.UnknownStep, Sample.Plain("a").With(Switch).With(Sample.State("r", "x", "switch", "on")) },
        { AuthoringCodes.RuleOnDecoy, Sample.Plain("a").With(Sample.Order("r", "a", "x")) with
            { Decoys = [new(Sample.Id("x"), "Never")] } },
        { AuthoringCodes.UnknownFact, Sample.Plain("a").With(Sample.State("r", "a", "switch", "on")) },
        { AuthoringCodes.UnknownValue, Sample.Plain("a").With(Switch).With(Sample.State("r", "a", "switch", "up")) },
        { AuthoringCodes.UnknownVariant, Sample.Plain("ab").With("a", step => step with { Variants = [new("v")] }) },
        { AuthoringCodes.WaitTakesTime, Sample.Plain("a").With("a", step => step with
            { IsWait = true, Takes = Sample.Seconds(1) }) },
        { AuthoringCodes.OptionalChoice, Sample.Plain("ab").With("a", step => step with
            { Choice = new("g"), IsOptional = true }).With("b", step => step with { Choice = new("g") }) },
        { AuthoringCodes.NoSteps, Sample.Plain("") },
        { AuthoringCodes.NoSteps, Sample.Plain("a").With("a", step => step with { Variants = [new("v")] }) with
            { Variants = [new("v"), new("w")] } },
        { AuthoringCodes.TooMuch, Sample.Plain(new string('a', 5_001)) },
        { AuthoringCodes.SetterNotRequired, Switched().With("b", step => step with { IsOptional = true }) },
        { AuthoringCodes.SettersUnordered, Switched().With("a", step => step with { Sets = [Sample.Set("switch", "on")] }) },
        { AuthoringCodes.StateOpen, Sample.Plain("abcd").With(Switch)
            .With("b", step => step with { Sets = [Sample.Set("switch", "off")] })
            .With("c", step => step with { Sets = [Sample.Set("switch", "on")] })
            .With(Sample.Order("bc", "b", "c"), Sample.State("r", "d", "switch", "on")) },
        { AuthoringCodes.StateImpossible, Sample.Plain("ab").With(Switch).With(Sample.State("r", "b", "switch", "off")) },
        { AuthoringCodes.Loop, Sample.Plain("abc").With(
            Sample.Order("r1", "a", "b"), Sample.Order("r2", "b", "c"), Sample.Order("r3", "c", "a")) },
        { AuthoringCodes.Loop, Sample.Plain("a").With(Sample.Order("r", "a", "a")) },
        { AuthoringCodes.Loop, Sample.Plain("ab").With("a", step => step with { Choice = new("g") })
            .With("b", step => step with { Choice = new("g") }).With(Sample.Order("r", ["a", "b"], ["a", "b"])) },
        { AuthoringCodes.Listing, Sample.Plain("ab").With(Sample.Order("r", "b", "a")) },
        { AuthoringCodes.GapUnfillable, Sample.Plain("ab").With(
            Sample.Order("r", "a", "b") with { AtLeast = Sample.Seconds(1) }) },
        { AuthoringCodes.GapUnfillable, Sample.Plain("awb")
            .With("w", step => step with { IsWait = true, IsOptional = true })
            .With(Sample.Order("aw", "a", "w"), Sample.Order("wb", "w", "b"),
                Sample.Order("r", "a", "b") with { AtLeast = Sample.Seconds(1) }) },
    };

    [Theory]
    [MemberData(nameof(Faulty))]
    public void What_an_author_must_mend_has_its_code(string code, Procedure procedure)
    {
        var problems = ProcedureCheck.Problems(procedure);
        Assert.Contains(code, problems.Select(problem => problem.Code));
        Assert.All(problems, problem => Assert.EndsWith(".", problem.Sentence));
    }

    [Fact]
    public void A_gap_that_nothing_can_fill_does_not_stop_the_grader_and_still_costs_a_mend()
    {
        var verdict = Faulty.Select(row => row.Data).First(row => row.Item1 == AuthoringCodes.GapUnfillable).Item2.Grade("a b");
        Assert.Equal(FindingKind.TooSoon, Assert.Single(verdict.Findings).Kind);
        Assert.Equal(1, verdict.Cost);
    }

    [Fact]
    public void A_listing_that_is_not_right_does_not_stop_the_grader()
    {
        var procedure = Sample.Plain("ab").With(Sample.Order("r", "b", "a"));
        Assert.True(procedure.Grade("b a").Accepted);
        Assert.False(procedure.Grade("a b").Accepted);
    }

    [Fact]
    public void Every_code_has_an_example()
    {
        var codes = typeof(AuthoringCodes).GetFields().Select(field => (string)field.GetValue(null)!).Order();
        Assert.Equal(codes, Faulty.Select(row => row.Data.Item1).Distinct().Order());
    }

    [Fact]
    public void A_sound_procedure_has_no_problems() => Assert.Empty(ProcedureCheck.Problems(Sample.RelayTray));

    [Fact]
    public void All_problems_are_told_at_once()
    {
        var procedure = Sample.Plain("a").With(
            Sample.Order("r1", "a", "x"), Sample.Order("r2", "y", "a"), Sample.State("r3", "a", "f", "v"));
        Assert.Equal(3, ProcedureCheck.Problems(procedure).Count);
    }

    [Fact]
    public void The_shortest_of_two_loops_is_printed_with_its_rules()
    {
        var procedure = Sample.Plain("abcd").With(
            Sample.Order("r1", "a", "b"), Sample.Order("r2", "b", "c"), Sample.Order("r3", "c", "a"),
            Sample.Order("r4", "c", "d"), Sample.Order("r5", "d", "c"));
        var loop = Assert.Single(ProcedureCheck.Problems(procedure));
        Assert.Equal(
            "The rules run in a circle: “c” before “d” (rule “r4”), “d” before “c” (rule “r5”). Take one of them back.",
            loop.Sentence);
    }

    [Fact]
    public void A_loop_on_one_vehicle_alone_is_told_by_the_check_but_does_not_keep_the_other_from_being_graded()
    {
        var rules = Sample.Plain("abc").With("c", step => step with { Variants = [new("w")] })
            .With(Sample.Order("r1", "a", "c"), Sample.Order("r2", "c", "a"));
        var procedure = rules with { Variants = [new("v"), new("w")] };
        Assert.Equal([AuthoringCodes.Loop], ProcedureCheck.Problems(procedure).Select(problem => problem.Code));
        Assert.True(Grader.For(procedure, new("v")).IsOk);
        Assert.False(Grader.For(procedure, new("w")).IsOk);
        Assert.Equal(AuthoringCodes.UnknownVariant, Grader.For(procedure, new("x")).Fault.Problems[0].Code);
    }

    [Fact]
    public void An_open_state_names_the_steps_that_a_rule_must_be_put_between()
    {
        var open = (Procedure)Faulty.Single(row => row.Data.Item1 == AuthoringCodes.StateOpen).Data.Item2;
        var problem = Assert.Single(ProcedureCheck.Problems(open));
        Assert.Contains("before “b”, and again after “c”", problem.Sentence, StringComparison.Ordinal);
        Assert.Equal(new ProblemSubject(SubjectKind.Rule, "r"), problem.Subject);
        Assert.Empty(ProcedureCheck.Problems(open.With(Sample.Order("now", "c", "d"))));
        Assert.Empty(ProcedureCheck.Problems(open.With(Sample.Order("now", "b", "d"))));
    }

    [Fact]
    public void A_state_that_only_an_optional_step_settles_is_open()
    {
        var procedure = Sample.Plain("bcod").With(Switch)
            .With("b", step => step with { Sets = [Sample.Set("switch", "off")] })
            .With("c", step => step with { Sets = [Sample.Set("switch", "on")] })
            .With(Sample.Order("bc", "b", "c"), Sample.State("r", "d", "switch", "on"),
                Sample.Order("co", "c", "o"), Sample.Order("od", "o", "d"));
        Assert.Empty(ProcedureCheck.Problems(procedure));
        Assert.Equal(AuthoringCodes.StateOpen,
            ProcedureCheck.Problems(procedure.With("o", step => step with { IsOptional = true }))[0].Code);
    }

    [Fact]
    public void A_state_that_every_choice_settles_in_its_own_way_is_settled()
    {
        var procedure = Sample.Plain("bcopd").With(Switch)
            .With("b", step => step with { Sets = [Sample.Set("switch", "off")] })
            .With("c", step => step with { Sets = [Sample.Set("switch", "on")] })
            .With("o", step => step with { Choice = new("g") })
            .With("p", step => step with { Choice = new("g") })
            .With(Sample.Order("bc", "b", "c"), Sample.State("r", "d", "switch", "on"),
                Sample.Order("c-first", ["c"], ["o", "p"]), Sample.Order("d-last", ["o", "p"], ["d"]));
        Assert.Empty(ProcedureCheck.Problems(procedure));
        Assert.True(procedure.Grade("b c p d").Accepted);
    }

    [Fact]
    public void A_need_that_holds_over_a_setter_of_the_same_value_is_settled()
    {
        var procedure = Sample.Plain("abcd").With(Switch)
            .With("a", step => step with { Sets = [Sample.Set("switch", "off")] })
            .With("b", step => step with { Sets = [Sample.Set("switch", "off")] })
            .With(Sample.Order("ab", "a", "b"), Sample.State("r", "c", "switch", "off"));
        Assert.Empty(ProcedureCheck.Problems(procedure));
        Assert.True(procedure.Grade("a c b d").Accepted);
        Assert.True(procedure.Grade("a b c d").Accepted);
        Assert.False(procedure.Grade("c a b d").Accepted);
    }

    private static Procedure Switched() => Sample.Plain("abc").With(Switch)
        .With("b", step => step with { Sets = [Sample.Set("switch", "off")] })
        .With(Sample.State("r", "c", "switch", "off"));
}
