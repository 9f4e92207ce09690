using CsCheck;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Tests.Generating;
using Training.Sequencing.Verdicts;
using static Training.Sequencing.Tests.Sample;

namespace Training.Sequencing.Tests.Findings;

/// <summary>What an answer had the chance to get wrong.</summary>
public sealed class ChancesTests
{
    private static readonly Gen<(int Size, ulong Seed)> Cases = Gen.Select(Gen.Int[2, 14], Gen.ULong);

    [Fact]
    public void Every_finding_is_about_something_that_there_was_a_chance_for() => Cases.Sample(
        one =>
        {
            var (procedure, grader) = RandomProcedure.Of(one.Size, one.Seed);
            var answer = Any(procedure, grader, one.Seed);
            var chances = grader.Chances(answer, []).Value;
            Assert.All(
                grader.Grade(answer).Value.Findings.Select(Chance.Of).Where(broken => broken.Kind != ChanceKind.TooLate),
                broken => Assert.Contains(broken, chances));
        },
        iter: 600);

    [Fact]
    public void The_chances_of_rules_are_those_of_the_definition() => Cases.Sample(
        one =>
        {
            var (procedure, grader) = RandomProcedure.Of(one.Size, one.Seed);
            var answer = Any(procedure, grader, one.Seed);
            Assert.Equal(
                procedure.Rules.Where(rule => HasChance(procedure, grader, rule, answer)).Select(rule => rule.Id.Value).Order(),
                grader.Chances(answer, []).Value.Where(chance => chance.Kind == ChanceKind.Rule).Select(chance => chance.Subject).Order());
        },
        iter: 600);

    [Fact]
    public void Whoever_leaves_a_step_out_has_no_chance_to_break_the_rules_about_it() => Assert.Equal(
        ["left-out key-off", "left-out lift-tray", "left-out rest", "rule dead-tray", "rule park-after"],
        Of("lift-tray hook").Where(chance => !chance.StartsWith("again", StringComparison.Ordinal)
            && !chance.StartsWith("second", StringComparison.Ordinal) && chance != "left-out hook"));

    [Fact]
    public void A_group_can_be_left_out_once_and_is_named_by_its_first_member() =>
        Assert.Equal(["left-out hook"], Of("key-off rest:60 lift-tray bench").Where(chance => chance is "left-out hook" or "left-out bench"));

    [Fact]
    public void Whoever_did_it_one_way_could_do_it_the_other_way_too() =>
        Assert.Equal(["second-way hook"], Of("key-off bench").Where(chance => chance.StartsWith("second", StringComparison.Ordinal)));

    [Fact]
    public void A_decoy_can_be_taken_where_it_is_offered()
    {
        Assert.DoesNotContain("decoy hose", Of("key-off"));
        Assert.Contains("decoy hose", Of("key-off", "hose", "rest"));
        Assert.Contains("decoy hose", Of("key-off hose"));
    }

    [Fact]
    public void What_was_done_before_can_be_neither_left_out_nor_put_in_the_wrong_order()
    {
        var chances = Of("key-off rest:90 | lift-tray hook");
        Assert.DoesNotContain("left-out key-off", chances);
        Assert.DoesNotContain("rule wait-after-key", chances);
        // The time between is the answer's own.
        Assert.Contains("rule rest-first", chances);
        Assert.Contains("rule park-after", chances);
    }

    private static List<string> Of(string answer, params string[] offered) =>
        [.. RelayTray.Grader().Chances(Answer(answer), offered.Select(Id)).Value.Select(chance => $"{Code(chance.Kind)} {chance.Subject}").Order(StringComparer.Ordinal)];

    private static string Code(ChanceKind kind) => kind switch
    {
        ChanceKind.LeftOut => "left-out",
        ChanceKind.SecondWay => "second-way",
        _ => kind.ToString().ToLowerInvariant(),
    };

    private static Answer Any(Procedure procedure, Grader grader, ulong seed)
    {
        var random = new Random((int)seed);
        var answer = RandomAnswer.Of(procedure, grader, random, mayStart: seed % 3 == 0);
        return seed % 5 == 0 && answer.Start.Count == 0 ? RandomAnswer.Observed(answer, random) : answer;
    }

    private static bool HasChance(Procedure procedure, Grader grader, Rule rule, Answer answer)
    {
        var here = procedure.Steps.Where(step => step.Variants.Count == 0 || (grader.Variant is { } kind && step.Variants.Contains(kind))).ToList();
        var given = answer.Entries.Select(entry => entry.Step).ToHashSet();
        var before = answer.Start.Select(entry => entry.Step).ToHashSet();
        ChoiceId? GroupOf(StepId id) => here.Single(step => step.Id == id).Choice;
        return rule switch
        {
            StateRule state => here.Any(step => step.Id == state.Step) && given.Contains(state.Step),
            OrderRule order => (from first in order.First
                                from then in order.Then
                                where first != then && here.Any(step => step.Id == first) && here.Any(step => step.Id == then)
                                where GroupOf(first) is null || GroupOf(first) != GroupOf(then)
                                let isFirstGiven = given.Contains(first) && !before.Contains(first)
                                let isThenGiven = given.Contains(then) && !before.Contains(then)
                                where isFirstGiven ? isThenGiven || before.Contains(then)
                                    : before.Contains(first) && isThenGiven && order.AtLeast is not null
                                select first).Any(),
            _ => throw new InvalidOperationException(),
        };
    }
}
