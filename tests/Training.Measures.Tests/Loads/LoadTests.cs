using CsCheck;
using Training.Measures.Loads;
using Training.Measures.Quantities;
using Training.Measures.Sources;

namespace Training.Measures.Tests.Loads;

public class LoadTests
{
    private static Current Amps(double amperes) => Current.FromAmperes(amperes);

    // Ohm's and Joule's laws, computed: 21 W at 24 V is 0.875 A.
    [Fact]
    public void A_load_draws_its_power_over_its_voltage()
    {
        Assert.Equal(0.875, LoadCurrent.Of(Power.FromWatts(21), Voltage.FromVolts(24)).Value.Value.Amperes, 1e-12);
        Assert.False(LoadCurrent.Of(Power.FromWatts(21), default).IsOk);
    }

    [Fact]
    public void The_loads_on_a_connector_add_up_and_leave_a_margin()
    {
        var sum = ConnectorSum.Of([new("a", Amps(0.1)), new("b", Amps(0.2))], Amps(0.3)).Value.Value;
        Assert.Equal((0.3, 0, true), (sum.Total.Amperes, sum.Margin.Amperes, sum.IsWithin));
        Assert.False(ConnectorSum.Of([new("a", Amps(0.31))], Amps(0.3)).Value.Value.IsWithin);
    }

    [Fact]
    public void A_connector_without_a_rating_or_a_load_below_nothing_is_refused()
    {
        Assert.False(ConnectorSum.Of([], default).IsOk);
        Assert.Contains("fridge", ConnectorSum.Of([new("fridge", Amps(-1))], Amps(5)).Objection.Sentence,
            StringComparison.Ordinal);
    }

    // ISO 8820-3 as restated; pages disagree on colours. From 40 A on: from memory.
    [Fact]
    public void The_series_of_fuses_rises_and_says_which_rows_are_from_memory()
    {
        var ratings = FuseRating.Series.Select(fuse => fuse.Rating.Amperes).ToList();
        Assert.Equal([1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 100], ratings);
        Assert.All(FuseRating.Series, fuse => Assert.Equal(
            fuse.Rating.Amperes > 30 ? SourceKind.Memory : SourceKind.Published, fuse.Source.Kind));
    }

    // House rule from memory: 80 % of the fuse for a lasting load. No standard was found.
    [Theory]
    [InlineData(0, 1)]
    [InlineData(0.8, 1)]
    [InlineData(8, 10)]
    [InlineData(8.01, 15)]
    [InlineData(24, 30)]
    [InlineData(80, 100)]
    public void By_the_house_rule_from_memory_a_fuse_carries_80_percent(double load, double fuse)
    {
        var chosen = FuseChoice.For(Amps(load)).Value;
        Assert.Equal(fuse, chosen.Value.Rating.Amperes);
        Assert.Equal(SourceKind.Memory, chosen.Working.Lines[0].Source.Kind);
    }

    [Fact]
    public void A_load_beyond_the_series_is_refused() => Assert.False(FuseChoice.For(Amps(80.1)).IsOk);

    [Fact]
    public void The_chosen_fuse_is_the_smallest_that_will_do() =>
        Gen.Double[0, 80].Sample(load =>
        {
            var chosen = FuseChoice.For(Amps(load)).Value.Value.Rating.Amperes;
            Assert.True(load <= 0.8 * chosen + 1e-9);
            Assert.All(FuseRating.Series.Where(fuse => fuse.Rating.Amperes < chosen),
                smaller => Assert.True(0.8 * smaller.Rating.Amperes < load + 1e-9));
        });

    // 33 CFR 183.455: below 50 V at most 150 % of what the conductor may carry.
    [Theory]
    [InlineData(10, 24, 15)]
    [InlineData(20, 24, 30)]
    [InlineData(13, 24, 15)]
    [InlineData(40, 12, 60)]
    // From 50 V on at most 100 %, or the next size up to 150 %.
    [InlineData(20, 120, 20)]
    [InlineData(17, 120, 20)]
    [InlineData(0.9, 120, 1)]
    public void The_largest_fuse_for_a_cable_follows_the_rule_for_boats(double cable, double volts, double fuse) =>
        Assert.Equal(fuse, CableFuse.Largest(Amps(cable), Voltage.FromVolts(volts)).Value.Value.Rating.Amperes);

