using Training.Measures.Batteries;
using Training.Measures.Quantities;
using Training.Measures.Sources;

namespace Training.Measures.Tests.Batteries;

public class BatteryDecisionTests
{
    private static readonly Percent FitFrom = Percent.FromValue(75);

    private static BatteryDecision Decide(SpreadLimit limit, Time? sinceWater, params double[] cells) =>
        new HydrometerReading([.. cells.Select(SpecificGravity.FromValue)], Temperature.FromFahrenheit(80), sinceWater)
            .Decide(GravityCorrection.ByTen, limit, FitFrom).Value;

    private static BatteryDecision Decide(double volts, double minutes = 3) =>
        new VoltmeterReading(Voltage.FromVolts(volts), Time.FromMinutes(minutes)).Decide().Value;

    [Fact]
    public void Charged_and_even_cells_are_fitted() =>
        Assert.Equal(BatteryVerdict.Fit, Decide(SpreadLimit.Twenty, null, 1.265, 1.270, 1.265, 1.260, 1.265, 1.265).Verdict);

    [Fact]
    public void Evenly_low_cells_are_charged() =>
        Assert.Equal(BatteryVerdict.Charge, Decide(SpreadLimit.Fifty, null, 1.22, 1.225, 1.22, 1.22, 1.22, 1.22).Verdict);

    // TM 55-2210-224-12 para 4-30; TM 9-6140-200-14 para 4-7; TM 5-3895-349-14P. Three limits, three conclusions.
    [Theory]
    [InlineData(BatteryVerdict.Fit, BatteryVerdict.Fit, BatteryVerdict.Fit, 1.275, 1.255)]
    [InlineData(BatteryVerdict.Stop, BatteryVerdict.Fit, BatteryVerdict.Fit, 1.275, 1.251)]
    [InlineData(BatteryVerdict.Stop, BatteryVerdict.Reject, BatteryVerdict.Fit, 1.280, 1.250)]
    [InlineData(BatteryVerdict.Stop, BatteryVerdict.Reject, BatteryVerdict.Reject, 1.305, 1.252)]
    public void The_three_spread_limits_disagree_as_they_do_in_print(
        BatteryVerdict twenty, BatteryVerdict twentyFive, BatteryVerdict fifty, double best,
        double weakest)
    {
        Assert.Equal(twenty, Decide(SpreadLimit.Twenty, null, best, weakest, best, best, best, best).Verdict);
        Assert.Equal(twentyFive, Decide(SpreadLimit.TwentyFive, null, best, weakest, best, best, best, best).Verdict);
        Assert.Equal(fifty, Decide(SpreadLimit.Fifty, null, best, weakest, best, best, best, best).Verdict);
    }

    // TM 9-6140-200-14 para 4-7 speaks of a fully charged battery.
    [Fact]
    public void The_limit_for_charged_batteries_waits_until_it_is_charged()
    {
        var decision = Decide(SpreadLimit.TwentyFive, null, 1.22, 1.18, 1.22, 1.22, 1.22, 1.22);
        Assert.Equal(BatteryVerdict.Charge, decision.Verdict);
        Assert.Equal(["charge-low", "cells-apart-when-charged"], decision.Reasons.Select(reason => reason.Code));
    }

    // US Navy training manual 14113: charge for at least 1 h after water was added.
    [Fact]
    public void A_reading_soon_after_water_decides_nothing()
    {
        double[] cells = [1.265, 1.265, 1.265, 1.265, 1.265, 1.265];
        Assert.Equal(BatteryVerdict.Stop, Decide(SpreadLimit.Fifty, Time.FromMinutes(59), cells).Verdict);
        Assert.Equal(BatteryVerdict.Fit, Decide(SpreadLimit.Fifty, Time.FromMinutes(60), cells).Verdict);
    }

    [Fact]
    public void A_battery_read_in_part_is_refused() =>
        Assert.False(new HydrometerReading([SpecificGravity.FromValue(1.26)], Temperature.FromCelsius(20))
            .Decide(GravityCorrection.ByTen, SpreadLimit.Fifty, FitFrom).IsOk);

    // TM 5-3805-262-20 para 5-9: accepted from 12.4 V, else load test; TM 9-6140-200-14: below 10.5 V damages.
    [Theory]
    [InlineData(12.40, BatteryVerdict.Fit)]
    [InlineData(12.39, BatteryVerdict.Charge)]
    [InlineData(10.50, BatteryVerdict.Charge)]
    [InlineData(10.49, BatteryVerdict.Stop)]
    [InlineData(-12.6, BatteryVerdict.Stop)]
    public void The_voltmeter_decides_by_the_printed_limits(double volts, BatteryVerdict verdict) =>
        Assert.Equal(verdict, Decide(volts).Verdict);

    [Fact]
    public void A_battery_that_has_not_rested_is_read_again() =>
        Assert.Equal("not-rested", Decide(12.7, 2.9).Reasons[0].Code);

    [Fact]
    public void A_decision_shows_its_sums_and_its_source()
    {
        var decision = Decide(SpreadLimit.Twenty, null, 1.265, 1.270, 1.265, 1.260, 1.265, 1.265);
        Assert.Equal(3, decision.Working.Lines.Count);
        Assert.Equal(SourceKind.Published, decision.Reasons[0].Source.Kind);
    }

    [Fact]
    public void A_spread_right_at_the_limit_is_not_over_it() =>
        Assert.False(SpreadLimit.Twenty.IsOver(
            CellSpread.Of([SpecificGravity.FromValue(1.265), SpecificGravity.FromValue(1.245)]).Value.Value));
}
