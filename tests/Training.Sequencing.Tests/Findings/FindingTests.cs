using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Tests.Findings;

/// <summary>One example a kind of finding, on the relay tray.</summary>
public sealed class FindingTests
{
    private const string Right = "key-off rest:60 lift-tray hook";

    [Theory]
    [InlineData(Right)]
    [InlineData("key-off rest:60 lift-tray bench")]
    [InlineData("key-off tag rest:60 lift-tray hook")]
    [InlineData("key-off rest:60 tag lift-tray hook")]
    public void Every_right_order_is_accepted(string answer)
    {
        var verdict = Sample.RelayTray.Grade(answer);
        Assert.True(verdict.Accepted);
        Assert.True(verdict.Safe);
        Assert.Equal(100m, verdict.Score);
        Assert.Equal(0, verdict.Cost);
    }

    [Fact]
    public void A_step_that_was_left_out_is_missing_with_its_own_stakes()
    {
        var verdict = Sample.RelayTray.Grade("rest:60 lift-tray hook");
        Assert.Equal(["missing key-off", "state dead-tray 2"], verdict.Short());
        Assert.Equal(Sample.Burn, verdict.Findings[0].Stakes);
        Assert.False(verdict.Safe);
    }

    [Fact]
    public void A_group_of_which_nothing_was_done_is_missing_once_and_names_its_members()
    {
        var verdict = Sample.RelayTray.Grade("key-off rest:60 lift-tray");
        Assert.Equal(["missing hook"], verdict.Short());
        Assert.Equal([Sample.Id("hook"), Sample.Id("bench")], verdict.Findings[0].Steps);
        Assert.Equal([Sample.Id("hook")], verdict.Mend.Add);
    }

    [Fact]
    public void What_was_left_out_is_told_with_the_reason_of_the_gravest_rule_that_needs_it_and_keeps_its_own_stakes()
    {
        var plain = Sample.Plain("abcd").With(
            Sample.Order("lesser", "a", "b") with { Because = "Less", Otherwise = "A scratch" },
            Sample.Order("gravest", "a", "c") with { Because = "More", Otherwise = "A burn", Stakes = Sample.Burn },
            Sample.Order("as-grave", "a", "d") with { Because = "Listed later", Stakes = Sample.Burn });
        var finding = Assert.Single(plain.Grade("b c d").Findings);
        Assert.Equal(("More", "A burn", new RuleId("gravest")), (finding.Telling!.Because, finding.Telling.Otherwise, finding.Telling.SpokenBy));
        Assert.Equal(("a", Stakes.Default), (finding.Subject, finding.Stakes));
    }

    [Fact]
    public void What_brings_about_a_state_is_needed_for_the_reason_of_the_rule_that_asks_for_it() =>
        Assert.Equal(new RuleId("dead-tray"), Sample.RelayTray.Grade("rest:60 lift-tray hook").Findings[0].Telling!.SpokenBy);

    [Fact]
    public void A_step_of_which_only_its_own_rule_speaks_is_told_with_that_one()
    {
        var job = Sample.RelayTray with { Rules = [.. Sample.RelayTray.Rules.Where(rule => rule.Id != new RuleId("park-after"))] };
        Assert.Equal(new RuleId("dead-tray"), job.Grade("key-off rest:60 hook").Findings[0].Telling!.SpokenBy);
    }

    [Fact]
    public void What_no_rule_gives_a_reason_for_is_told_to_be_needed()
    {
        var telling = Assert.Single(Sample.Plain("ab").With(Sample.Order("bare", "a", "b")).Grade("b").Findings).Telling!;
        Assert.Equal((null, null), (telling.Because, telling.SpokenBy));
        Assert.NotNull(telling.Matters);
    }

    [Fact]
    public void A_group_of_which_nothing_was_done_has_the_reason_of_the_member_that_is_named()
    {
        var job = Sample.RelayTray.With(Sample.Order("boom-last", "hook", "stow-boom") with { Because = "The tag hangs on it" });
        Assert.Equal("The tag hangs on it", job.Grade("key-off rest:60 lift-tray stow-boom", "crane").Findings[0].Telling!.Because);
    }

    [Fact]
    public void A_decoy_is_found_at_its_place_and_dropped()
    {
        var verdict = Sample.RelayTray.Grade("key-off rest:60 lift-tray hose hook");
        Assert.Equal(["decoy hose 4"], verdict.Short());
        Assert.Equal([4], verdict.Mend.Drop);
        Assert.Equal(75m, verdict.Score);
    }

    [Fact]
    public void A_step_of_another_vehicle_is_a_decoy_on_this_one_and_a_step_on_its_own()
    {
        Assert.Equal(["decoy stow-boom 1"], Sample.RelayTray.Grade("stow-boom " + Right, "tipper").Short());
        Assert.True(Sample.RelayTray.Grade("stow-boom " + Right, "crane").Accepted);
        Assert.Equal(["missing stow-boom"], Sample.RelayTray.Grade(Right, "crane").Short());
    }

