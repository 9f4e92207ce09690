using Training.Sequencing.Verdicts;

namespace Training.Content.Tests.Published;

/// <summary>Times that must pass between two steps, one of a manual and one of the trade's practice.</summary>
public sealed class WaitingTimeTests
{
    // Common practice of the trade, no published source: at least 90 s from key-off to the isolator.
    private static readonly PublishedOrder Isolator = PublishedOrder.Of(
        "time-before-isolator", "key-off < wait < isolator");

    // TM 5-3805-262-20 paragraph 5-9: lamps on 15 s, off, wait 3 min, read.
    private static readonly PublishedOrder Resting = PublishedOrder.Of(
        "resting-voltage", "lamps-on < burn < lamps-off < rest < read");

    [Theory]
    [InlineData("wait:90", true)]
    [InlineData("wait:600", true)]
    [InlineData("wait:89.999", false)]
    [InlineData("wait", false)]
    public void The_isolator_waits_90_s(string wait, bool accepted)
    {
        var verdict = Isolator.Grade("key-off", wait, "isolator");
        Assert.Equal(accepted, verdict.Accepted);
        if (accepted) return;
        Assert.Equal(FindingKind.TooSoon, Assert.Single(verdict.Findings).Kind);
        Assert.Equal(90, Assert.Single(verdict.Mend.Waits).Length.Seconds);
    }

    [Fact]
    public void A_wait_before_the_key_does_not_count() => Assert.Contains(
        Isolator.Grade("wait:90", "key-off", "isolator").Findings, finding => finding.Kind == FindingKind.TooSoon);

    [Theory]
    [InlineData("burn:15", "rest:180", true)]
    [InlineData("burn:14", "rest:180", false)]
    [InlineData("burn:15", "rest:179", false)]
    [InlineData("burn:180", "rest:15", false)]
    public void The_voltage_is_read_after_15_s_of_load_and_3_min_of_rest(string burn, string rest, bool accepted) =>
        Assert.Equal(accepted, Resting.Accepts("lamps-on", burn, "lamps-off", rest, "read"));
}
