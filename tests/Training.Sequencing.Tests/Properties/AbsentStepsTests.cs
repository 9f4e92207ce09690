using CsCheck;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Tests.Generating;
using Training.Sequencing.Verdicts;
using static Training.Sequencing.Tests.Sample;

namespace Training.Sequencing.Tests.Properties;

/// <summary>What is right where a step cannot be done: just what was right before and does not use it.</summary>
public sealed class AbsentStepsTests
{
    [Fact]
    public void An_order_is_right_without_a_step_just_where_it_is_right_and_does_not_use_the_step()
    {
        var compared = 0;
        var right = 0;
        Gen.Select(Gen.Int[2, 5], Gen.ULong).Sample(
            one =>
            {
                if (Case(one.Item1, one.Item2) is not { } found) return;
                foreach (var order in OrdersOf([.. found.Whole.Procedure.Steps]))
                {
                    var answer = new Answer([.. order.Select(RandomAnswer.LongEnough)]);
                    var uses = order.Any(step => found.Absent.Contains(step.Id));
                    var isRight = !uses && found.Whole.Grade(answer).Value.Accepted;
                    Assert.Equal(isRight, found.Left.Grade(Timeless(answer, found.Absent)).Value.Accepted);
                    Interlocked.Add(ref right, isRight ? 1 : 0);
                }

                Interlocked.Increment(ref compared);
            },
            iter: 400);
        Assert.True(compared > 100 && right > 200, $"{compared} procedures with {right} right orders say too little.");
    }

    [Fact]
    public void Whoever_uses_an_absent_step_is_told_at_each_place_and_no_mend_brings_it_back()
    {
        var used = 0;
        Gen.Select(Gen.Int[2, 14], Gen.ULong).Sample(
            one =>
            {
                if (Case(one.Item1, one.Item2) is not { } found) return;
                var answer = Timeless(RandomAnswer.Of(found.Whole.Procedure, found.Whole, new((int)one.Item2)), found.Absent);
                var verdict = found.Left.Grade(answer).Value;
                var places = answer.Entries.Index().Where(entry => found.Absent.Contains(entry.Item.Step)).Select(entry => entry.Index + 1).ToArray();
                Assert.Equal(places, verdict.Findings
                    .Where(finding => finding.Kind == FindingKind.Decoy && found.Absent.Contains(finding.Steps[0])).Select(finding => finding.Places[0]));
                Assert.DoesNotContain(verdict.Findings, finding => finding.Kind != FindingKind.Decoy && finding.Steps.Any(found.Absent.Contains));
                Assert.Subset(verdict.Mend.Drop.ToHashSet(), places.ToHashSet());
                Assert.DoesNotContain(verdict.Mend.Add.Concat(verdict.Mend.Moves), found.Absent.Contains);
                Assert.DoesNotContain(verdict.Nearest, entry => found.Absent.Contains(entry.Step));
                Assert.True(found.Left.Grade(new Answer(verdict.Nearest)).Value.Accepted);
                Interlocked.Add(ref used, places.Length);
            },
            iter: 1500);
        Assert.True(used > 200, $"{used} uses say too little.");
    }

    [Fact]
    public void Of_two_ways_the_one_that_is_left_must_be_done()
    {
        var left = Without("hook");
        Assert.Empty(left.Grade("key-off rest:60 lift-tray bench").Findings);
        Assert.Equal(["missing bench"], left.Grade("key-off rest:60 lift-tray").Short());
        Assert.Equal(["missing bench", "decoy hook 4"], left.Grade("key-off rest:60 lift-tray hook").Short());
    }

    [Fact]
    public void A_group_of_which_two_are_left_stays_a_choice()
    {
        var three = RelayTray with { Steps = [.. RelayTray.Steps, new(Id("floor"), "Lay the tray on the floor") { Choice = new("parking-place") }] };
        var left = three.Without([new(Id("hook"), "It is bent", "The tray falls")]);
        Assert.Empty(left.Grade("key-off rest:60 lift-tray floor").Findings);
        Assert.Equal(["extra-choice floor 5"], left.Grade("key-off rest:60 lift-tray bench floor").Short());
    }

