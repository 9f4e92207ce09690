using Training.Measures.Quantities;
using Training.Measures.Sources;

namespace Training.Measures.Conductors;

/// <summary>Flexible copper conductors, IEC 60228 class 5: the largest resistance that a kilometre may have at 20 °C.</summary>
/// <param name="Section">The nominal cross-section.</param>
/// <param name="PlainPerKilometre">Bare copper, Ω/km.</param>
/// <param name="TinnedPerKilometre">Tinned copper, Ω/km.</param>
public sealed record ClassFive(CrossSection Section, double PlainPerKilometre, double TinnedPerKilometre)
{
    /// <summary>The rows from 1.5 mm² to 95 mm².</summary>
    public static IReadOnlyList<ClassFive> Table { get; } =
    [
        Row(1.5, 13.3, 13.7),
        Row(2.5, 7.98, 8.21),
        Row(4, 4.95, 5.09),
        Row(6, 3.30, 3.39),
        Row(10, 1.91, 1.95),
        Row(16, 1.21, 1.24),
        Row(25, 0.780, 0.795),
        Row(35, 0.554, 0.565),
        Row(50, 0.386, 0.393),
        Row(70, 0.272, 0.277),
        Row(95, 0.206, 0.210),
    ];

    /// <summary>Where the rows come from.</summary>
    public static Source Source => Documents.ClassFive;

    /// <summary>The row of a cross-section.</summary>
    public static Outcome<ClassFive> Of(CrossSection section) =>
        Table.FirstOrDefault(row => row.Section == section) is { } found
            ? found
            : new Objection(
                $"The table has no row for {section}: it has " +
                string.Join(", ", Table.Select(row => row.Section.SquareMillimetres)
                    .Select(area => area.ToString(System.Globalization.CultureInfo.InvariantCulture))) + " mm².");

    private static ClassFive Row(double area, double plain, double tinned) =>
        new(CrossSection.FromSquareMillimetres(area), plain, tinned);
}
