using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Loads;

/// <summary>
/// The fuse for a load that stays on. That it carries no more than 80 % of its rating is a house rule from memory;
/// no standard was found for it.
/// </summary>
public static class FuseChoice
{
    /// <summary>The part of its rating that a fuse carries for long, in percent: the house rule.</summary>
    public static Percent LastingShare { get; } = Percent.FromValue(80);

    /// <summary>The smallest fuse of the series whose lasting share bears the load.</summary>
    /// <param name="lasting">The load; not below nothing.</param>
    public static Outcome<Worked<FuseRating>> For(Current lasting)
    {
        if (lasting.Amperes < 0)
            return new Objection("A load cannot draw less than 0 A.");
        // Rounded past the ninth place, so that 8 A on a 10 A fuse is just 80 %.
        var needed = Math.Round(lasting.Amperes * 100 / LastingShare.Value, 9);
        if (FuseRating.Series.FirstOrDefault(fuse => fuse.Rating.Amperes >= needed) is not { } chosen)
            return new Objection("The series of blade fuses ends at 100 A: share the load out.");
        return new Worked<FuseRating>(chosen, new(
        [
            new(
                "The rating that the load needs",
                new("Ir", needed, "A"),
                "100 × I ÷ s",
                [new("I", lasting.Amperes, "A"), new("s", LastingShare.Value, "%", 0)],
                Documents.EightyPercent),
            new(
                "The next fuse of the series",
                new("In", chosen.Rating.Amperes, "A"),
                "",
                [new("Ir", needed, "A")],
                chosen.Source),
        ]));
    }
}
