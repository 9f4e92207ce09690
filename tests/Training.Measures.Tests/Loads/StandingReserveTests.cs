using CsCheck;
using Training.Measures.Loads;
using Training.Measures.Quantities;

namespace Training.Measures.Tests.Loads;

public class StandingReserveTests
{
    private static StandingReserve After(double capacity, double start, double load, double hours) =>
        StandingReserve.After(
            Charge.FromAmpereHours(capacity), Percent.FromValue(start), Current.FromAmperes(load), Time.FromHours(hours))
            .Value.Value;

    // Computed: 180 Ah at 80 % is 144 Ah; 1.5 A for 48 h draws 72 Ah; 72 Ah, 40 %, are left.
    [Fact]
    public void What_was_drawn_is_gone()
    {
        var left = After(180, 80, 1.5, 48);
        Assert.Equal(72, left.Charge.AmpereHours, 1e-9);
        Assert.Equal(40, left.Share.Value, 1e-9);
        Assert.False(left.IsOptimistic);
    }

    [Fact]
    public void An_empty_battery_stays_empty() => Assert.Equal(0, After(100, 50, 10, 1000).Charge.AmpereHours);

    // From memory: capacity is stated for a discharge over 20 h.
    [Fact]
    public void A_great_load_is_said_to_leave_less()
    {
        Assert.False(After(100, 100, 5, 1).IsOptimistic);
        Assert.True(After(100, 100, 5.01, 1).IsOptimistic);
    }

    [Fact]
    public void The_time_until_a_charge_and_the_charge_after_that_time_agree() =>
        Gen.Select(Gen.Double[20, 300], Gen.Double[0, 100], Gen.Double[0, 100], Gen.Double[0.01, 20])
            .Sample((capacity, a, b, load) =>
            {
                var hours = StandingReserve.Until(
                    Charge.FromAmpereHours(capacity), Percent.FromValue(Math.Max(a, b)), Current.FromAmperes(load),
                    Percent.FromValue(Math.Min(a, b))).Value.Value.Hours;
                Assert.Equal(Math.Min(a, b), After(capacity, Math.Max(a, b), load, hours).Share.Value, 1e-6);
            });

    [Fact]
    public void What_cannot_be_is_refused()
    {
        var battery = Charge.FromAmpereHours(100);
        var full = Percent.FromValue(100);
        var load = Current.FromAmperes(1);
        Assert.False(StandingReserve.After(default, full, load, Time.FromHours(1)).IsOk);
        Assert.False(StandingReserve.After(battery, Percent.FromValue(101), load, Time.FromHours(1)).IsOk);
        Assert.False(StandingReserve.After(battery, full, Current.FromAmperes(-1), Time.FromHours(1)).IsOk);
        Assert.False(StandingReserve.Until(battery, full, default, Percent.FromValue(50)).IsOk);
        Assert.False(StandingReserve.Until(battery, Percent.FromValue(50), load, full).IsOk);
    }
}