    [Theory]
    [InlineData(0.5, 24)]
    [InlineData(0, 24)]
    [InlineData(10, 0)]
    [InlineData(0.6, 120)]
    public void A_cable_that_no_fuse_protects_is_refused(double cable, double volts) =>
        Assert.False(CableFuse.Largest(Amps(cable), Voltage.FromVolts(volts)).IsOk);

    [Fact]
    public void A_fuse_never_passes_150_percent_of_the_cable_and_a_thicker_cable_never_gets_a_smaller_one() =>
        Gen.Select(Gen.Double[1, 60], Gen.Double[1, 60], Gen.Double[6, 120]).Sample((a, b, volts) =>
        {
            var thin = CableFuse.Largest(Amps(Math.Min(a, b)), Voltage.FromVolts(volts)).Value.Value.Rating.Amperes;
            var thick = CableFuse.Largest(Amps(Math.Max(a, b)), Voltage.FromVolts(volts)).Value.Value.Rating.Amperes;
            Assert.True(thin <= 1.5 * Math.Min(a, b) && thin <= thick);
        });

    [Fact]
    public void A_fuse_protects_a_cable_up_to_the_largest()
    {
        var fuse = FuseRating.Of(Amps(30)).Value;
        Assert.True(CableFuse.Protects(fuse, Amps(20), Voltage.FromVolts(24)).Value.Value);
        Assert.False(CableFuse.Protects(fuse, Amps(19), Voltage.FromVolts(24)).Value.Value);
        Assert.True(CableFuse.Protects(FuseRating.Of(Amps(1)).Value, Amps(19), Voltage.FromVolts(24)).Value.Value);
        Assert.False(CableFuse.Protects(fuse, default, Voltage.FromVolts(24)).IsOk);
    }

    // 33 CFR 183.455: within 7 in of the source, within 40 in if sheathed the whole way.
    [Fact]
    public void The_fuse_sits_near_the_source()
    {
        Assert.Equal(0.1778, CableFuse.FarthestFromSource.Metres, 1e-9);
        Assert.Equal(1.016, CableFuse.FarthestWhenSheathed.Metres, 1e-9);
    }

    // 33 CFR 183.425, Table 5.
    [Theory]
    [InlineData("18", 60, 10)]
    [InlineData("16", 105, 25)]
    [InlineData("10", 105, 60)]
    [InlineData("6", 75, 95)]
    [InlineData("0000", 200, 510)]
    public void A_conductor_may_carry_what_the_table_says(string gauge, double insulation, double amperes) =>
        Assert.Equal(amperes, BoatConductor.MayCarry(gauge, Temperature.FromCelsius(insulation)).Value.Amperes);

    [Fact]
    public void Thicker_wire_and_better_insulation_carry_no_less()
    {
        double[][] table =
        [
            .. BoatConductor.Gauges.Select(gauge => BoatConductor.Insulations
                .Select(insulation => BoatConductor.MayCarry(gauge, insulation).Value.Amperes).ToArray()),
        ];
        Assert.Equal(15, table.Length);
        Assert.All(table, row => Assert.Equal(row.Order(), row));
        foreach (var (thin, thick) in table.Zip(table.Skip(1)))
            Assert.All(thin.Zip(thick), pair => Assert.True(pair.First <= pair.Second));
        Assert.False(BoatConductor.MayCarry("9", Temperature.FromCelsius(60)).IsOk);
        Assert.False(BoatConductor.MayCarry("10", Temperature.FromCelsius(61)).IsOk);
    }

    // 30 CFR 75.601-3, single conductor.
    [Theory]
    [InlineData("8", 60, 60)]
    [InlineData("6", 85, 90)]
    [InlineData("4", 110, 110)]
    [InlineData("3", 130, 150)]
    [InlineData("2", 150, 150)]
    [InlineData("1", 170, 175)]
    [InlineData("0", 200, 200)]
    [InlineData("00", 235, 250)]
    [InlineData("000", 275, 300)]
    [InlineData("0000", 315, 350)]
    public void The_rule_for_mines_pairs_cable_and_fuse_more_strictly(string gauge, double carries, double fuse)
    {
        var row = TrailingCable.Of(gauge).Value;
        Assert.Equal((carries, fuse), (row.MayCarry.Amperes, row.LargestFuse.Amperes));
        Assert.True(row.LargestFuse.Amperes <= 1.5 * row.MayCarry.Amperes);
    }
}
