using System.Globalization;
using Training.Measures.Conductors;
using Training.Measures.Quantities;

namespace Training.Measures.Tests.Quantities;

public class CultureTests
{
    [Theory]
    [InlineData("de-DE")]
    [InlineData("hi-IN")]
    [InlineData("tr-TR")]
    [InlineData("ar-EG")]
    public void The_language_of_the_device_changes_neither_reading_nor_sums(string name)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(name);
        try
        {
            Assert.Equal(12.4, TypedQuantity.Read<Voltage>("12.4 V").Value.Volts, 1e-12);
            Assert.Equal(12.4, TypedQuantity.Read<Voltage>("12,4 V").Value.Volts, 1e-12);
            Assert.Equal(0.002, TypedQuantity.Read<Resistance>("2 MILLIOHM").Value.Ohms, 1e-12);
            Assert.Equal("12.4\u00A0V", Voltage.FromVolts(12.4).ToString());
            var drop = VoltageDrop.Of(Current.FromAmperes(20), Resistance.FromOhms(0.00138)).Value;
            Assert.Equal("20\u00A0A × 1.38\u00A0mΩ = 27.6\u00A0mV", drop.Working.ToString());
            Assert.False(ClassFive.Of(CrossSection.FromSquareMillimetres(3)).IsOk);
            Assert.Contains("1.5, 2.5", ClassFive.Of(CrossSection.FromSquareMillimetres(3)).Objection.Sentence,
                StringComparison.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void A_sum_is_printed_with_the_readers_decimal_mark()
    {
        var drop = VoltageDrop.Of(Current.FromAmperes(20), Resistance.FromOhms(0.00138)).Value;
        Assert.Equal(
            "20\u00A0A × 1,38\u00A0mΩ = 27,6\u00A0mV",
            drop.Working.Lines[0].Numbers(CultureInfo.GetCultureInfo("de-DE")));
    }
}
