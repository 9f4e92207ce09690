using CsCheck;
using Training.Measures.Conductors;
using Training.Measures.Quantities;
using Training.Measures.Sources;

namespace Training.Measures.Tests.Conductors;

public class DropTests
{
    private static readonly Current Twenty = Current.FromAmperes(20);

    private static double Drop(string gauge, double feet) =>
        AircraftWire.Of(gauge).Value.Drop(Length.FromFeet(feet), Twenty).Value.Value.Volts;

    // FAA AC 43.13-1B CHG 1, tables 11-7 and 11-8; the last digits computed.
    [Theory]
    [InlineData("6", 107, 0.942, 0.9416)]
    [InlineData("4", 90, 0.504, 0.5040)]
    [InlineData("12", 88, 3.60, 3.5552)]
    [InlineData("14", 100, 6.12, 6.1200)]
    [InlineData("10", 39, 0.98, 0.9828)]
    [InlineData("10", 156, 3.93, 3.9312)]
    [InlineData("10", 273, 6.88, 6.8796)]
    public void The_drops_of_the_circular_are_ours(string gauge, double feet, double printed, double exact)
    {
        Assert.Equal(exact, Drop(gauge, feet), 4);
        Assert.Equal(printed, Drop(gauge, feet), 0.05);
    }

    // FAA AC 43.13-1B CHG 1, table 11-8 prints .366 for .00126 x 19.5 x 20, which is 0.4914: the circular's error.
    [Fact]
    public void The_misprinted_row_of_the_circular_is_not_repeated()
    {
        Assert.Equal(0.4914, Drop("10", 19.5), 1e-9);
        Assert.NotEqual(0.366, Drop("10", 19.5), 1);
    }

    // FAA AC 43.13-1B CHG 1, example 1: 50 ft, 28 V, 20 A lies between No. 10 and No. 8, the thicker is taken.
    [Fact]
    public void Between_two_wires_the_thicker_is_taken()
    {
        Assert.Equal(1.26, Drop("10", 50), 1e-9);
        Assert.Equal(0.70, Drop("8", 50), 1e-9);
        Assert.Equal("8", AircraftWire.Thinnest(Length.FromFeet(50), Twenty, AllowedDrop.Continuous28).Value.Gauge);
    }

    [Fact]
    public void A_run_that_no_wire_can_serve_is_refused() =>
        Assert.False(AircraftWire.Thinnest(Length.FromMetres(5000), Twenty, AllowedDrop.Continuous14).IsOk);

    // FAA AC 43.13-1B CHG 1, table 11-9.
    [Fact]
    public void A_thicker_wire_has_less_resistance_and_carries_more()
    {
        Assert.Equal(17, AircraftWire.Table.Count);
        foreach (var (thin, thick) in AircraftWire.Table.Zip(AircraftWire.Table.Skip(1)))
        {
            Assert.True(thick.OhmsPerThousandFeet < thin.OhmsPerThousandFeet);
            Assert.True(thick.InBundle.Amperes > thin.InBundle.Amperes);
        }
    }

    // FAA AC 43.13-1B CHG 1, para 11-66: L2 = 254.5 x L1 / (234.5 + T2); at 20 °C L2 = L1.
    [Theory]
    [InlineData(20, 10)]
    [InlineData(70, 8.358)]
    [InlineData(90, 7.843)]
    public void A_warm_wire_may_be_less_long(double celsius, double metres) =>
        Assert.Equal(
            metres,
            AircraftWire.LongestWhenWarm(Length.FromMetres(10), Temperature.FromCelsius(celsius)).Value.Value.Metres, 3);

    [Fact]
    public void A_temperature_that_no_cable_bears_is_refused() =>
        Assert.False(AircraftWire.LongestWhenWarm(Length.FromMetres(10), Temperature.FromCelsius(201)).IsOk);

