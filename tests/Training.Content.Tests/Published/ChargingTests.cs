using Training.Sequencing.Verdicts;

namespace Training.Content.Tests.Published;

/// <summary>29 CFR 1917.157, charging: (e) the brake before, (n) the charger off when leads go on or come off.</summary>
public sealed class ChargingTests
{
    private static readonly PublishedOrder Charging = PublishedOrder.Of(
        "charger-off",
        "charger-off-first < connect < charge < charger-off-again < disconnect",
        "brake < connect");

    [Fact]
    public void The_brake_may_be_set_before_or_after_the_charger_is_switched_off() =>
        Assert.Equal(2, Charging.AcceptsJustWhatTheTextMeans());

    [Fact]
    public void Every_swap_that_the_regulation_forbids_is_refused() => Charging.RefusesEverySwapThatTheTextForbids();

    [Theory]
    [InlineData("off-at-connect", "brake connect charger-off-first charge charger-off-again disconnect")]
    [InlineData("off-at-disconnect", "brake charger-off-first connect charge disconnect charger-off-again")]
    public void A_lead_that_moves_while_the_charger_is_on_is_a_danger_to_people(string rule, string order)
    {
        var verdict = Charging.Grade(order.Split(' '));
        Assert.Contains(verdict.Findings, finding => finding.Kind == FindingKind.State && finding.Subject == rule);
        Assert.False(verdict.Safe);
    }
}
