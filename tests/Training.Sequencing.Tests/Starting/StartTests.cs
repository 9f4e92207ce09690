using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Tests.Starting;

/// <summary>Answers that go on from what somebody else has done.</summary>
public sealed class StartTests
{
    [Fact]
    public void The_answer_has_to_do_what_the_start_left()
    {
        var verdict = Sample.RelayTray.Grade("key-off rest:60 | lift-tray hook");
        Assert.True(verdict.Accepted);
        Assert.Equal(2, verdict.Kept);
        Assert.Equal("lift-tray hook", verdict.Nearest.Short());
    }

    [Fact]
    public void Facts_and_clock_go_on_from_the_start()
    {
        var verdict = Sample.RelayTray.Grade("key-off rest:60 | lift-tray hook");
        Assert.Equal(Sample.Seconds(65), verdict.Replay[0].StartsAt);
        Assert.Equal([Sample.Set("key", "off")], verdict.Replay[0].Facts);
    }

    [Fact]
    public void A_step_that_was_done_before_is_repeated_and_dropped()
    {
        var verdict = Sample.RelayTray.Grade("key-off | key-off rest:60 lift-tray hook");
        Assert.Equal(["repeated key-off 1"], verdict.Short());
        Assert.Equal([1], verdict.Mend.Drop);
        Assert.Equal(3, verdict.Kept);
    }

    [Fact]
    public void Another_member_of_a_group_of_which_one_was_done_before_is_an_extra_choice() =>
        Assert.Equal(["extra-choice hook 1"], Sample.RelayTray.Grade("key-off rest:60 lift-tray bench | hook").Short());

    [Fact]
    public void A_gap_that_begins_in_the_start_is_measured_across_it()
    {
        var verdict = Sample.RelayTray.Grade("key-off | rest:40 lift-tray hook");
        Assert.Equal(["too-soon rest-first 0,2"], verdict.Short());
        Assert.Equal("rest:60 lift-tray hook", verdict.Nearest.Short());
    }

    [Fact]
    public void Nothing_left_to_do_is_done_by_an_empty_answer() =>
        Assert.Equal(100m, Sample.RelayTray.Grade("key-off rest:60 lift-tray bench |").Score);

    [Theory]
    [InlineData("hose |", "not right in this job")]
    [InlineData("stow-boom |", "not right in this job")]
    [InlineData("key-off key-off |", "twice")]
    [InlineData("key-off rest:60 lift-tray hook bench |", "exclude each other")]
    [InlineData("rest:60 key-off |", "wait-after-key")]
    [InlineData("key-off rest:59 lift-tray |", "rest-first")]
    [InlineData("lift-tray |", "dead-tray")]
    [InlineData("rest:60 |", "“Turn the key off” must come before “Wait”")]
    public void An_impossible_start_is_refused(string answer, string why) =>
        Assert.Contains(why, Sample.RelayTray.Refused(Sample.Answer(answer)), StringComparison.Ordinal);

    [Fact]
    public void A_start_that_leaves_no_wait_for_a_gap_is_told_to_the_author_and_found_too_soon()
    {
        var start = Sample.Answer("key-off rest:10 |").Start;
        Assert.Contains("no wait is left", Sample.RelayTray.Grader().CheckStart(start)!.Sentence, StringComparison.Ordinal);
        var verdict = Sample.RelayTray.Grade("key-off rest:10 | lift-tray hook");
        Assert.Equal(["too-soon rest-first 0,1"], verdict.Short());
        Assert.Equal([new Wait(Sample.Id("lift-tray"), Duration.FromSeconds(50))], verdict.Mend.Waits);
    }

    [Fact]
    public void An_optional_step_that_comes_too_late_is_out_of_order_and_dropped()
    {
        var verdict = Sample.RelayTray.Grade("key-off rest:60 lift-tray | tag hook");
        Assert.Equal(["order tag-before 1,0"], verdict.Short());
        Assert.Equal([1], verdict.Mend.Drop);
        Assert.Equal("hook", verdict.Nearest.Short());
        Assert.Equal([0], verdict.Replay[0].Findings);
    }

    [Fact]
    public void A_choice_that_comes_too_late_gives_way_to_another()
    {
        var procedure = Sample.Plain("abcd").With("a", step => step with { Choice = new("g") })
            .With("c", step => step with { Choice = new("g") }).With(Sample.Order("r", "a", "b"));
        Assert.Null(procedure.Grader().CheckStart([new(Sample.Id("b"))]));
        var verdict = procedure.Grade("b | a d");
        Assert.Equal(["order r 1,0"], verdict.Short());
        Assert.Equal(2, verdict.Cost);
        Assert.True(procedure.Grader().Grade(
            Sample.Answer("b |") with { Entries = verdict.Nearest }).Value.Accepted);
        Assert.True(procedure.Grade("b | c d").Accepted);
    }

    [Fact]
    public void A_group_of_which_every_member_that_is_there_comes_too_late_is_not_missing()
    {
        var procedure = Sample.Plain("abc").With("a", step => step with { Choice = new("g") })
            .With("b", step => step with { Choice = new("g") }).With(Sample.Order("r", "a", "c"));
        var verdict = procedure.Grade("c | a a");
        Assert.Equal(["repeated a 2", "order r 1,0"], verdict.Short());
        Assert.Equal((false, 3), (verdict.Accepted, verdict.Cost));
        Assert.Equal(["missing b"], procedure.Grade("c |").Short());
    }

    [Fact]
    public void A_start_carries_no_real_times()
    {
        Assert.True(Times.TryCreate(Duration.Zero, Duration.Zero, out var times));
        var start = new Answer([]) { Start = [new(Sample.Id("key-off")) { Observed = times }] };
        Assert.Contains("no real times", Sample.RelayTray.Refused(start), StringComparison.Ordinal);
    }
}
