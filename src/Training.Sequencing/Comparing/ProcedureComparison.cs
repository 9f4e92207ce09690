using Training.Sequencing.Analysis;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Comparing;

/// <summary>What one revision of a procedure says that another does not, and what that does to the right orders.</summary>
/// <param name="Changes">What is new, gone or changed; empty where the two say the same, however their texts are set.</param>
/// <param name="Orders">
/// What it means for the orders, for each kind of vehicle that both know; empty where nothing has changed, or one of the
/// two cannot be graded by.
/// </param>
public sealed record ProcedureComparison(IReadOnlyList<ProcedureChange> Changes, IReadOnlyList<OrdersCompared> Orders)
{
    /// <summary>
    /// A quarter of a million parts, some 25 MB for each count: a page is waiting. What would pass it is estimated from
    /// 2 000 draws.
    /// </summary>
    public static AnalysisLimits Limits { get; } = new(250_000, 2_000);

    /// <summary>The older revision.</summary>
    public required Procedure Before { get; init; }

    /// <summary>The newer revision.</summary>
    public required Procedure After { get; init; }

    /// <summary>Whether the two say the same.</summary>
    public bool IsSame => Changes.Count == 0;

    /// <summary>Compares two revisions of a procedure, sound or not.</summary>
    /// <param name="before">The older one.</param>
    /// <param name="after">The newer one.</param>
    /// <param name="limits">How much may be looked at for each kind of vehicle; null for <see cref="Limits"/>.</param>
    public static ProcedureComparison Of(Procedure before, Procedure after, AnalysisLimits? limits = null)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var changes = new ChangeList();
        HeadChanges.Find(before, after, changes);
        FactChanges.Find(before, after, changes);
        StepChanges.Find(before, after, changes);
        DecoyChanges.Find(before, after, changes);
        RuleChanges.Find(before, after, changes);
        return new(changes.All, changes.All.Count == 0 ? [] : [.. Compared(before, after, changes.All, limits ?? Limits)])
        {
            Before = before,
            After = after,
        };
    }

    private static IEnumerable<OrdersCompared> Compared(
        Procedure before, Procedure after, IReadOnlyList<ProcedureChange> changes, AnalysisLimits limits)
    {
        foreach (var variant in Vehicles(before, after))
        {
            var (old, now) = (Grader.For(before, Known(before, variant)), Grader.For(after, Known(after, variant)));
            if (!old.IsOk || !now.IsOk) continue;
            if (OrdersComparing.Of(old.Value, now.Value, variant, limits) is { } compared)
                yield return compared with { Effects = RuleEffects.Of(old.Value, now.Value, changes, limits) };
        }
    }

    // A procedure that tells no kinds apart holds for each of those that the other knows.
    private static IEnumerable<VariantId?> Vehicles(Procedure before, Procedure after) =>
        (before.Variants.Count, after.Variants.Count) switch
        {
            (0, _) => after.Kinds,
            (_, 0) => before.Kinds,
            _ => after.Variants.Intersect(before.Variants).Select(variant => (VariantId?)variant),
        };

    private static VariantId? Known(Procedure procedure, VariantId? variant) => procedure.Variants.Count == 0 ? null : variant;
}
