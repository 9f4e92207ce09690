using CsCheck;
using Training.Measures.Quantities;

namespace Training.Measures.Tests.Quantities;

public class TypedQuantityTests
{
    [Theory]
    [InlineData("12.4 V", 12.4)]
    [InlineData("12,4 V", 12.4)]
    [InlineData("12,4V", 12.4)]
    [InlineData("  12.4  volts ", 12.4)]
    [InlineData("12.4 v", 12.4)]
    [InlineData("276 mV", 0.276)]
    [InlineData("276 mv", 0.276)]
    [InlineData("-0.5 V", -0.5)]
    [InlineData("−0,5 V", -0.5)]
    [InlineData(".5 V", 0.5)]
    [InlineData("१२.४ V", 12.4)]
    [InlineData("١٢٫٤ V", 12.4)]
    public void A_voltage_is_read_with_point_or_comma_and_in_any_script(string text, double volts) =>
        Assert.Equal(volts, TypedQuantity.Read<Voltage>(text).Value.Volts, 1e-12);

    [Theory]
    [InlineData("2.5 mΩ", 0.0025)]
    [InlineData("2,5 mΩ", 0.0025)]
    [InlineData("2.5 m\u2126", 0.0025)]
    [InlineData("2.5 mohm", 0.0025)]
    [InlineData("0.003 Ω", 0.003)]
    [InlineData("0.003 Ohm", 0.003)]
    public void A_resistance_is_read_in_ohms_and_milliohms(string text, double ohms) =>
        Assert.Equal(ohms, TypedQuantity.Read<Resistance>(text).Value.Ohms, 1e-12);

    [Theory]
    [InlineData("80 °F", 26.6667)]
    [InlineData("80 F", 26.6667)]
    [InlineData("80ºF", 26.6667)]
    [InlineData("-40 °F", -40)]
    [InlineData("26,7 °C", 26.7)]
    [InlineData("26.7 C", 26.7)]
    public void A_temperature_is_read_in_celsius_and_fahrenheit(string text, double celsius) =>
        Assert.Equal(celsius, TypedQuantity.Read<Temperature>(text).Value.Celsius, 4);

    [Theory]
    [InlineData("1.265")]
    [InlineData("1,265")]
    [InlineData("1265")]
    [InlineData("1.265 SG")]
    public void A_gravity_is_read_as_a_number_or_as_hydrometer_points(string text) =>
        Assert.Equal(1.265, TypedQuantity.Read<SpecificGravity>(text).Value.Value, 1e-12);

    [Theory]
    [InlineData("7.5 A", 7.5)]
    [InlineData("7,5 amps", 7.5)]
    [InlineData("300 mA", 0.3)]
    public void A_current_is_read_in_amperes(string text, double amperes) =>
        Assert.Equal(amperes, TypedQuantity.Read<Current>(text).Value.Amperes, 1e-12);

    [Theory]
    [InlineData("180 Ah")]
    [InlineData("180 A h")]
    [InlineData("180 AH")]
    public void A_charge_is_read_in_ampere_hours(string text) =>
        Assert.Equal(180, TypedQuantity.Read<Charge>(text).Value.AmpereHours);

    [Theory]
    [InlineData("2 d", 48)]
    [InlineData("90 min", 1.5)]
    [InlineData("15 s", 15.0 / 3600)]
    public void A_time_is_read_in_seconds_to_days(string text, double hours) =>
        Assert.Equal(hours, TypedQuantity.Read<Time>(text).Value.Hours, 1e-12);

    [Fact]
    public void The_unit_beside_the_field_counts_where_none_is_typed()
    {
        Assert.Equal(0.276, TypedQuantity.Read<Voltage>("276", "mV").Value.Volts, 1e-12);
        Assert.Equal(0.276, TypedQuantity.Read<Voltage>("0.276 V", "mV").Value.Volts, 1e-12);
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("V")]
    [InlineData("12.4")]
    [InlineData("12.4 A")]
    [InlineData("1,234.5 V")]
    [InlineData("1 234 V")]
    [InlineData("1e3 V")]
    [InlineData("12.4.1 V")]
    [InlineData("--1 V")]
    [InlineData("NaN V")]
    [InlineData("∞ V")]
    [InlineData("25² V")]
    [InlineData("2 MV")]
    [InlineData("999999999999999999999 V")]
    public void Nonsense_is_refused_with_one_sentence(string text)
    {
        var sentence = TypedQuantity.Read<Voltage>(text).Objection.Sentence;
        Assert.EndsWith(".", sentence, StringComparison.Ordinal);
        Assert.InRange(sentence.Length, 15, 200);
    }

    [Fact]
    public void A_capital_M_is_never_taken_for_milli() =>
        Assert.False(TypedQuantity.Read<Resistance>("2 MΩ").IsOk);

    [Theory]
    [InlineData("-1 Ω")]
    [InlineData("-300 °C")]
    public void What_physics_does_not_allow_is_refused(string text)
    {
        Assert.False(TypedQuantity.Read<Resistance>(text).IsOk);
        Assert.False(TypedQuantity.Read<Temperature>(text).IsOk);
    }

    [Fact]
    public void No_text_whatever_makes_it_throw() =>
        Gen.OneOf(
                Gen.String,
                Gen.String[Gen.Char["0123456789.,-+ VmAhΩ°CF%²\ud83d\ude00\u0966\u066b"], 0, 45])
            .Sample(text =>
            {
                foreach (var kind in Kinds.All)
                {
                    var read = TypedQuantity.Read(kind, text);
                    Assert.True(read.IsOk ? double.IsFinite(read.Value) : read.Objection.Sentence.Length > 0);
                }
            });

    [Fact]
    public void What_is_printed_in_any_unit_is_read_back()
    {
        var numbers = Gen.Int[0, 180].Select(number => (decimal)number / 100);
        Gen.Select(numbers, Gen.Bool.Select(comma => comma ? "," : ".")).Sample((number, mark) =>
        {
            foreach (var kind in Kinds.All.Where(kind => kind.ObjectionTo((double)number) is null))
            {
                foreach (var unit in kind.Units.Where(unit => kind.ObjectionTo(unit.ToBase((double)number)) is null))
                {
                    foreach (var spelling in unit.Spellings.Append(unit.Symbol))
                    {
                        var text = $"{FormattableString.Invariant($"{number}").Replace(".", mark, StringComparison.Ordinal)} {spelling}";
                        Assert.Equal((double)number, unit.FromBase(TypedQuantity.Read(kind, text).Value), 1e-9);
                    }
                }
            }
        }, iter: 50);
    }
}
