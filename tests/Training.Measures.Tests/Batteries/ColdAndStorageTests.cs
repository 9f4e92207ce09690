using CsCheck;
using Training.Measures.Batteries;
using Training.Measures.Quantities;

namespace Training.Measures.Tests.Batteries;

public class ColdAndStorageTests
{
    private static CorrectedGravity Gravity(double value) => new(SpecificGravity.FromValue(value));

    // TM 5-1185 Table III; two columns, paired as they stand in the scan.
    [Theory]
    [InlineData(1.280, -90)]
    [InlineData(1.250, -62)]
    [InlineData(1.200, -16)]
    [InlineData(1.150, 5)]
    [InlineData(1.100, 19)]
    public void Acid_freezes_where_the_table_says(double gravity, double fahrenheit) =>
        Assert.Equal(fahrenheit, FreezingPoint.Of(Gravity(gravity)).Value.Value.Fahrenheit, 1e-9);

    [Theory]
    [InlineData(1.099)]
    [InlineData(1.281)]
    public void Beyond_the_table_no_freezing_point_is_invented(double gravity) =>
        Assert.False(FreezingPoint.Of(Gravity(gravity)).IsOk);

    [Fact]
    public void Stronger_acid_freezes_later() =>
        Gen.Select(Gen.Double[1.1, 1.28], Gen.Double[1.1, 1.28]).Sample((a, b) =>
            FreezingPoint.Of(Gravity(Math.Max(a, b))).Value.Value.Celsius
            <= FreezingPoint.Of(Gravity(Math.Min(a, b))).Value.Value.Celsius);

    // TM 5-1185: 65 % at 30 °F, 40 % at 0 °F; TM 9-8000 prints 40 % at 0 °F too.
    [Theory]
    [InlineData(80, 100)]
    [InlineData(30, 65)]
    [InlineData(0, 40)]
    public void Cranking_power_in_the_cold_is_as_printed(double fahrenheit, double percent) =>
        Assert.Equal(percent, CrankingPower.At(Temperature.FromFahrenheit(fahrenheit)).Value.Value.Value, 1e-9);

    [Theory]
    [InlineData(-1)]
    [InlineData(81)]
    public void Beyond_the_table_no_cranking_power_is_invented(double fahrenheit) =>
        Assert.False(CrankingPower.At(Temperature.FromFahrenheit(fahrenheit)).IsOk);

    // TM 5-1185: about 0.001 a day below 80 °F; charge again every 30 days.
    [Fact]
    public void A_month_in_store_costs_a_quarter_of_the_charge()
    {
        var left = SelfDischarge
            .After(Gravity(1.280), SelfDischarge.RechargeEvery, Temperature.FromCelsius(15)).Value.Value;
        Assert.Equal(1.250, left.At80F.Value, 1e-9);
        Assert.Equal(75, ChargeByGravity.Of(left).Value.Value.Value, 1e-6);
    }

    [Fact]
    public void In_a_warm_store_the_rule_is_not_stretched() =>
        Assert.False(SelfDischarge.After(Gravity(1.28), Time.FromDays(1), Temperature.FromFahrenheit(81)).IsOk);
}
