using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Batteries;

/// <summary>What a battery loses on the shelf: about 0.001 of gravity a day below 80 °F (26.7 °C), TM 5-1185.</summary>
public static class SelfDischarge
{
    private const double PerDay = 0.001;
    private const double WarmestFahrenheit = 80;

    /// <summary>A battery in storage is charged again this often.</summary>
    public static Time RechargeEvery { get; } = Time.FromDays(30);

    /// <summary>The gravity that is left after standing.</summary>
    /// <param name="start">The gravity at 80 °F when the battery was put away.</param>
    /// <param name="standing">How long it stood, nothing connected.</param>
    /// <param name="store">The store's temperature; above 80 °F the rule does not hold and the sum is refused.</param>
    public static Outcome<Worked<CorrectedGravity>> After(CorrectedGravity start, Time standing, Temperature store)
    {
        if (store.Fahrenheit > WarmestFahrenheit)
            return new Objection(
                "The published loss holds below 26.7 °C (80 °F); in a warmer store it is greater: read the gravity.");
        var left = start.At80F.Value - PerDay * standing.Days;
        if (left < 1.000)
            return new Objection("After so long the battery is empty and the rule says nothing more.");
        var line = new WorkingLine(
            "Gravity after standing",
            new("SG₂", left, "", 3),
            "SG₁ − 0.001 × d",
            [new("SG₁", start.At80F.Value, "", 3), new("d", standing.Days, "d")],
            Documents.Storage);
        return new Worked<CorrectedGravity>(
            start with { At80F = SpecificGravity.FromValue(left) }, new([line]));
    }
}
