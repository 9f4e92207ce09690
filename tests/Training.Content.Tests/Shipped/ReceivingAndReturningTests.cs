namespace Training.Content.Tests.Shipped;

/// <summary>
/// The faults that the trade knows at arrival, at heat shields and at the handover are named by the rule that they
/// break, and what the trade leaves free stays free. Each wrong order is a right one with one habit in it.
/// </summary>
public sealed class ReceivingAndReturningTests
{
    private const string Received =
        "clear-bay match-number guide-in park-brake foot-off read-lamps key-off take-key chocks walk-round look-under "
        + "lock-cab key-keeper sign-in";

    private const string MovedOut =
        "ask-all no-locks lines-off look-round doors-open fetch-key unlock-cab key-in start-engine read-lamps air-up "
        + "chocks-away guide-stands brake-off drive-out";

    private const string ShieldOut =
        "key-off isolate clear-cab tilt-cab wait-cool:1800 measure protect lower-off support upper-off lift-two "
        + "bag-fixings tag-key cover-lines store";

    private const string ShieldIn =
        "check-dead protect look-shield count-fixings cloths-out look-behind lift-in-two upper-on support-away lower-on "
        + "see-gap tighten cab-down tag-off";

    private const string Returned =
        "read-sheet check-dead covers-off units-on grounds-on shields-on batteries-on last-walk people-clear close-truck "
        + "key-on read-lamps start-chocks try-loads load-on ground-drop sign-over";

    [Theory]
    [InlineData("read-lamps key-off take-key", "key-off take-key read-lamps", "lamps-with-key")]
    [InlineData("park-brake foot-off read-lamps key-off", "key-off park-brake foot-off read-lamps", "brake-before-key lamps-with-key")]
    [InlineData("foot-off read-lamps key-off take-key chocks", "read-lamps key-off take-key chocks foot-off", "tried-before-chocks")]
    [InlineData("walk-round look-under lock-cab key-keeper sign-in", "sign-in walk-round look-under lock-cab key-keeper", "all-on-sheet")]
    [InlineData("sign-in", "sign-tomorrow", "sign-in sign-tomorrow")]
    public void A_habit_at_arrival_is_named(string right, string habit, string subjects) =>
        AssertNamed("receive-chassis", Received, right, habit, subjects);

    [Theory]
    [InlineData("air-up chocks-away", "chocks-away air-up", "chocks-wait-for-air")]
    [InlineData("look-round doors-open fetch-key unlock-cab key-in start-engine", "look-round fetch-key unlock-cab key-in start-engine doors-open", "doors-before-start")]
    [InlineData("no-locks", "lift-tag", "lift-tag no-locks")]
    public void A_habit_when_a_chassis_is_moved_is_named(string right, string habit, string subjects) =>
        AssertNamed("move-chassis-out", MovedOut, right, habit, subjects);

    [Theory]
    [InlineData("wait-cool:1800", "wait-cool:900", "thirty-minutes")]
    [InlineData("lower-off support upper-off", "upper-off lower-off support", "held-before-free lower-then-upper")]
    [InlineData("bag-fixings", "pocket-bolts", "bag-fixings pocket-bolts")]
    [InlineData("tag-key cover-lines store", "cover-lines store tag-key", "away-last")]
    public void A_habit_at_a_heat_shield_is_named(string right, string habit, string subjects) =>
        AssertNamed("remove-heat-shield", ShieldOut, right, habit, subjects);

    [Theory]
    [InlineData("see-gap tighten", "tighten see-gap", "gap-before-tight")]
    [InlineData("cloths-out look-behind", "look-behind cloths-out", "bare-before-look")]
    [InlineData("look-shield", "oily-mat", "look-shield oily-mat")]
    public void A_habit_when_a_heat_shield_goes_back_is_named(string right, string habit, string subjects) =>
        AssertNamed("refit-heat-shield", ShieldIn, right, habit, subjects);

    [Theory]
    [InlineData("grounds-on shields-on batteries-on", "batteries-on grounds-on shields-on", "joined-before-batteries")]
    [InlineData("covers-off units-on", "units-on covers-off", "covers-before-units")]
    [InlineData("check-dead covers-off units-on grounds-on", "covers-off units-on grounds-on check-dead", "dead-before-grounds dead-before-units")]
    [InlineData("load-on ground-drop", "ground-drop load-on", "drop-under-load")]
    [InlineData("read-lamps start-chocks", "start-chocks read-lamps", "lamps-before-all")]
    [InlineData("shields-on", "shield-later", "shield-later shields-on")]
    public void A_habit_on_the_way_back_to_service_is_named(string right, string habit, string subjects) =>
        AssertNamed("return-to-service", Returned, right, habit, subjects);

    [Theory]
    [InlineData("receive-chassis", "read-lamps clear-roof guide-in park-brake key-off foot-off take-key lock-cab key-keeper chocks look-under walk-round match-number sign-in")]
    [InlineData("move-chassis-out", "guide-stands look-round fetch-key ask-all unlock-cab no-locks doors-open key-in horn start-engine air-up read-lamps chocks-away lines-off brake-off drive-out")]
    [InlineData("remove-heat-shield", "key-off clear-cab tilt-cab wait-cool:1800 isolate measure tag-key protect support lower-off upper-off bag-fixings lift-table cover-lines store")]
    [InlineData("refit-heat-shield", "check-dead protect count-fixings cloths-out look-behind look-shield lift-in-table upper-on lower-on support-away see-gap tighten tag-off cab-down")]
    [InlineData("return-to-service", "check-dead read-sheet covers-off grounds-on units-on batteries-on shields-on people-clear last-walk close-truck key-on photo-lamps read-lamps try-loads load-on ground-drop start-chocks sign-over")]
    public void What_the_trade_leaves_free_is_accepted(string procedure, string order) =>
        Assert.True(ShippedContent.Grade(procedure, "truck-k26", order).Accepted);

    private static void AssertNamed(string procedure, string order, string right, string habit, string subjects)
    {
        Assert.True(ShippedContent.Grade(procedure, "truck-k26", order).Accepted);
        Assert.Contains(right, order, StringComparison.Ordinal);
        var verdict = ShippedContent.Grade(procedure, "truck-k26", order.Replace(right, habit, StringComparison.Ordinal));
        Assert.Equal(
            subjects.Split(' ').Order(), verdict.Findings.Select(finding => finding.Subject).Distinct().Order());
    }
}
