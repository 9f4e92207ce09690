using Training.Content.Scenarios;
using Training.Measures.Quantities;
using Training.Measures.Readings;
using Training.Web.Features.Shared;

namespace Training.Web.Tests.Features.Shared;

public sealed class ReadingPicturesTests
{
    [Theory]
    [InlineData(Instrument.Hydrometer, "1.235", "0.005", "between 1.220 and 1.240", "4 parts apart: 3 parts")]
    [InlineData(Instrument.Hydrometer, "1.2375", "0.005", "between 1.220 and 1.240", "4 parts apart: 3.5 parts")]
    [InlineData(Instrument.Thermometer, "15", "1", "between 14 °C and 16 °C", "2 parts apart: 1 parts")]
    [InlineData(Instrument.Thermometer, "-3", "1", "between -4 °C and -2 °C", "2 parts apart: 1 parts")]
    public void A_scale_is_told_by_the_numbers_beside_the_place_and_never_by_its_value(Instrument on, string value, string division, string between, string parts)
    {
        var number = decimal.Parse(value, System.Globalization.CultureInfo.InvariantCulture);
        var unit = on == Instrument.Thermometer ? "°C" : "";
        var input = new ReadingInput(new("it", "It", Temperature.Kind, "°C"), number, new(unit, 1), decimal.Parse(division, System.Globalization.CultureInfo.InvariantCulture));
        var said = ReadingPictures.Of(new("It", [new(null, on, input)], [], new(Temperature.Kind, "°C", 1), []), WordBook.For("en"))[0].Says;
        Assert.Contains(between, said, StringComparison.Ordinal);
        Assert.Contains(parts, said, StringComparison.Ordinal);
        Assert.DoesNotContain($"{value} ", said.Replace(parts, "", StringComparison.Ordinal), StringComparison.Ordinal);
    }
}
