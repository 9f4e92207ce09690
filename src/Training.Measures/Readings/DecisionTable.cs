namespace Training.Measures.Readings;

/// <summary>What follows from a reading, band by band from the lowest value up.</summary>
/// <param name="Bands">Rising limits; the last band has none.</param>
public sealed record DecisionTable(IReadOnlyList<DecisionBand> Bands)
{
    // Results are compared at nine places: a sum of readings has no more, a binary fraction has.
    private const int Places = 9;

    /// <summary>The decision for a value.</summary>
    public string For(double value)
    {
        var rounded = Math.Round(value, Places);
        return Bands.First(band => band.Holds(rounded)).Decision;
    }

    /// <summary>Every decision that a value between two others can call for.</summary>
    public IReadOnlyList<string> Between(double low, double high)
    {
        var first = FirstBand(low);
        return [.. Bands.Skip(first).Take(FirstBand(high) - first + 1).Select(band => band.Decision).Distinct()];
    }

    internal Objection? Objection()
    {
        if (Bands.Count < 2)
            return new("A decision table needs at least two bands, or there is nothing to decide.");
        if (Bands[^1].Limit is not null || Bands.Take(Bands.Count - 1).Any(band => band.Limit is null))
            return new("Every band of a decision table but the last has a limit.");
        for (var band = 1; band < Bands.Count - 1; band++)
        {
            if (!(Bands[band].Limit > Bands[band - 1].Limit))
                return new("The limits of a decision table rise from band to band.");
        }
        return Bands.Any(band => string.IsNullOrWhiteSpace(band.Decision) || band.Limit is { } limit && !double.IsFinite(limit))
            ? new("Every band of a decision table has a decision and a limit that is a number.")
            : null;
    }

    private int FirstBand(double value)
    {
        var rounded = Math.Round(value, Places);
        return Bands.Select((band, at) => (band, at)).First(each => each.band.Holds(rounded)).at;
    }
}

/// <summary>A band of a decision table.</summary>
/// <param name="Decision">What is done, in the question's own words.</param>
/// <param name="Limit">Where the band ends, in the base unit of the measure's answer; null for the last band.</param>
/// <param name="LimitBelongs">Whether the limit itself is still in this band: "up to" and not "below".</param>
public sealed record DecisionBand(string Decision, double? Limit = null, bool LimitBelongs = false)
{
    internal bool Holds(double value) => Limit is not { } limit || (LimitBelongs ? value <= limit : value < limit);
}
