namespace Training.Content.Tests.Shipped;

/// <summary>
/// Before welding, painting and washing, and at an electric chassis: the faults that the trade knows are named by the rule
/// that they break, and what the trade leaves free stays free. Each wrong order is a right one with one habit in it.
/// </summary>
public sealed class HotWetAndHighVoltageTests
{
    private const string RightWeld =
        "check-dead move-away cover-tanks cover-brake-lines extinguisher watcher permit bare clamp-on tug-clamp screens "
        + "weld clamp-off fire-watch:1800 look-over";

    private const string RightMasking =
        "check-dead lock-caps after-cold clean bare-seats seats-tape mask-labels mask-plugs cover-bellows cover-after "
        + "cover-lamps count-masks oven-limit hand-over";

    private const string RightWash =
        "check-dead cold drain-open lock-caps shut-covers close-flap no-jet-marks dress people-off jet-frame sponge-marked "
        + "wipe look-inside marks-off sign";

    private const string RightStop =
        "look tools-down park off-the-bus chocks key-locked barrier sign foreman call guard hand-over release tell-crew";

    [Theory]
    [InlineData("clamp-on", "clamp-far", "clamp-far clamp-on tug-what-is-on")]
    [InlineData("fire-watch:1800", "fire-watch:1200", "half-an-hour")]
    [InlineData("weld clamp-off fire-watch:1800", "fire-watch:1800 weld clamp-off", "half-an-hour watch-after-last-weld")]
    [InlineData("extinguisher watcher permit", "permit extinguisher watcher", "inspected-last")]
    [InlineData("permit bare", "bare permit", "permit-before-sparks")]
    [InlineData("check-dead", "isolator-only", "check-dead dead-before-grinder isolator-only")]
    public void A_habit_at_the_weld_is_named(string right, string habit, string subjects) =>
        ShippedContent.AssertNamed("prepare-for-welding", "truck-k26", RightWeld, right, habit, subjects);

    [Fact]
    public void The_clamp_may_come_off_before_the_watch_or_after_it() => Assert.True(ShippedContent.Grade(
        "prepare-for-welding", "bus-l18",
        "watcher extinguisher clear-back cover-bellows guard-it cover-tanks sweep screens permit check-dead bare clamp-on "
        + "tug-clamp weld fire-watch:1800 clamp-off look-over").Accepted);

    [Theory]
    [InlineData("after-cold clean", "clean after-cold", "cold-before-solvent")]
    [InlineData("bare-seats seats-tape", "seats-tape bare-seats", "bare-then-mask")]
    [InlineData("seats-tape", "spray-round", "seats-tape spray-round")]
    [InlineData("cover-lamps count-masks", "count-masks cover-lamps", "all-on-then-count")]
    public void A_habit_before_paint_is_named(string right, string habit, string subjects) =>
        ShippedContent.AssertNamed("protect-for-paint", "bus-l18", RightMasking, right, habit, subjects);

    [Fact]
    public void Masks_may_come_off_in_any_order_once_they_are_counted_and_the_paint_is_hard() => Assert.True(ShippedContent.Grade(
        "unprotect-after-paint", "truck-k26",
        "take-over dry-cool read-count after-free seats-bolt-out lamps-free hoses-free look-seats plugs-free labels-free "
        + "read-labels count-off paint-waste sign").Accepted);

    [Theory]
    [InlineData("wipe look-inside", "look-inside wipe", "wipe-then-open")]
    [InlineData("jet-frame", "jet-frame jet-after", "jet-after")]
    [InlineData("no-jet-marks dress people-off jet-frame", "dress people-off jet-frame no-jet-marks", "marked-before-jet")]
    public void A_habit_at_the_wash_is_named(string right, string habit, string subjects) =>
        ShippedContent.AssertNamed("wash-chassis", "bus-l18", RightWash, right, habit, subjects);

    [Theory]
    [InlineData("release tell-crew", "tell-crew release", "limits-with-release")]
    [InlineData("park off-the-bus", "off-the-bus park", "stand-before-stepping")]
    [InlineData("chocks", "chocks low-isolator", "low-isolator")]
    [InlineData("call guard", "guard call", "told-before-watch")]
    [InlineData("off-the-bus", "out-of-cab", "off-the-bus out-of-cab")]
    public void A_habit_at_an_electric_chassis_is_named_and_called_unsafe(string right, string habit, string subjects) =>
        Assert.False(ShippedContent.AssertNamed("stop-and-call", "bus-l18", RightStop, right, habit, subjects).Safe);

    [Fact]
    public void No_step_at_an_electric_chassis_touches_its_high_voltage_side()
    {
        string[] licensed = ["orange", "disconnect", "discharge", "cable", "measure", "prove"];
        var steps = ShippedContent.Library.FindProcedure(new("stop-and-call"))!.Procedure.Steps;
        Assert.DoesNotContain(steps.Where(step => step.Id.Value != "look"), step =>
            licensed.Any(word => step.Do.Contains(word, StringComparison.OrdinalIgnoreCase)));
    }
}