    [Fact]
    public void Without_a_named_vehicle_the_first_listed_counts() =>
        Assert.Equal(new VariantId("tipper"), Sample.RelayTray.Grader().Variant);

    [Fact]
    public void A_step_is_repeated_each_time_after_the_first()
    {
        var verdict = Sample.RelayTray.Grade("key-off rest:60 lift-tray key-off hook key-off");
        Assert.Equal(["repeated key-off 4", "repeated key-off 6"], verdict.Short());
        Assert.Equal([4, 6], verdict.Mend.Drop);
    }

    [Fact]
    public void Of_a_repeated_step_the_entry_that_fits_is_kept()
    {
        var right = Sample.Plain("abc").With(Sample.Order("r", "a", "b"), Sample.Order("q", "b", "c"));
        Assert.Equal([1], right.Grade("b a b c").Mend.Drop);
        Assert.Empty(right.Grade("b a b c").Mend.Moves);
    }

    [Fact]
    public void A_second_member_of_a_group_is_an_extra_choice()
    {
        var verdict = Sample.RelayTray.Grade("key-off rest:60 lift-tray bench hook");
        Assert.Equal(["extra-choice hook 5"], verdict.Short());
        Assert.Equal([5], verdict.Mend.Drop);
    }

    [Fact]
    public void A_wrong_order_names_the_rule_that_it_breaks()
    {
        var verdict = Sample.RelayTray.Grade("key-off rest:60 hook lift-tray");
        Assert.Equal(["order park-after 4,3"], verdict.Short());
        Assert.Equal([Sample.Id("lift-tray"), Sample.Id("hook")], verdict.Findings[0].Steps);
        Assert.Equal(1, verdict.Cost);
    }

    [Fact]
    public void A_gap_that_is_a_hair_too_short_is_too_soon()
    {
        Assert.Equal(["too-soon rest-first 1,3"], Sample.RelayTray.Grade("key-off rest:59.999999999 lift-tray hook").Short());
        Assert.True(Sample.RelayTray.Grade("key-off rest:60 lift-tray hook").Accepted);
    }

    [Fact]
    public void A_wait_without_a_time_counts_as_no_time() =>
        Assert.Equal(["too-soon rest-first 1,3"], Sample.RelayTray.Grade("key-off rest lift-tray hook").Short());

    [Fact]
    public void The_time_that_a_step_takes_is_not_part_of_the_gap_after_it_but_of_the_gap_over_it()
    {
        var procedure = Sample.Plain("abc").With("b", step => step with { Takes = Sample.Seconds(30) })
            .With(Sample.Order("ab", "a", "b"), Sample.Order("bc", "b", "c"),
                Sample.Order("gap", "a", "c") with { AtLeast = Sample.Seconds(30) });
        Assert.True(procedure.Grade("a b c").Accepted);
    }

    [Fact]
    public void A_step_done_in_the_wrong_state_names_the_rule()
    {
        var verdict = Sample.RelayTray.Grade("rest:60 lift-tray key-off hook");
        Assert.Contains("state dead-tray 2", verdict.Short());
        Assert.False(verdict.Safe);
    }

    [Fact]
    public void A_message_says_what_happened_why_what_can_happen_and_what_to_do()
    {
        var message = Sample.RelayTray.Grade("key-off rest:20 lift-tray hook").Findings[0].Message;
        Assert.Equal(
            "Only 20 s lay between “Turn the key off” and “Lift the tray out”. The relays are still held for a minute. "
            + "What can happen: The contacts arc. Wait at least 60 s after “Turn the key off”.",
            message);
    }

    [Theory]
    [InlineData(Harm.People, Severity.Minor, true)]
    [InlineData(Harm.People, Severity.Serious, false)]
    [InlineData(Harm.Equipment, Severity.Serious, true)]
    [InlineData(Harm.Equipment, Severity.Critical, false)]
    public void An_answer_is_unsafe_where_something_is_critical_or_harms_people_seriously(Harm harm, Severity severity, bool safe)
    {
        var procedure = Sample.Plain("ab").With(Sample.Order("r", "a", "b") with { Stakes = new(harm, severity) });
        Assert.Equal(safe, procedure.Grade("b a").Safe);
    }

    [Fact]
    public void Messages_of_every_kind_can_be_read()
    {
        string[] answers =
        [
            "rest:60 lift-tray hook", "key-off rest:60 lift-tray", "hose stow-boom", "key-off key-off",
            "hook bench", "hook lift-tray rest key-off", "key-off rest:1 lift-tray hook",
        ];
        var findings = answers.SelectMany(answer => Sample.RelayTray.Grade(answer).Findings).ToArray();
        Assert.Equal(Enum.GetValues<FindingKind>(), findings.Select(finding => finding.Kind).Distinct().Order());
        Assert.All(findings, finding => Assert.EndsWith(".", finding.Message));
    }
}
