using System.Globalization;
using Training.Measures;
using Training.Measures.Batteries;
using Training.Measures.Conductors;
using Training.Measures.Quantities;
using Training.Measures.Readings;
using Training.Measures.Sources;

namespace Training.Web.Features.Bench;

/// <summary>The limits that are printed for what was worked out. They differ, so all of them stand there.</summary>
/// <param name="Says">What the limit is for, or what it concludes.</param>
/// <param name="Greatest">The limit, as it is printed.</param>
/// <param name="IsKept">Whether the value keeps to it.</param>
/// <param name="Source">Where it is printed.</param>
public sealed record BenchLimit(Phrase Says, string Greatest, bool IsKept, Source Source)
{
    /// <summary>The limits for a value; none where none is printed.</summary>
    /// <param name="measure">What was worked out.</param>
    /// <param name="value">The value in the answer's base unit.</param>
    public static IReadOnlyList<BenchLimit> For(Measure measure, double value)
    {
        ArgumentNullException.ThrowIfNull(measure);
        return measure.Id switch
        {
            "cell-spread" when GravityDifference.Of(value) is { IsOk: true } spread =>
                [.. SpreadLimit.All.Select(limit => new BenchLimit(limit.Says, Print(GravityDifference.Kind, limit.Greatest.Value), !limit.IsOver(spread.Value), limit.Source))],
            "ground-resistance" when Resistance.Of(value) is { IsOk: true } resistance =>
                [.. BondLimit.All.Select(limit => new BenchLimit(limit.For, $"{limit.Greatest.Milliohms.ToString("0.###", CultureInfo.CurrentCulture)}\u00A0mΩ", limit.Allows(resistance.Value), limit.Source))],
            _ => [],
        };
    }

    private static string Print(QuantityKind kind, double value) => kind.Print(value, CultureInfo.CurrentCulture);
}
