namespace Training.Content.Tests.Published;

/// <summary>29 CFR 1910.147, the control of hazardous energy (lockout and tagout).</summary>
public sealed class EnergyControlTests
{
    // (d): the elements "shall be done in the following sequence".
    private static readonly PublishedOrder Control = PublishedOrder.Of(
        "energy-control", "prepare < shut-down < isolate < lock-tag < release-stored < verify");

    // (e)(1) and (e)(2)(i) before devices are removed; (e)(3) removal; (e)(2)(ii) "after lockout or tagout devices have
    // been removed and before a machine or equipment is started".
    private static readonly PublishedOrder Release = PublishedOrder.Of(
        "energy-release", "e1-inspect e2i-people-clear < e3-remove < e2ii-tell < start");

    [Fact]
    public void Of_the_720_arrangements_of_paragraph_d_one_is_right() =>
        Assert.Equal(1, Control.AcceptsJustWhatTheTextMeans());

    [Fact]
    public void Every_swap_that_paragraph_d_forbids_is_refused() => Control.RefusesEverySwapThatTheTextForbids();

    [Fact]
    public void Of_the_120_arrangements_of_paragraph_e_two_are_right() =>
        Assert.Equal(2, Release.AcceptsJustWhatTheTextMeans());

    [Fact]
    public void Every_swap_that_paragraph_e_forbids_is_refused() => Release.RefusesEverySwapThatTheTextForbids();

    [Theory]
    [InlineData("e1-inspect", "e2i-people-clear")]
    [InlineData("e2i-people-clear", "e1-inspect")]
    public void Looking_round_and_clearing_people_may_be_done_in_either_order(string first, string second) =>
        Assert.True(Release.Accepts(first, second, "e3-remove", "e2ii-tell", "start"));

    [Fact]
    public void The_printed_order_of_paragraph_e_is_refused_as_an_order_in_time()
    {
        var verdict = Release.Grade("e1-inspect", "e2i-people-clear", "e2ii-tell", "e3-remove", "start");
        var finding = Assert.Single(verdict.Findings);
        Assert.Equal("after-removal", finding.Subject);
        Assert.Equal(1, verdict.Cost);
    }
}
