namespace Training.Content.Tests.Shipped;

/// <summary>
/// Grounding points, added loads, drilling: what the trade leaves free stays free, and each habit is named by the rule
/// that it breaks. Each wrong order is a right one with one habit in it.
/// </summary>
public sealed class GroundsAndLoadsTests
{
    private const string Masked =
        "find-all mark-cable isolate-truck bolt-off bag-parts look-eyelet wrap-eyelet plug-hole wipe-seat mask-disc "
        + "count-masks";

    private const string Ground =
        "dead-bus goggles masks-off bare-brush eyelet-clean wipe eyelet-on torque tug coat close-bus load-on read-drop "
        + "write-down";

    private const string Added =
        "read-plate find-connector sum choose key-off wait-empty:90 isolate-bus crimp run-cable join-load plug-in fuse-in "
        + "close-bus try-load write-sheet";

    private const string TakenOff =
        "read-sheet load-off key-off wait-empty:90 isolate-truck fuse-out unplug cap part-load close-ground cable-out "
        + "close-truck try-rest strike-out";

    private const string Drilled =
        "drawing look-truck measure page sign isolate-truck depth-stop shield goggles drill edge look-again record";

    private const string Asked =
        "chalk note number look distances photo weight write foreman send compare file tell";

    [Theory]
    [InlineData("ask-the-maker", null, Asked)]
    [InlineData("ask-the-maker", null, "weight other-way number chalk distances sketch look write foreman note send compare file tell")]
    [InlineData("mask-grounds", "truck-k26", Masked)]
    [InlineData("mask-grounds", "truck-k26", "isolate-truck find-all photo mark-cable bolt-off wipe-seat plug-hole mask-tape look-eyelet wrap-eyelet count-masks show-painter bag-parts")]
    [InlineData("make-ground", "bus-l18", Ground)]
    [InlineData("make-ground", "bus-l18", "goggles dead-bus masks-off try-thread eyelet-clean bare-pad wipe eyelet-on torque tug close-bus load-on read-drop write-down coat")]
    [InlineData("add-load", "bus-l18", Added)]
    [InlineData("add-load", "bus-l18", "key-off wait-empty:90 isolate-bus find-connector read-plate sum choose ready-made join-load run-cable label plug-in fuse-in close-bus try-load write-sheet")]
    [InlineData("take-load-off", "truck-k26", TakenOff)]
    [InlineData("take-load-off", "truck-k26", "key-off load-off wait-empty:90 read-sheet isolate-truck fuse-out unplug part-load cable-stays close-ground cap close-truck try-rest strike-out")]
    [InlineData("check-before-cutting", "truck-k26", Drilled)]
    [InlineData("check-before-cutting", "truck-k26", "isolate-truck goggles find-hole measure look-truck depth-stop shield drawing written-yes sign drill look-again edge record")]
    public void What_the_trade_leaves_free_stays_free(string procedure, string? variant, string order) =>
        Assert.True(ShippedContent.Grade(procedure, variant, order).Accepted);

    [Theory]
    [InlineData("mask-grounds", "truck-k26", Masked, "isolate-truck bolt-off", "bolt-off isolate-truck", "dead-first")]
    [InlineData("mask-grounds", "truck-k26", Masked, "wipe-seat mask-disc", "mask-disc wipe-seat", "ready-before-mask")]
    [InlineData("mask-grounds", "truck-k26", Masked, "wrap-eyelet ", "", "wrap-eyelet")]
    [InlineData("mask-grounds", "truck-k26", Masked, "mask-disc", "scrape-later", "mask-disc scrape-later")]
    [InlineData("make-ground", "bus-l18", Ground, "eyelet-on torque tug coat", "coat eyelet-on torque tug", "torque-before-coat")]
    [InlineData("make-ground", "bus-l18", Ground, "load-on read-drop", "read-drop load-on", "drop-under-load")]
    [InlineData("make-ground", "bus-l18", Ground, "goggles masks-off bare-brush", "masks-off bare-brush goggles", "eyes-first")]
    [InlineData("add-load", "bus-l18", Added, "wait-empty:90", "wait-empty:30", "ninety-seconds")]
    [InlineData("add-load", "bus-l18", Added, "plug-in fuse-in", "fuse-in plug-in", "fuse-last")]
    [InlineData("add-load", "bus-l18", Added, "find-connector sum", "sum find-connector", "figures-first")]
    [InlineData("add-load", "bus-l18", Added, "fuse-in", "fuse-in bigger-fuse", "bigger-fuse")]
    [InlineData("take-load-off", "truck-k26", TakenOff, "fuse-out unplug", "unplug fuse-out", "fuse-before-plug")]
    [InlineData("take-load-off", "truck-k26", TakenOff, "close-ground cable-out close-truck", "cable-out close-truck close-ground", "closed-up-before-live")]
    [InlineData("check-before-cutting", "truck-k26", Drilled, "look-truck measure page", "measure page look-truck", "known-before-word")]
    [InlineData("check-before-cutting", "truck-k26", Drilled, "page", "phone-yes", "page phone-yes")]
    [InlineData("check-before-cutting", "truck-k26", Drilled, "isolate-truck depth-stop shield", "depth-stop shield isolate-truck", "dead-behind")]
    [InlineData("ask-the-maker", null, Asked, "foreman send", "send foreman", "foreman-before-send")]
    [InlineData("ask-the-maker", null, Asked, "weight write", "write weight", "facts-first")]
    [InlineData("ask-the-maker", null, Asked, "chalk", "punch", "chalk punch")]
    public void A_habit_is_named(
        string procedure, string? variant, string order, string right, string habit, string subjects)
    {
        Assert.Contains(right, order, StringComparison.Ordinal);
        var verdict = ShippedContent.Grade(procedure, variant, order.Replace(right, habit, StringComparison.Ordinal));
        Assert.Equal(
            subjects.Split(' ').Order(), verdict.Findings.Select(finding => finding.Subject).Distinct().Order());
    }

    [Theory]
    [InlineData("add-load", "bus-l18", Added, "tap")]
    [InlineData("add-load", "bus-l18", Added, "bigger-fuse")]
    [InlineData("add-load", "bus-l18", Added, "air-line")]
    [InlineData("check-before-cutting", "truck-k26", Drilled, "flange")]
    [InlineData("check-before-cutting", "truck-k26", Drilled, "flame")]
    [InlineData("ask-the-maker", null, Asked, "pilot-hole")]
    [InlineData("ask-the-maker", null, Asked, "silence")]
    public void What_can_burn_a_vehicle_or_break_its_frame_is_called_unsafe(
        string procedure, string? variant, string order, string decoy) =>
        Assert.False(ShippedContent.Grade(procedure, variant, $"{order} {decoy}").Safe);
}
