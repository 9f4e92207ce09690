using Training.Sequencing.Authoring;
using Training.Sequencing.Layouts;
using Training.Sequencing.Ordering;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Analysis;

/// <summary>A shortest circle of a procedure's rules, if they run in one.</summary>
public static class RuleLoop
{
    /// <summary>The pairs of the circle, each beginning where the one before ends; none where there is no circle.</summary>
    /// <param name="procedure">The procedure. Its names must be sound: every step that a rule names is there.</param>
    public static IReadOnlyList<LoopPair> Of(Procedure procedure)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        return Layouts(procedure).Select(Of).FirstOrDefault(loop => loop.Count > 0) ?? [];
    }

    internal static IEnumerable<Layout> Layouts(Procedure procedure) => procedure.Kinds.Select(kind => Layout.Of(procedure, kind));

    private static IReadOnlyList<LoopPair> Of(Layout layout)
    {
        foreach (var steps in Choices.Of(layout, Choices.Most(layout)).Take(Choices.MostCombinations))
            if (Plan.TryMake(layout, steps, out var fault) is null && fault is PlanFault.Loop loop)
                return [.. loop.Pairs.Select(pair => new LoopPair(layout.IdOf(pair.First), layout.IdOf(pair.Then), pair.Rule.Id))];
        return [];
    }
}

/// <summary>One part of a circle of rules.</summary>
/// <param name="First">The earlier step.</param>
/// <param name="Then">The later step.</param>
/// <param name="Rule">The rule that says so.</param>
public readonly record struct LoopPair(StepId First, StepId Then, RuleId Rule);