    // FAA AC 43.13-1B CHG 1: 0.5 V of 14, 1 of 28, 4 of 115, 7 of 200; table 11-6 intermittent is from memory.
    [Fact]
    public void The_allowed_drops_are_as_printed_and_those_from_memory_say_so()
    {
        Assert.Equal(
            [(14d, 0.5), (28, 1), (115, 4), (200, 7)],
            AllowedDrop.All.Where(limit => limit.Source.Kind == SourceKind.Published)
                .Select(limit => (limit.System.Volts, limit.Greatest.Volts)));
        Assert.Equal(
            [(14d, 1d), (28, 2), (115, 8), (200, 14)],
            AllowedDrop.All.Where(limit => limit.Source.Kind == SourceKind.Memory)
                .Select(limit => (limit.System.Volts, limit.Greatest.Volts)));
        Assert.True(AllowedDrop.Continuous28.Allows(Voltage.FromVolts(-1)));
        Assert.False(AllowedDrop.Continuous28.Allows(Voltage.FromVolts(1.001)));
    }

    // FAA-H-8083-32 as restated: 2 % of the regulated voltage; of 28 V computed 0.56 V.
    [Fact]
    public void The_main_cable_may_take_two_percent()
    {
        Assert.Equal(0.56, AllowedDrop.MainCable(Voltage.FromVolts(28)).Value.Greatest.Volts, 1e-12);
        Assert.False(AllowedDrop.MainCable(default).IsOk);
    }

    // AC 43.13-1B 11-189: at most 0.003 Ω, computed 0.30 V at 100 A; 11-188: less than 2.5 mΩ; FAA-H-8083-32: 0.005 Ω.
    [Fact]
    public void The_bond_limits_are_as_printed()
    {
        var jumper = ConductorResistance.Measured(Voltage.FromVolts(0.30), Current.FromAmperes(100)).Value.Value;
        Assert.True(BondLimit.JumperConnection.Allows(jumper));
        Assert.False(BondLimit.JumperConnection.Allows(Resistance.FromOhms(0.00301)));
        Assert.False(BondLimit.Equipment.Allows(Resistance.FromOhms(0.0025)));
        Assert.True(BondLimit.Equipment.Allows(Resistance.FromOhms(0.00249)));
        Assert.True(BondLimit.GroundReturn.Allows(Resistance.FromOhms(0.005)));
        Assert.Equal(24, BondLimit.RefinishWithin.Hours);
    }

    // IEC 60228 class 5, computed: 2 x 10 m of 6 mm² at 20 A drop 1.32 V, of 10 mm² 0.764 V.
    [Fact]
    public void The_smallest_section_that_keeps_the_drop_is_found()
    {
        var found = SmallestSection.For(
            Length.FromMetres(20), Temperature.FromCelsius(20), Twenty, ResistanceBasis.IecPlain,
            CopperTemperature.From230, Voltage.FromVolts(1));
        Assert.Equal(10, found.Value.Value.SquareMillimetres);
        Assert.Equal("20\u00A0A × 38.2\u00A0mΩ = 764\u00A0mV", found.Value.Working.ToString().Split('\n')[^1]);
    }

    [Fact]
    public void A_drop_that_no_section_keeps_is_refused() =>
        Assert.False(SmallestSection.For(
            Length.FromMetres(1000), Temperature.FromCelsius(20), Twenty, ResistanceBasis.IecPlain,
            CopperTemperature.From230, Voltage.FromVolts(0.1)).IsOk);

    // Joule's law, computed: 100 A through 3 mΩ is 30 W.
    [Fact]
    public void A_bad_ground_is_a_heater() =>
        Assert.Equal(30, ConductorHeat.Of(Current.FromAmperes(100), Resistance.FromOhms(0.003)).Value.Value.Watts, 1e-9);

    [Fact]
    public void A_drop_is_a_part_of_the_systems_voltage()
    {
        Assert.Equal(2, VoltageDrop.AsPercent(Voltage.FromVolts(0.56), Voltage.FromVolts(28)).Value.Value.Value, 1e-9);
        Assert.False(VoltageDrop.AsPercent(Voltage.FromVolts(0.56), default).IsOk);
    }

    [Fact]
    public void More_current_means_more_drop() =>
        Gen.Select(Gen.Double[0, 300], Gen.Double[0.01, 10]).Sample((amperes, more) =>
        {
            var ohms = Resistance.FromOhms(0.002);
            return VoltageDrop.Of(Current.FromAmperes(amperes + more), ohms).Value.Value.Volts
                > VoltageDrop.Of(Current.FromAmperes(amperes), ohms).Value.Value.Volts;
        });
}
