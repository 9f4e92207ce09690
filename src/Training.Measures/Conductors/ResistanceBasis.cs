using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Conductors;

/// <summary>
/// What a conductor's resistance at 20 °C is taken from. The largest that IEC 60228 allows lies 10 % to 16 % above the
/// computed ρ × l ÷ A of the same nominal section; a question says which of them it means.
/// </summary>
public sealed class ResistanceBasis
{
    private readonly Func<CableRun, Outcome<Worked<Resistance>>> at20;

    private ResistanceBasis(string id, Phrase title, Func<CableRun, Outcome<Worked<Resistance>>> at20)
    {
        Id = id;
        Title = title;
        this.at20 = at20;
    }

    /// <summary>Resistivity × length ÷ cross-section: the least that the copper can have.</summary>
    public static ResistanceBasis Computed { get; } = new("computed", "computed from the copper", FromResistivity);

    /// <summary>The most that IEC 60228 class 5 allows, bare copper.</summary>
    public static ResistanceBasis IecPlain { get; } = new(
        "iec-plain", "IEC 60228 class 5, bare copper, largest", run => FromTable(run, row => row.PlainPerKilometre));

    /// <summary>The most that IEC 60228 class 5 allows, tinned copper.</summary>
    public static ResistanceBasis IecTinned { get; } = new(
        "iec-tinned", "IEC 60228 class 5, tinned copper, largest", run => FromTable(run, row => row.TinnedPerKilometre));

    /// <summary>The three bases.</summary>
    public static IReadOnlyList<ResistanceBasis> All { get; } = [Computed, IecPlain, IecTinned];

    /// <summary>The name by which a question calls the basis.</summary>
    public string Id { get; }

    /// <summary>The basis in a few words.</summary>
    public Phrase Title { get; }

    /// <summary>The resistance at 20 °C, whatever the copper's temperature.</summary>
    /// <returns>An objection where the table has no such cross-section.</returns>
    public Outcome<Worked<Resistance>> At20(CableRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return at20(run);
    }

    /// <inheritdoc/>
    public override string ToString() => Title.ToString();

    private static Outcome<Worked<Resistance>> FromResistivity(CableRun run)
    {
        var ohms = Copper.Resistivity * run.Length.Metres / run.Section.SquareMillimetres;
        return Resistance.Of(ohms).Then<Worked<Resistance>>(found => new Worked<Resistance>(found, new(
        [
            new(
                "Resistance at 20 °C, computed",
                new("R₂₀", found.Milliohms, "mΩ"),
                "1000 × ρ × l ÷ A",
                [
                    new("ρ", Copper.Resistivity, "Ω·mm²/m", 6), new("l", run.Length.Metres, "m"),
                    new("A", run.Section.SquareMillimetres, "mm²"),
                ],
                Documents.StandardCopper),
        ])));
    }

    private static Outcome<Worked<Resistance>> FromTable(CableRun run, Func<ClassFive, double> perKilometre) =>
        ClassFive.Of(run.Section).Then(row => Resistance.Of(perKilometre(row) * run.Length.Metres / 1000)
            .Then<Worked<Resistance>>(found => new Worked<Resistance>(found, new(
            [
                // Ω/km and mΩ/m are the same number.
                new(
                    "Largest resistance at 20 °C, by the table",
                    new("R₂₀", found.Milliohms, "mΩ"),
                    "r × l",
                    [new("r", perKilometre(row), "mΩ/m"), new("l", run.Length.Metres, "m")],
                    Documents.ClassFive),
            ]))));
}
