using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Batteries;

/// <summary>
/// A published rule that carries a hydrometer reading over to 80 °F (26.7 °C), the temperature at which hydrometers
/// read true. The two rules differ (0.0013 at 20 °F away), so a question names the one that it is judged by, and a
/// corrected gravity remembers it.
/// </summary>
public sealed class GravityCorrection
{
    private const double BaseFahrenheit = 80;

    private GravityCorrection(string id, Phrase title, double points, double perFahrenheit, Source source)
    {
        Id = id;
        Title = title;
        Points = points;
        PerFahrenheit = perFahrenheit;
        Source = source;
    }

    /// <summary>0.004 for each 10 °F, TM 5-3895-349-14P.</summary>
    public static GravityCorrection ByTen { get; } = new(
        "by-ten", "0.004 for each 10 °F", 0.004, 10, Documents.CorrectionByTen);

    /// <summary>0.001 for each 3 °F, US Navy training manual 14113.</summary>
    public static GravityCorrection ByThree { get; } = new(
        "by-three", "0.001 for each 3 °F", 0.001, 3, Documents.CorrectionByThree);

    /// <summary>Both rules.</summary>
    public static IReadOnlyList<GravityCorrection> All { get; } = [ByTen, ByThree];

    /// <summary>The name by which a question calls the rule.</summary>
    public string Id { get; }

    /// <summary>The rule in a few words.</summary>
    public Phrase Title { get; }

    /// <summary>The correction for one step of temperature.</summary>
    public double Points { get; }

    /// <summary>One step of temperature, in degrees Fahrenheit.</summary>
    public double PerFahrenheit { get; }

    /// <summary>Where the rule is printed.</summary>
    public Source Source { get; }

    /// <summary>
    /// The gravity at 80 °F. The rules are printed for whole steps; between them the correction is taken in
    /// proportion.
    /// </summary>
    /// <param name="reading">What the hydrometer shows.</param>
    /// <param name="electrolyte">The temperature of the acid, not of the air.</param>
    public Outcome<Worked<CorrectedGravity>> Correct(SpecificGravity reading, Temperature electrolyte)
    {
        if (electrolyte.Celsius is < -60 or > 60)
            return new Objection("Electrolyte is read between -60 °C and 60 °C: measure its temperature again.");
        var corrected = Math.Round(
            reading.Value + Points * (electrolyte.Fahrenheit - BaseFahrenheit) / PerFahrenheit, 9);
        return SpecificGravity.Of(corrected).Then<Worked<CorrectedGravity>>(gravity =>
            new Worked<CorrectedGravity>(new(gravity, this), new([Line(reading, electrolyte, gravity)])));
    }

    /// <inheritdoc/>
    public override string ToString() => Title.ToString();

    private WorkingLine Line(SpecificGravity reading, Temperature electrolyte, SpecificGravity gravity) => new(
        $"Corrected to 80 °F by {Title}",
        new("SG₈₀", gravity.Value, "", 4),
        "SG + k × ( t − 80 ) ÷ n",
        [
            new("SG", reading.Value, "", 3), new("k", Points, "", 3),
            new("t", electrolyte.Fahrenheit, "°F"), new("n", PerFahrenheit, "°F"),
        ],
        Source);
}

/// <summary>
/// A gravity at 80 °F, which alone says something about charge. A type of its own, so that a raw reading cannot be
/// taken for it.
/// </summary>
/// <param name="At80F">The gravity.</param>
/// <param name="Rule">The rule by which it was corrected; null where it was read at 80 °F.</param>
public readonly record struct CorrectedGravity(SpecificGravity At80F, GravityCorrection? Rule = null);
