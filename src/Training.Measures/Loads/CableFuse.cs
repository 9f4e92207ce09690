using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Loads;

/// <summary>
/// The largest fuse for a cable, 33 CFR 183.455 (boats; no public rule for vehicles was found): below 50 V at most
/// 150 % of the current that the cable may carry; from 50 V on at most that current, or where no such fuse is made
/// the next size up, but never over 150 %.
/// </summary>
public static class CableFuse
{
    private const double LowVoltage = 50;

    /// <summary>The fuse sits no farther than this from the source of power: 7 inches.</summary>
    public static Length FarthestFromSource { get; } = Length.FromFeet(7.0 / 12);

    /// <summary>The same for a cable that is sheathed the whole way: 40 inches.</summary>
    public static Length FarthestWhenSheathed { get; } = Length.FromFeet(40.0 / 12);

    /// <summary>The largest fuse of the series that protects a cable.</summary>
    /// <param name="cable">The current that the cable may carry: from its data or a table; more than nothing.</param>
    /// <param name="system">The system's voltage; more than nothing.</param>
    public static Outcome<Worked<FuseRating>> Largest(Current cable, Voltage system)
    {
        if (cable.Amperes <= 0)
            return new Objection("The current that a cable may carry is more than 0 A: look it up.");
        if (system.Volts <= 0)
            return new Objection("The system's voltage is more than 0 V.");
        var ceiling = cable.Amperes * 1.5;
        var fuse = system.Volts < LowVoltage ? LastUpTo(ceiling) : NextSize(cable.Amperes, ceiling);
        if (fuse is null)
            return new Objection("No fuse of the series is small enough for this cable: take a thicker one.");
        return new Worked<FuseRating>(fuse, new([Ceiling(cable, system, ceiling), Chosen(fuse, system, ceiling, cable)]));
    }

    /// <summary>Whether a fuse protects a cable.</summary>
    /// <param name="fuse">The fuse.</param>
    /// <param name="cable">The current that the cable may carry.</param>
    /// <param name="system">The system's voltage.</param>
    public static Outcome<Worked<bool>> Protects(FuseRating fuse, Current cable, Voltage system)
    {
        ArgumentNullException.ThrowIfNull(fuse);
        if (cable.Amperes > 0 && fuse.Rating.Amperes < cable.Amperes && system.Volts > 0)
            return new Worked<bool>(true, new([Ceiling(cable, system, cable.Amperes * 1.5)]));
        return Largest(cable, system).Then<Worked<bool>>(largest =>
            new Worked<bool>(fuse.Rating.Amperes <= largest.Value.Rating.Amperes, largest.Working));
    }

    private static FuseRating? LastUpTo(double amperes) =>
        FuseRating.Series.LastOrDefault(fuse => fuse.Rating.Amperes <= amperes);

    private static FuseRating? NextSize(double cable, double ceiling)
    {
        var next = FuseRating.Series.FirstOrDefault(fuse => fuse.Rating.Amperes >= cable);
        return next is not null && next.Rating.Amperes <= ceiling ? next : LastUpTo(cable);
    }

    private static WorkingLine Ceiling(Current cable, Voltage system, double ceiling) =>
        system.Volts < LowVoltage
            ? new(
                "Most that the fuse may have, below 50 V",
                new("If", ceiling, "A"), "1.5 × Ic", [new("Ic", cable.Amperes, "A")], Documents.BoatFuses)
            : new(
                "What the fuse should have, from 50 V on",
                new("If", cable.Amperes, "A"), "1 × Ic", [new("Ic", cable.Amperes, "A")], Documents.BoatFuses);

    private static WorkingLine Chosen(FuseRating fuse, Voltage system, double ceiling, Current cable) => new(
        "The fuse of the series",
        new("In", fuse.Rating.Amperes, "A"),
        "",
        [new("If", system.Volts < LowVoltage ? ceiling : cable.Amperes, "A")],
        fuse.Source);
}
