using CsCheck;
using Training.Measures.Conductors;
using Training.Measures.Quantities;

namespace Training.Measures.Tests.Conductors;

public class ResistanceTests
{
    private static readonly double[] Plain = [13.3, 7.98, 4.95, 3.30, 1.91, 1.21, 0.780, 0.554, 0.386, 0.272, 0.206];
    private static readonly double[] Tinned = [13.7, 8.21, 5.09, 3.39, 1.95, 1.24, 0.795, 0.565, 0.393, 0.277, 0.210];

    private static CableRun Run(double metres, double area, double celsius = 20) => new(
        Length.FromMetres(metres), CrossSection.FromSquareMillimetres(area), Temperature.FromCelsius(celsius));

    private static double Ohms(CableRun run, ResistanceBasis basis) =>
        ConductorResistance.Of(run, basis, CopperTemperature.From234).Value.Value.Ohms;

    // NBS Handbook 100 (1966) as restated: 0.017241 Ω·mm²/m = 1/58, 8.89 g/cm³, 0.15328 Ω·g/m², 0.00393 per kelvin.
    [Fact]
    public void The_constants_of_copper_fit_one_another()
    {
        Assert.Equal(1.0 / 58, Copper.Resistivity, 1e-6);
        Assert.Equal(Copper.MassResistivity, Copper.Resistivity * Copper.Density, 4);
        Assert.Equal(254.5, 1 / Copper.Coefficient, 0.06);
    }

    // IEC 60228 class 5 as restated by two pages that agree.
    [Fact]
    public void A_kilometre_has_the_resistance_of_the_table()
    {
        for (var row = 0; row < ClassFive.Table.Count; row++)
        {
            var run = Run(1000, ClassFive.Table[row].Section.SquareMillimetres);
            Assert.Equal(Plain[row], Ohms(run, ResistanceBasis.IecPlain), 1e-9);
            Assert.Equal(Tinned[row], Ohms(run, ResistanceBasis.IecTinned), 1e-9);
        }
        Assert.Equal(Plain.Length, ClassFive.Table.Count);
    }

    // Computed: the largest that IEC allows lies 10.4 % to 15.7 % above ρ ÷ A; 1.5 mm²: 11.49 against 13.3.
    [Fact]
    public void Computed_and_largest_resistance_differ_by_10_to_16_percent()
    {
        Assert.Equal(11.49, Ohms(Run(1000, 1.5), ResistanceBasis.Computed), 2);
        foreach (var row in ClassFive.Table)
        {
            var run = Run(1000, row.Section.SquareMillimetres);
            var above = Ohms(run, ResistanceBasis.IecPlain) / Ohms(run, ResistanceBasis.Computed) - 1;
            Assert.InRange(above, 0.104, 0.158);
        }
    }

    // Printed with the table: 5 °C 1.064, 40 0.926, 60 0.862, 70 0.833, 90 0.781.
    [Theory]
    [InlineData(5, 1.064)]
    [InlineData(40, 0.926)]
    [InlineData(60, 0.862)]
    [InlineData(70, 0.833)]
    [InlineData(90, 0.781)]
    public void The_rule_from_230_is_the_printed_factor_turned_over(double celsius, double printed) =>
        Assert.Equal(printed, 1 / CopperTemperature.From230.Factor(Temperature.FromCelsius(celsius)), 3);

    // Computed from AC 43.13-1B's 254.5 ÷ (234.5 + t).
    [Theory]
    [InlineData(5, 1.0626)]
    [InlineData(40, 0.9271)]
    [InlineData(60, 0.8642)]
    [InlineData(70, 0.8358)]
    [InlineData(90, 0.7843)]
    public void The_rule_from_234_5_is_the_other_one(double celsius, double factor) =>
        Assert.Equal(factor, 1 / CopperTemperature.From234.Factor(Temperature.FromCelsius(celsius)), 4);

    [Fact]
    public void At_20_C_both_rules_change_nothing() =>
        Assert.All(CopperTemperature.All, rule => Assert.Equal(1, rule.Factor(Temperature.FromCelsius(20)), 1e-12));

    [Fact]
    public void Longer_thinner_or_warmer_means_more_resistance() =>
        Gen.Select(Gen.Double[0.1, 50], Gen.Double[0.5, 100], Gen.Double[-40, 150]).Sample((metres, area, celsius) =>
        {
            var run = Run(metres, area, celsius);
            var ohms = Ohms(run, ResistanceBasis.Computed);
            Assert.True(Ohms(Run(metres * 1.1, area, celsius), ResistanceBasis.Computed) > ohms);
            Assert.True(Ohms(Run(metres, area * 0.9, celsius), ResistanceBasis.Computed) > ohms);
            Assert.True(Ohms(Run(metres, area, celsius + 1), ResistanceBasis.Computed) > ohms);
        });

    [Fact]
    public void A_section_that_the_table_lacks_is_refused_and_a_computed_one_is_not()
    {
        Assert.Contains("1.5, 2.5", ResistanceBasis.IecPlain.At20(Run(1, 3)).Objection.Sentence, StringComparison.Ordinal);
        Assert.True(ResistanceBasis.Computed.At20(Run(1, 3)).IsOk);
    }

    [Fact]
    public void A_measured_drop_gives_back_the_resistance_that_made_it() =>
        Gen.Select(Gen.Double[0.0001, 1], Gen.Double[0.1, 300]).Sample((ohms, amperes) =>
        {
            var drop = VoltageDrop.Of(Current.FromAmperes(amperes), Resistance.FromOhms(ohms)).Value.Value;
            var measured = ConductorResistance.Measured(drop, Current.FromAmperes(-amperes)).Value.Value;
            Assert.Equal(ohms, measured.Ohms, 1e-12);
        });

    [Fact]
    public void Without_a_current_there_is_nothing_to_measure() =>
        Assert.False(ConductorResistance.Measured(Voltage.FromVolts(0.1), default).IsOk);
}
