using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Batteries;

/// <summary>How far the best and the weakest cell of one battery lie apart.</summary>
public static class CellSpread
{
    /// <summary>The spread over the cells.</summary>
    /// <param name="cells">One gravity a cell, all read alike: all corrected, or all at one temperature.</param>
    public static Outcome<Worked<GravityDifference>> Of(IReadOnlyList<SpecificGravity> cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        if (cells.Count < 2)
            return new Objection("A spread needs the readings of at least two cells.");
        var best = cells.Max(cell => cell.Value);
        var weakest = cells.Min(cell => cell.Value);
        // Hydrometers are read to the thousandth: 1.265 less 1.245 is 0.020 and no binary fraction more.
        var spread = Math.Round(best - weakest, 9);
        return new Worked<GravityDifference>(GravityDifference.FromValue(spread), new([Line(best, weakest, spread)]));
    }

    private static WorkingLine Line(double best, double weakest, double spread) => new(
        "Spread between the cells",
        new("ΔSG", spread, "", 3),
        "SGmax − SGmin",
        [new("SGmax", best, "", 3), new("SGmin", weakest, "", 3)],
        Documents.Arithmetic);
}
