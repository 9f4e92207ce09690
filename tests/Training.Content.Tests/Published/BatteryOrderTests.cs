using Training.Sequencing.Verdicts;

namespace Training.Content.Tests.Published;

/// <summary>
/// Batteries by manuals of the US Army. The manuals do not all ask for the same order, so the order is data of each
/// job and stands nowhere in the code.
/// </summary>
public sealed class BatteryOrderTests
{
    // TM 9-2350-311-20-1 paragraph 8-28, removal.
    private static readonly PublishedOrder Removal = PublishedOrder.Of(
        "battery-removal-ground-first",
        "ground-1 ground-2 < cable-1 cable-2 cable-3 cable-4 < hold-downs < lift-out");

    // The same paragraph, refit: "always connect ground leads last".
    private static readonly PublishedOrder Refit = PublishedOrder.Of(
        "battery-refit-ground-last",
        "trays < set-in < hold-downs-on < cable-1-on cable-2-on cable-3-on cable-4-on < ground-1-on ground-2-on");

    // TM 9-6115-639-13 paragraph 4-45: negative first, positive last.
    private static readonly PublishedOrder NegativeFirst = PublishedOrder.Of(
        "battery-negative-first", "negative-off < positive-off");

    // TM 5-3805-261-20 paragraph 7-112: "always disconnect the POSITIVE cable on the right side first".
    private static readonly PublishedOrder PositiveFirst = PublishedOrder.Of(
        "battery-positive-first", "positive-off < negative-off");

    // TM 9-2320-387-24-1 paragraph 4-68: switches off and codes recorded before disconnecting, ground cables first.
    private static readonly PublishedOrder SwitchesOff = PublishedOrder.Of(
        "battery-switches-off", "switches-off record-codes < ground-off < others-off");

    // TM 9-6140-200-14 pages 3-22 and 3-24.
    private static readonly PublishedOrder RefitDetail = PublishedOrder.Of(
        "battery-refit-detail",
        "polarity < positive-on < tighten < ammeter < clean-ground < ground-on < covers");

    [Fact]
    public void Ground_leads_come_off_first_in_2_times_24_right_orders() =>
        Assert.Equal(48, Removal.AcceptsJustWhatTheTextMeans());

    [Fact]
    public void Every_forbidden_swap_of_the_removal_is_refused() => Removal.RefusesEverySwapThatTheTextForbids();

    [Fact]
    public void Every_forbidden_swap_of_the_refit_is_refused() => Refit.RefusesEverySwapThatTheTextForbids();

    [Fact]
    public void The_removal_backwards_is_a_right_refit() => Assert.True(Refit.Accepts(
        ["trays", .. Removal.Printed.Reverse().Select(step => step == "lift-out" ? "set-in" : step + "-on")]));

    [Fact]
    public void A_ground_lead_that_goes_on_before_the_last_cable_is_refused()
    {
        var verdict = Refit.Grade(
            "trays", "set-in", "hold-downs-on", "cable-1-on", "cable-2-on", "cable-3-on", "ground-1-on", "cable-4-on",
            "ground-2-on");
        var finding = Assert.Single(verdict.Findings);
        Assert.Equal("ground-on-last", finding.Subject);
        Assert.Equal([7, 8], finding.Places.Order());
    }

    [Fact]
    public void The_short_form_takes_the_negative_first_and_the_positive_last() =>
        Assert.Equal(1, NegativeFirst.AcceptsJustWhatTheTextMeans());

    [Fact]
    public void One_machine_takes_the_positive_first()
    {
        Assert.Equal(1, PositiveFirst.AcceptsJustWhatTheTextMeans());
        Assert.True(PositiveFirst.Accepts("positive-off"));
    }

    [Fact]
    public void What_is_right_by_one_manual_is_wrong_by_the_other()
    {
        string[] order = ["negative-off", "positive-off"];
        Assert.True(NegativeFirst.Accepts(order));
        Assert.False(PositiveFirst.Accepts(order));
        Assert.True(PositiveFirst.Accepts(order.Reverse()));
        Assert.False(NegativeFirst.Accepts(order.Reverse()));
    }

    [Fact]
    public void Switches_and_codes_come_before_the_first_cable_in_either_order() =>
        Assert.Equal(2, SwitchesOff.AcceptsJustWhatTheTextMeans());

    [Fact]
    public void Every_forbidden_swap_of_switches_codes_and_cables_is_refused() =>
        SwitchesOff.RefusesEverySwapThatTheTextForbids();

    [Fact]
    public void Of_the_5040_arrangements_of_the_detailed_refit_one_is_right() =>
        Assert.Equal(1, RefitDetail.AcceptsJustWhatTheTextMeans());

    [Fact]
    public void Every_forbidden_swap_of_the_detailed_refit_is_refused() =>
        RefitDetail.RefusesEverySwapThatTheTextForbids();

    [Fact]
    public void Polarity_after_the_positive_is_named_as_what_is_wrong()
    {
        var verdict = RefitDetail.Grade(
            "positive-on", "polarity", "tighten", "ammeter", "clean-ground", "ground-on", "covers");
        var finding = Assert.Single(verdict.Findings);
        Assert.Equal((FindingKind.Order, "polarity-first"), (finding.Kind, finding.Subject));
    }
}
