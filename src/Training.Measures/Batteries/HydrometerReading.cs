using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Batteries;

/// <summary>What a hydrometer and a thermometer showed on one battery.</summary>
/// <param name="Cells">One reading a cell, as the hydrometer shows it: three cells of 6 V or six of 12 V.</param>
/// <param name="Electrolyte">The temperature of the acid.</param>
/// <param name="ChargedSinceWater">
/// How long the battery was charged since water was added; null where none was added.
/// </param>
public sealed record HydrometerReading(
    IReadOnlyList<SpecificGravity> Cells, Temperature Electrolyte, Time? ChargedSinceWater = null)
{
    private static readonly Time MixingCharge = Time.FromMinutes(60);

    /// <summary>Decides on the battery.</summary>
    /// <param name="correction">The rule of correction to 80 °F.</param>
    /// <param name="limit">The limit for the spread between cells.</param>
    /// <param name="fitFrom">The charge of the weakest cell from which the battery is fitted; the table's 75 % is usual.</param>
    public Outcome<BatteryDecision> Decide(GravityCorrection correction, SpreadLimit limit, Percent fitFrom)
    {
        ArgumentNullException.ThrowIfNull(correction);
        ArgumentNullException.ThrowIfNull(limit);
        if (Cells.Count is not (3 or 6))
            return new Objection("Read every cell: three on a 6 V battery, six on a 12 V battery.");
        if (ChargedSinceWater is { } charged && charged.Hours < MixingCharge.Hours)
            return Unmixed;
        return CellSpread.Of(Cells).Then(spread => Weakest(correction)
            .Then(weakest => ChargeByGravity.Of(weakest.Value)
            .Then<BatteryDecision>(charge => Weigh(spread, weakest, charge, limit, fitFrom))));
    }

    private static BatteryDecision Unmixed => new(
        BatteryVerdict.Stop,
        [
            new("water-not-mixed", "Water was added: charge for at least 1 h so that it mixes, then read again.",
                Documents.WaterAdded),
        ],
        new([]));

    private Outcome<Worked<CorrectedGravity>> Weakest(GravityCorrection correction) =>
        correction.Correct(Cells.MinBy(cell => cell.Value), Electrolyte);

    private static BatteryDecision Weigh(
        Worked<GravityDifference> spread, Worked<CorrectedGravity> weakest, Worked<Percent> charge,
        SpreadLimit limit, Percent fitFrom)
    {
        var working = spread.Working.Then(weakest.Working).Then(charge.Working);
        var reasons = new List<BatteryReason>();
        var low = charge.Value.Value < fitFrom.Value;
        var over = limit.IsOver(spread.Value);
        if (over && !(limit.ChargedOnly && low))
        {
            reasons.Add(new("cells-apart", $"The cells lie more than {limit.Greatest} apart: {limit.Says}.", limit.Source));
            return new(limit.Verdict, reasons, working);
        }
        if (low)
        {
            reasons.Add(new(
                "charge-low",
                $"The weakest cell is charged to {charge.Value.Value:F0} %, less than {fitFrom.Value:F0} %: charge the battery.",
                Documents.ChargeByGravity));
            if (over)
                reasons.Add(new(
                    "cells-apart-when-charged",
                    $"The cells lie more than {limit.Greatest} apart; the limit is judged on a charged battery.",
                    limit.Source));
            return new(BatteryVerdict.Charge, reasons, working);
        }
        reasons.Add(new("charged-and-even", "The cells are charged and even.", Documents.ChargeByGravity));
        return new(BatteryVerdict.Fit, reasons, working);
    }
}
