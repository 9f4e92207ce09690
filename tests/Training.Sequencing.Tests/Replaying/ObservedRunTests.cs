using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Tests.Replaying;

/// <summary>Runs seen at the vehicle, with real times.</summary>
public sealed class ObservedRunTests
{
    private static Verdict Grade(string run) => Sample.RelayTray.Grader().Grade(Sample.Observed(run)).Value;

    [Fact]
    public void Gaps_are_measured_from_the_real_times()
    {
        Assert.True(Grade("key-off:0-10 rest:10-70 lift-tray:70-80 hook:80-81").Accepted);
        Assert.Equal(
            ["too-soon rest-first 1,3"],
            Grade("key-off:0-10 rest:10-60 lift-tray:69.5-80 hook:80-81").Short());
    }

    [Fact]
    public void A_wait_that_was_too_short_is_told_with_its_length()
    {
        var verdict = Grade("key-off:0-10 rest:10-50 lift-tray:55-80 hook:80-81");
        Assert.Equal([new Wait(Sample.Id("rest"), Sample.Seconds(55))], verdict.Mend.Waits);
        Assert.Equal("key-off rest lift-tray hook", verdict.Nearest.Short());
    }

    [Fact]
    public void Without_a_wait_inside_the_gap_the_later_step_is_to_be_held_off()
    {
        var procedure = Sample.Plain("abc").With("b", step => step with { Takes = Sample.Seconds(30) })
            .With(Sample.Order("ab", "a", "b"), Sample.Order("bc", "b", "c"),
                Sample.Order("gap", "a", "c") with { AtLeast = Sample.Seconds(30) });
        var verdict = procedure.Grader().Grade(Sample.Observed("a:0-1 b:1-20 c:21-22")).Value;
        Assert.Equal([new Wait(Sample.Id("c"), Sample.Seconds(10))], verdict.Mend.Waits);
        Assert.Equal(1, verdict.Cost);
    }

    [Theory]
    [InlineData("a:0-5 b:10-15", "w 60")]
    [InlineData("w:0-20 a:20-25 b:30-35", "w 60")]
    [InlineData("a:20-25 b:30-35 w:40-60", "w 60")]
    [InlineData("a:0-5 c:8-12 b:17-20", "w 53")]
    [InlineData("a:0-5 w:10-30 b:40-45", "w 45")]
    [InlineData("w:0-90 a:90-95 b:100-105", "")]
    [InlineData("a:0-5 w:5-30 a:30-31 b:40-45", "w 60")]
    public void What_is_missing_of_a_gap_is_told_at_the_wait_that_stands_inside_it_in_the_mended_order(string run, string waits)
    {
        var procedure = Sample.Plain("acwb").With("w", step => step with { IsWait = true }).With("c", step => step with { IsOptional = true })
            .With(Sample.Order("aw", "a", "w"), Sample.Order("wb", "w", "b"), Sample.Order("gap", "a", "b") with { AtLeast = Sample.Seconds(60) });
        var verdict = procedure.Grader().Grade(Sample.Observed(run)).Value;
        Assert.Contains("too-soon gap", string.Join(' ', verdict.Short()), StringComparison.Ordinal);
        Assert.Equal(waits, string.Join(' ', verdict.Mend.Waits.Select(wait => $"{wait.Step} {wait.Length.Seconds}")));
        Assert.True(verdict.Cost > 0);
    }

    [Fact]
    public void The_replay_shows_the_real_clock()
    {
        var verdict = Grade("key-off:0-10 rest:10-70 lift-tray:70-80 hook:80-81");
        Assert.Equal(Sample.Seconds(70), verdict.Replay[2].StartsAt);
        Assert.Equal(Sample.Seconds(80), verdict.Replay[2].EndsAt);
    }

    [Fact]
    public void The_run_begins_where_the_start_was_done()
    {
        var run = Sample.Observed("rest:0-60 lift-tray:60-70 hook:80-81") with { Start = [new(Sample.Id("key-off"))] };
        Assert.True(Sample.RelayTray.Grader().Grade(run).Value.Accepted);
    }

    [Fact]
    public void Either_every_entry_carries_real_times_or_none_does()
    {
        var run = Sample.Observed("key-off:0-10 rest:10-70");
        Assert.Contains("Place 3 of the answer", Sample.RelayTray.Refused(
            run with { Entries = [.. run.Entries, new(Sample.Id("lift-tray"))] }), StringComparison.Ordinal);
        Assert.Contains("Place 2 of the answer", Sample.RelayTray.Refused(
            run with { Entries = [new(Sample.Id("lift-tray")), .. run.Entries] }), StringComparison.Ordinal);
    }

    [Fact]
    public void Entries_stand_as_they_were_begun() =>
        Assert.Contains("Place 2", Sample.RelayTray.Refused(Sample.Observed("key-off:10-20 rest:5-70")), StringComparison.Ordinal);

    [Fact]
    public void A_pair_of_times_that_runs_backwards_cannot_be_made()
    {
        Assert.False(Times.TryCreate(Duration.FromSeconds(2), Duration.FromSeconds(1), out var times));
        Assert.Equal(default, times);
    }

    [Fact]
    public void An_entry_carries_a_stated_wait_or_real_times_not_both()
    {
        var entry = Sample.Observed("rest:0-10").Entries[0] with { Stated = Sample.Seconds(5) };
        Assert.Contains("one of them", Sample.RelayTray.Refused(new([entry])), StringComparison.Ordinal);
    }
}
