using Training.Sequencing.Layouts;
using Training.Sequencing.Ordering;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Authoring;

/// <summary>
/// The law: what must come between the two steps of an <c>at-least</c> can fill it: a wait step, or steps that take
/// long enough; with the fewest steps that an answer with both can bring, and so with any.
/// </summary>
internal static class GapCheck
{
    public static void Find(Layout layout, ProblemList problems)
    {
        if (layout.Gaps.Length == 0) return;
        var least = Choices.Least(layout);
        var leastPlan = Plan.TryMake(layout, least, out _);
        foreach (var gap in layout.Gaps)
        {
            if (layout.AreAlternatives(gap.First, gap.Then)) continue;
            var steps = least;
            var plan = leastPlan;
            if (!layout.IsRequired(gap.First) || !layout.IsRequired(gap.Then))
            {
                steps = least.Copy();
                steps.Add(gap.First);
                steps.Add(gap.Then);
                plan = Plan.TryMake(layout, steps, out _);
            }

            if (plan is not null && CanFill(layout, plan, gap)) continue;
            if (Choices.AreTooMany(layout) || !Choices.Of(layout, steps).All(set => CanFill(layout, set, gap)))
                Tell(layout, gap, problems);
        }
    }

    private static bool CanFill(Layout layout, StepSet steps, Link gap) =>
        Plan.TryMake(layout, steps, out _) is not { } plan || CanFill(layout, plan, gap);

    /// <summary>Whether what a plan puts between the two steps of a gap can fill it.</summary>
    public static bool CanFill(Layout layout, Plan plan, Link gap)
    {
        var length = 0m;
        foreach (var between in new EachBit(plan.After.Row(gap.First)))
        {
            if (!plan.After[between, gap.Then]) continue;
            if (layout.IsWait(between)) return true;
            length += layout.Takes[between];
        }

        return length >= gap.AtLeast!.Value;
    }

    private static void Tell(Layout layout, Link gap, ProblemList problems) => problems.Add(
        AuthoringCodes.GapUnfillable,
        $"Rule “{gap.Rule.Id}” asks for {gap.Rule.AtLeast} between “{layout.IdOf(gap.First)}” and "
        + $"“{layout.IdOf(gap.Then)}”, but nothing that must come between them can fill it. "
        + "Put a wait step between them by first/then rules.",
        SubjectKind.Rule, gap.Rule.Id.Value);
}
