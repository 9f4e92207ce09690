using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Conductors;

/// <summary>
/// A printed rule that carries a resistance from 20 °C to the temperature of the copper. Two forms are in print and
/// differ by 0.4 % at 90 °C; a question names the one that it is judged by.
/// </summary>
public sealed class CopperTemperature
{
    private CopperTemperature(string id, string title, double zero, Source source)
    {
        Id = id;
        Title = title;
        Zero = zero;
        Source = source;
    }

    /// <summary>(230 + t) ÷ 250, the reciprocal of the factors printed with tables of conductor resistance.</summary>
    public static CopperTemperature From230 { get; } = new(
        "from-230", "(230 + t) ÷ 250", 230, Documents.ConductorTemperature);

    /// <summary>(234.5 + t) ÷ 254.5, from the coefficient of standard copper.</summary>
    public static CopperTemperature From234 { get; } = new(
        "from-234.5", "(234.5 + t) ÷ 254.5", 234.5, Documents.AircraftTemperature);

    /// <summary>Both rules.</summary>
    public static IReadOnlyList<CopperTemperature> All { get; } = [From230, From234];

    /// <summary>The name by which a question calls the rule.</summary>
    public string Id { get; }

    /// <summary>The rule as a formula.</summary>
    public string Title { get; }

    /// <summary>The constant that is added to the temperature, in degrees Celsius.</summary>
    public double Zero { get; }

    /// <summary>Where the rule is printed.</summary>
    public Source Source { get; }

    /// <summary>The factor on a resistance at 20 °C; more than 1 for warm copper.</summary>
    public double Factor(Temperature copper) => (Zero + copper.Celsius) / (Zero + 20);

    /// <summary>A resistance carried over from 20 °C.</summary>
    /// <param name="at20">The resistance at 20 °C.</param>
    /// <param name="copper">From -60 °C to 200 °C; beyond, no cable of a vehicle is used and the sum is refused.</param>
    public Outcome<Worked<Resistance>> Carry(Resistance at20, Temperature copper)
    {
        if (copper.Celsius is < -60 or > 200)
            return new Objection("The copper of a vehicle's cable lies between -60 °C and 200 °C.");
        return Resistance.Of(at20.Ohms * Factor(copper)).Then<Worked<Resistance>>(warm =>
            new Worked<Resistance>(warm, new(
            [
                new(
                    $"At the temperature of the copper, by {Title}",
                    new("R", warm.Milliohms, "mΩ"),
                    "R₂₀ × ( z + t ) ÷ ( z + 20 )",
                    [new("R₂₀", at20.Milliohms, "mΩ"), new("z", Zero, "", 1), new("t", copper.Celsius, "°C")],
                    Source),
            ])));
    }

    /// <inheritdoc/>
    public override string ToString() => Title;
}
