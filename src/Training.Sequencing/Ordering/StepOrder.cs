using Training.Sequencing.Layouts;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Ordering;

/// <summary>
/// What must wait for what on one kind of vehicle, without anything that follows from the rest: the transitive reduction
/// (Aho, Garey and Ullman, "The transitive reduction of a directed graph", SIAM Journal on Computing 1, 1972).
/// It is what a plan of lines is drawn from.
/// </summary>
/// <param name="Steps">
/// Every required step, every optional step and the first listed member of each one-of group, in the order of the listing.
/// </param>
/// <param name="Waits">
/// The pairs. Those between steps that are not optional hold whether the optional steps are done or not; no chain of
/// such pairs implies another one.
/// </param>
public sealed record StepOrder(IReadOnlyList<StepId> Steps, IReadOnlyList<StepWait> Waits)
{
    internal static StepOrder Of(Layout layout, PlanShelf shelf)
    {
        var without = StepChoice.Of(layout, [], []).Steps;
        var with = without.Copy();
        for (var s = 0; s < layout.StepCount; s++)
            if (layout.Steps[s].IsOptional && layout.GroupOf[s] < 0) with.Add(s);
        var steps = Enumerable.Range(0, layout.StepCount).Where(with.Has).ToArray();
        var (always, whole) = (shelf.For(without), shelf.For(with));
        var waits =
            from first in steps
            from then in steps
            let plan = without.Has(first) && without.Has(then) ? always : whole
            where IsNext(plan, first, then)
            select new StepWait(layout.IdOf(first), layout.IdOf(then));
        return new([.. steps.Select(layout.IdOf)], [.. waits]);
    }

    private static bool IsNext(Plan plan, int first, int then)
    {
        if (!plan.After[first, then]) return false;
        foreach (var between in new EachBit(plan.After.Row(first)))
            if (plan.After[between, then]) return false;
        return true;
    }
}

/// <summary>One step waits for another.</summary>
/// <param name="First">The earlier.</param>
/// <param name="Then">The later.</param>
public readonly record struct StepWait(StepId First, StepId Then);
