using System.Globalization;

namespace Training.Measures.Quantities;

/// <summary>A temperature, kept in degrees Celsius, read and printed in Fahrenheit too.</summary>
public readonly record struct Temperature : IQuantity<Temperature>
{
    private Temperature(double value) => Celsius = value;

    /// <inheritdoc/>
    public static QuantityKind Kind { get; } = new(
        "temperature", -273.15, QuantityKind.Enormous, "is never below -273.15 °C, and nothing on a vehicle is this hot", "25 °C",
        [
            new("°C", 1, "ºC", "˚C", "\u2103", "C", "degC", "deg C", "celsius"),
            new("°F", 5.0 / 9, -160.0 / 9, ["ºF", "˚F", "\u2109", "F", "degF", "deg F", "fahrenheit"]),
        ]);

    /// <summary>In degrees Celsius.</summary>
    public double Celsius { get; }

    double IQuantity<Temperature>.InBaseUnit => Celsius;

    /// <summary>From a number of ours that is known to be possible.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not: a fault of ours.</exception>
    public static Temperature FromCelsius(double value) => new(Kind.Insist(value));

    /// <inheritdoc/>
    public static Outcome<Temperature> Of(double value) =>
        Kind.ObjectionTo(value) is { } objection ? objection : new Temperature(value);

    /// <summary>In degrees Fahrenheit.</summary>
    public double Fahrenheit => Celsius * 9 / 5 + 32;

    /// <summary>From degrees Fahrenheit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not possible: a fault of ours.</exception>
    public static Temperature FromFahrenheit(double fahrenheit) => new(Kind.Insist((fahrenheit - 32) * 5 / 9));

    /// <summary>Rounded for print alone.</summary>
    public override string ToString() => Kind.Print(Celsius, CultureInfo.InvariantCulture);
}
