using CsCheck;
using Training.Measures.Batteries;
using Training.Measures.Quantities;

namespace Training.Measures.Tests.Batteries;

public class ChargeTests
{
    private static double ByGravity(double gravity) =>
        ChargeByGravity.Of(new(SpecificGravity.FromValue(gravity))).Value.Value.Value;

    private static double ByVoltage(double volts) =>
        ChargeByVoltage.Of(Voltage.FromVolts(volts)).Value.Value.Value;

    // TM 5-1185 Table II; 1.205 computed on its line.
    [Theory]
    [InlineData(1.280, 100)]
    [InlineData(1.250, 75)]
    [InlineData(1.220, 50)]
    [InlineData(1.205, 37.5)]
    [InlineData(1.190, 25)]
    [InlineData(1.160, 0)]
    [InlineData(1.130, 0)]
    [InlineData(1.300, 100)]
    public void Gravity_gives_the_printed_charge(double gravity, double percent) =>
        Assert.Equal(percent, ByGravity(gravity), 1e-9);

    [Fact]
    public void The_printed_rows_lie_on_the_line()
    {
        foreach (var row in ChargeByGravity.Table.Where(row => row.Charge is not null))
            Assert.Equal(row.Charge!.Value, ByGravity(row.Gravity.Value), 1e-9);
    }

    // TM 5-3805-262-20 para 5-9.
    [Theory]
    [InlineData(11.0, 0)]
    [InlineData(11.7, 0)]
    [InlineData(12.0, 25)]
    [InlineData(12.2, 50)]
    [InlineData(12.4, 75)]
    [InlineData(12.6, 100)]
    [InlineData(12.9, 100)]
    public void Voltage_gives_the_printed_charge(double volts, double percent) =>
        Assert.Equal(percent, ByVoltage(volts), 1e-9);

    // Common practice, no published source: a straight line between two rows.
    [Fact]
    public void Between_two_rows_the_charge_lies_in_between() => Assert.Equal(87.5, ByVoltage(12.5), 1e-9);

    // TM 5-3805-262-20 para 5-9: lamps on 15 s, off, wait 3 min.
    [Fact]
    public void Before_reading_the_lamps_are_on_for_15_s_and_the_battery_rests_3_min()
    {
        Assert.Equal(15.0 / 3600, ChargeByVoltage.LampsOn.Hours, 1e-12);
        Assert.Equal(3.0 / 60, ChargeByVoltage.RestBeforeReading.Hours, 1e-12);
    }

    // Computed: 6 x (gravity + 0.84) lies 0.12 V to 0.18 V above the voltage table, so the tables are never mixed.
    [Theory]
    [InlineData(1.280, 12.6)]
    [InlineData(1.250, 12.4)]
    [InlineData(1.220, 12.2)]
    [InlineData(1.190, 12.0)]
    public void The_two_published_tables_do_not_agree(double gravity, double volts)
    {
        Assert.Equal(ByGravity(gravity), ByVoltage(volts), 1e-9);
        Assert.InRange(6 * (gravity + 0.84) - volts, 0.1199, 0.1801);
    }

    [Fact]
    public void More_gravity_and_more_voltage_never_mean_less_charge() =>
        Gen.Select(Gen.Double[1.0, 1.35], Gen.Double[1.0, 1.35], Gen.Double[0, 15.6], Gen.Double[0, 15.6])
            .Sample((a, b, u, v) =>
                ByGravity(Math.Min(a, b)) <= ByGravity(Math.Max(a, b))
                && ByVoltage(Math.Min(u, v)) <= ByVoltage(Math.Max(u, v)));

    [Fact]
    public void Charge_to_gravity_or_voltage_and_back_is_the_same_charge() =>
        Gen.Double[0, 100].Sample(percent =>
        {
            var charge = Percent.FromValue(percent);
            Assert.Equal(percent, ByGravity(ChargeByGravity.GravityAt(charge).Value.Value), 1e-9);
            Assert.Equal(percent, ByVoltage(ChargeByVoltage.VoltageAt(charge).Value.Volts), 1e-9);
        });

    [Theory]
    [InlineData(-0.1)]
    [InlineData(15.7)]
    [InlineData(24.8)]
    public void A_voltage_that_no_single_battery_shows_is_refused(double volts) =>
        Assert.False(ChargeByVoltage.Of(Voltage.FromVolts(volts)).IsOk);

    [Theory]
    [InlineData(0.95)]
    [InlineData(1.4)]
    public void What_is_no_battery_acid_is_refused(double gravity) =>
        Assert.False(ChargeByGravity.Of(new(SpecificGravity.FromValue(gravity))).IsOk);
}