    [Fact]
    public void What_is_absent_is_told_with_the_reasons_of_the_situation_and_the_stakes_of_the_step()
    {
        var procedure = RelayTray.With("tag", step => step with { Stakes = Burn });
        var verdict = procedure.Without([new(Id("tag"), "There is no tag in the shop", "You come back with a coat hanger")]).Grade("key-off tag rest:60 lift-tray hook");
        var finding = Assert.Single(verdict.Findings);
        Assert.Equal((FindingKind.Decoy, Burn), (finding.Kind, finding.Stakes));
        Assert.False(verdict.Safe);
        Assert.Equal("There is no tag in the shop", finding.Telling!.Because);
        Assert.Equal("You come back with a coat hanger", finding.Telling.Otherwise);
        Assert.Contains("cannot be done this time", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void No_rule_and_no_mirror_names_what_is_absent()
    {
        var procedure = RelayTray.With(State("hook-dead", "hook", "key", "off")) with { Mirror = new(new("other"), [new(Id("theirs"), Id("hook")), new(Id("more"), Id("bench"))]) };
        var left = procedure.Without([new(Id("hook"), "", ""), new(Id("tag"), "", "")]);
        Assert.Equal(["bench"], Assert.IsType<OrderRule>(left.Rules.Single(rule => rule.Id.Value == "park-after")).Then.Select(id => id.Value));
        Assert.DoesNotContain(left.Rules, rule => rule.Id.Value is "tag-after" or "tag-before" or "hook-dead");
        Assert.Equal([new MirrorPair(Id("more"), Id("bench"))], left.Mirror!.Pairs);
        Assert.Empty(ProcedureCheck.Problems(left));
    }

    [Theory]
    [InlineData("tag", "", true)]
    [InlineData("hook", "", true)]
    [InlineData("hook", "bench", false)]
    [InlineData("rest", "", false)]
    public void A_step_can_be_spared_where_it_is_optional_or_another_way_is_left(string step, string other, bool can) =>
        Assert.Equal(can, RelayTray.CanBeSpared(
            RelayTray.Steps.Single(known => known.Id.Value == step), new HashSet<StepId> { Id(step), Id(other) }, new("tipper")));

    [Fact]
    public void Another_way_that_is_for_another_vehicle_does_not_help()
    {
        var procedure = RelayTray.With("bench", step => step with { Variants = [new("crane")] });
        var hook = procedure.Steps.Single(step => step.Id.Value == "hook");
        Assert.False(procedure.CanBeSpared(hook, new HashSet<StepId> { hook.Id }, new("tipper")));
        Assert.True(procedure.CanBeSpared(hook, new HashSet<StepId> { hook.Id }, new("crane")));
    }

    [Fact]
    public void Where_nothing_is_absent_nothing_changes() => Assert.Same(RelayTray, RelayTray.Without([]));

    [Fact]
    public void A_step_that_the_procedure_does_not_have_cannot_be_absent() =>
        Assert.Throws<ArgumentException>(() => RelayTray.Without([new(Id("hose"), "", "")]));

    private static Procedure Without(string step) => RelayTray.Without([new(Id(step), "It broke", "It falls")]);

    private sealed record Found(Grader Whole, Grader Left, HashSet<StepId> Absent);

    /// <summary>A random procedure with a group and an optional step more, without some steps that can be spared; null where none can.</summary>
    private static Found? Case(int size, ulong seed)
    {
        var (procedure, grader) = RandomProcedure.Of(size, seed);
        var random = new Random((int)seed);
        procedure = WithWays(procedure, random);
        HashSet<StepId> absent = [];
        foreach (var step in procedure.StepsFor(grader.Variant))
            if (random.Next(3) > 0 && procedure.CanBeSpared(step, new HashSet<StepId>(absent) { step.Id }, grader.Variant)) absent.Add(step.Id);
        // Where every step can be spared and none is left, there is nothing to do.
        if (absent.Count == 0 || procedure.StepsFor(grader.Variant).All(step => absent.Contains(step.Id))) return null;
        var left = procedure.Without([.. absent.Select(id => new AbsentStep(id, "It is not there", "It goes wrong"))]);
        return new(Grader.For(procedure, grader.Variant).Value, Grader.For(left, grader.Variant).Value, absent);
    }

    private static Procedure WithWays(Procedure procedure, Random random)
    {
        for (var attempt = 0; attempt < 4; attempt++)
        {
            var (a, b) = (random.Next(procedure.Steps.Count), random.Next(procedure.Steps.Count));
            var changed = procedure with
            {
                Steps = [.. procedure.Steps.Select((step, s) => attempt % 2 == 0
                    ? s == a || s == b ? step with { Choice = new("ways"), IsOptional = false } : step
                    : s == a && step.Choice is null ? step with { IsOptional = true } : step)],
            };
            if (ProcedureCheck.Problems(changed).Count == 0) procedure = changed;
        }

        return procedure;
    }

    // What cannot be done is no wait any more, so nobody states how long it was.
    private static Answer Timeless(Answer answer, HashSet<StepId> absent) =>
        new([.. answer.Entries.Select(entry => absent.Contains(entry.Step) ? entry with { Stated = null } : entry)]);

    /// <summary>Every order of every choice of steps.</summary>
    private static IEnumerable<List<Step>> OrdersOf(List<Step> steps)
    {
        yield return [];
        foreach (var step in steps)
            foreach (var rest in OrdersOf([.. steps.Where(other => other != step)]))
                yield return [step, .. rest];
    }
}
