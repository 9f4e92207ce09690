using System.Collections.Concurrent;
using Training.Sequencing.Layouts;

namespace Training.Sequencing.Ordering;

/// <summary>
/// The plans made so far, by step set. Answers bring few different sets (optional steps and one-of choices), so nearly
/// every answer finds its plan made; the shelf holds a bounded number and is safe to share between threads.
/// </summary>
internal sealed class PlanShelf(Layout layout)
{
    private const int Room = 256;
    private readonly ConcurrentDictionary<StepSet, Plan> plans = new();

    /// <summary>The plan of a step set.</summary>
    /// <exception cref="InvalidOperationException">
    /// The set has none: a fault of ours, as a procedure is checked for every set before it is graded by.
    /// </exception>
    public Plan For(StepSet steps)
    {
        if (plans.TryGetValue(steps, out var plan)) return plan;
        plan = Plan.TryMake(layout, steps, out var fault)
            ?? throw new InvalidOperationException($"A checked procedure has a step set without a plan: {fault}");
        if (plans.Count < Room) plans.TryAdd(steps, plan);
        return plan;
    }
}
