namespace Training.Content.Tests.Published;

/// <summary>EN 50110-1, the five safety rules, as restated in public pages: the standard itself was not read.</summary>
public sealed class FiveSafetyRulesTests
{
    // Disconnect, secure, verify (tester proved first), earth before short-circuit, protect.
    private static readonly PublishedOrder Rules = PublishedOrder.Of(
        "five-safety-rules",
        "disconnect < secure < verify-dead < earth < short-circuit < protect",
        "prove-tester < verify-dead");

    [Fact]
    public void The_five_rules_stand_in_one_order_and_the_tester_may_be_proved_at_three_places() =>
        Assert.Equal(3, Rules.AcceptsJustWhatTheTextMeans());

    [Fact]
    public void Every_swap_that_the_rules_forbid_is_refused() => Rules.RefusesEverySwapThatTheTextForbids();

    [Fact]
    public void A_short_circuit_before_the_earth_is_refused()
    {
        var verdict = Rules.Grade(
            "disconnect", "secure", "prove-tester", "verify-dead", "short-circuit", "earth", "protect");
        Assert.Equal("earth-first", Assert.Single(verdict.Findings).Subject);
    }

    [Fact]
    public void A_tester_that_is_proved_only_afterwards_is_refused()
    {
        var verdict = Rules.Grade(
            "disconnect", "secure", "verify-dead", "prove-tester", "earth", "short-circuit", "protect");
        Assert.Equal("tester-first", Assert.Single(verdict.Findings).Subject);
    }
}
