using CsCheck;
using Training.Measures.Batteries;
using Training.Measures.Quantities;

namespace Training.Measures.Tests.Batteries;

public class GravityCorrectionTests
{
    private static double Corrected(GravityCorrection rule, double reading, double fahrenheit) =>
        rule.Correct(SpecificGravity.FromValue(reading), Temperature.FromFahrenheit(fahrenheit)).Value.Value.At80F.Value;

    // TM 5-3895-349-14P: electrolyte 100 °F, reading 1.240, 2 x 4 points, 1.248.
    [Fact]
    public void The_printed_example_gives_1_248() =>
        Assert.Equal(1.248, Corrected(GravityCorrection.ByTen, 1.240, 100), 1e-9);

    // US Navy training manual 14113: 0.001 for each 3 °F; 1.240 + 20/3 x 0.001, computed.
    [Fact]
    public void The_other_rule_gives_1_2467_for_the_same_reading() =>
        Assert.Equal(1.2467, Corrected(GravityCorrection.ByThree, 1.240, 100), 4);

    // TM 9-6140-200-14 p. 3-11: a direct reading is correct at 80 °F alone.
    [Fact]
    public void At_80_F_both_rules_leave_the_reading_alone()
    {
        foreach (var rule in GravityCorrection.All)
            Assert.Equal(1.240, Corrected(rule, 1.240, 80), 1e-12);
    }

    // TM 5-1185 Table IV, row "100 %"; the heads were cut off in the scan and are inferred to these temperatures.
    [Theory]
    [InlineData(-65, 1.338, 1.277)]
    [InlineData(-40, 1.328, 1.267)]
    [InlineData(-20, 1.320, 1.259)]
    [InlineData(-10, 1.316, 1.255)]
    [InlineData(0, 1.312, 1.251)]
    [InlineData(20, 1.304, 1.243)]
    [InlineData(40, 1.296, 1.236)]
    [InlineData(80, 1.280, 1.220)]
    [InlineData(100, 1.272, 1.213)]
    [InlineData(110, 1.268, 1.209)]
    [InlineData(120, 1.265, 1.205)]
    public void A_table_of_readings_comes_back_to_full_and_half_charge(double fahrenheit, double full, double half)
    {
        Assert.Equal(1.280, Corrected(GravityCorrection.ByTen, full, fahrenheit), 0.0011);
        Assert.Equal(1.220, Corrected(GravityCorrection.ByTen, half, fahrenheit), 0.0011);
    }

    [Fact]
    public void Warm_acid_is_heavier_than_it_reads() =>
        Gen.Select(Gen.Double[1.1, 1.3], Gen.Double[80.1, 120]).Sample((reading, fahrenheit) =>
            GravityCorrection.All.All(rule => Corrected(rule, reading, fahrenheit) > reading));

    [Fact]
    public void A_correction_remembers_its_rule() =>
        Assert.Same(
            GravityCorrection.ByThree,
            GravityCorrection.ByThree
                .Correct(SpecificGravity.FromValue(1.24), Temperature.FromCelsius(20)).Value.Value.Rule);

    [Theory]
    [InlineData(-61)]
    [InlineData(61)]
    public void A_temperature_that_no_battery_has_is_refused(double celsius) =>
        Assert.False(GravityCorrection.ByTen
            .Correct(SpecificGravity.FromValue(1.24), Temperature.FromCelsius(celsius)).IsOk);
}
