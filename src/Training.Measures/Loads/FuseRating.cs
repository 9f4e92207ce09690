using Training.Measures.Quantities;
using Training.Measures.Sources;

namespace Training.Measures.Loads;

/// <summary>A blade fuse of the standard series, ISO 8820-3 (32 V or 58 V, up to 100 A, breaks 1,000 A).</summary>
/// <param name="Rating">The rated current.</param>
/// <param name="Colour">
/// The usual colour, or null. Pages disagree on some: the figure on the fuse counts, not its colour.
/// </param>
/// <param name="Source">Where the row comes from.</param>
public sealed record FuseRating(Current Rating, string? Colour, Source Source)
{
    /// <summary>The series, the smallest first: the common blades, then the large ones (from memory).</summary>
    public static IReadOnlyList<FuseRating> Series { get; } =
    [
        Blade(1, "black"), Blade(2, "grey"), Blade(3, "violet"), Blade(4, "pink"), Blade(5, "tan"),
        Blade(7.5, "brown"), Blade(10, "red"), Blade(15, "blue"), Blade(20, "yellow"), Blade(25, "clear"),
        Blade(30, "green"),
        Large(40), Large(50), Large(60), Large(70), Large(80), Large(100),
    ];

    /// <summary>The fuse with just this rating.</summary>
    public static Outcome<FuseRating> Of(Current rating) =>
        Series.FirstOrDefault(fuse => fuse.Rating == rating) is { } found
            ? found
            : new Objection($"{rating} is not a fuse of the series 1 A to 100 A.");

    private static FuseRating Blade(double amperes, string colour) =>
        new(Current.FromAmperes(amperes), colour, Documents.BladeFuses);

    private static FuseRating Large(double amperes) =>
        new(Current.FromAmperes(amperes), null, Documents.LargeBladeFuses);
}
