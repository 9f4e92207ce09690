using CsCheck;
using Training.Measures.Quantities;

namespace Training.Measures.Tests.Quantities;

public class QuantityTests
{
    [Fact]
    public void There_are_twelve_quantities() => Assert.Equal(12, Kinds.All.Count);

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(1e300)]
    [InlineData(-1e300)]
    public void No_quantity_takes_a_number_outside_physics(double number)
    {
        foreach (var kind in Kinds.All)
            Assert.NotNull(kind.ObjectionTo(number));
    }

    [Fact]
    public void Absolute_zero_is_the_coldest()
    {
        Assert.True(Temperature.Of(-273.15).IsOk);
        Assert.False(Temperature.Of(-273.16).IsOk);
    }

    [Fact]
    public void A_number_of_ours_that_is_impossible_is_an_exception() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Resistance.FromOhms(-1));

    [Fact]
    public void A_gravity_that_nobody_gave_is_water() => Assert.Equal(1.000, default(SpecificGravity).Value);

    [Fact]
    public void A_cross_section_that_nobody_gave_never_divides() =>
        Assert.Throws<InvalidOperationException>(() => default(CrossSection).SquareMillimetres);

    // General knowledge: water boils at 212 °F, freezes at 32 °F; both scales meet at -40.
    [Theory]
    [InlineData(0, 32)]
    [InlineData(100, 212)]
    [InlineData(-40, -40)]
    public void Celsius_and_fahrenheit_agree(double celsius, double fahrenheit)
    {
        Assert.Equal(fahrenheit, Temperature.FromCelsius(celsius).Fahrenheit, 1e-9);
        Assert.Equal(celsius, Temperature.FromFahrenheit(fahrenheit).Celsius, 1e-9);
    }

    [Fact]
    public void Every_unit_comes_back_from_the_base_unit() =>
        Gen.Double[-1000, 1000].Sample(number =>
        {
            foreach (var unit in Kinds.All.SelectMany(kind => kind.Units))
                Assert.Equal(number, unit.FromBase(unit.ToBase(number)), 1e-9);
        });

    [Fact]
    public void Feet_and_metres_agree() => Assert.Equal(107, Length.FromFeet(107).Feet, 1e-9);

    [Fact]
    public void No_two_spellings_of_a_kind_mean_different_units()
    {
        foreach (var kind in Kinds.All)
        {
            var spellings = kind.Units.SelectMany(unit => unit.Spellings.Append(unit.Symbol)).ToList();
            Assert.Equal(spellings.Count, spellings.Distinct(StringComparer.OrdinalIgnoreCase).Count());
        }
    }
}
