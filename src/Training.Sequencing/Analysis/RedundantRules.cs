using Training.Sequencing.Authoring;
using Training.Sequencing.Layouts;
using Training.Sequencing.Ordering;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Analysis;

/// <summary>
/// Rules that the other rules already imply: whoever breaks one breaks another one, too. Each is looked at by itself;
/// of two rules that say the same, both are named and one must stay.
/// </summary>
/// <remarks>
/// A time is implied only by times that other rules ask for, never by what steps take: what a step takes is no rule, and
/// in an observed run it does not count. For the same reason a chain must begin with a time after the rule's own first
/// step, as observed steps may overlap. The fewest steps that bring the rule into play are looked at: more steps bring
/// more pairs and take none away.
/// </remarks>
internal static class RedundantRules
{
    public static IReadOnlyList<RuleId> Of(Layout layout)
    {
        if (Choices.AreTooMany(layout)) return [];
        return [.. layout.Procedure.Rules.Where(rule => IsRedundant(layout, rule)).Select(rule => rule.Id)];
    }

    /// <summary>The rules that say nothing new on any of the kinds of vehicle on which they say anything.</summary>
    public static IReadOnlyList<RuleId> Of(IReadOnlyList<Layout> layouts)
    {
        if (layouts.Any(Choices.AreTooMany)) return [];
        return [.. layouts[0].Procedure.Rules
            .Where(rule => layouts.Any(layout => SaysSomething(layout, rule)) && layouts.All(layout => !SaysSomething(layout, rule) || IsRedundant(layout, rule)))
            .Select(rule => rule.Id)];
    }

    private static bool SaysSomething(Layout layout, Rule rule) =>
        layout.Links.Any(link => ReferenceEquals(link.Rule, rule) && !layout.AreAlternatives(link.First, link.Then))
        || layout.Needs.Any(need => ReferenceEquals(need.Rule, rule));

    private static bool IsRedundant(Layout layout, Rule rule)
    {
        var links = layout.Links.Where(link =>
            ReferenceEquals(link.Rule, rule) && !layout.AreAlternatives(link.First, link.Then)).ToArray();
        var needs = layout.Needs.Where(need => ReferenceEquals(need.Rule, rule)).ToArray();
        if (links.Length + needs.Length == 0) return false;
        var rest = Layout.Of(
            layout.Procedure with { Rules = [.. layout.Procedure.Rules.Where(other => !ReferenceEquals(other, rule))] },
            layout.Variant);
        var plans = new Dictionary<StepSet, Plan?>();
        return Array.TrueForAll(links, link => Holds([link.First, link.Then], plan => IsImplied(rest, plan, link)))
            && Array.TrueForAll(needs, need => Holds([need.Step], plan => IsImplied(rest, plan, need)));

        bool Holds(int[] steps, Func<Plan, bool> isImplied)
        {
            var fewest = Choices.Least(layout);
            foreach (var step in steps) fewest.Add(step);
            return Choices.Of(layout, fewest).All(set => PlanOf(set) is { } plan && isImplied(plan));
        }

        Plan? PlanOf(StepSet set)
        {
            if (!plans.TryGetValue(set, out var plan)) plans.Add(set, plan = Plan.TryMake(rest, set, out _));
            return plan;
        }
    }

    private static bool IsImplied(Layout rest, Plan plan, Link link) =>
        plan.After[link.First, link.Then] && (link.AtLeast is not { } time || LeastGap(rest, plan, link) >= time);

    private static bool IsImplied(Layout rest, Plan plan, Need need)
    {
        foreach (var setting in need.Settings)
        {
            if (StateStretches.TryCut(rest, plan.Steps, plan.After, setting.Fact, out _) is not { } stretches) return false;
            var standing = stretches.Place(need.Step, setting.Value, plan.After);
            if (standing.Kind != StandingKind.Settled) return false;
            if (standing.Stretch == default) continue;
            if (standing.Stretch.Opener >= 0 && !plan.After[standing.Stretch.Opener, need.Step]) return false;
            if (standing.Stretch.Ender >= 0 && !plan.After[need.Step, standing.Stretch.Ender]) return false;
        }

        return true;
    }

    /// <summary>
    /// The time from the end of one step to the start of another that chains of gaps guarantee: the longest path; nothing
    /// where there is none.
    /// </summary>
    private static decimal? LeastGap(Layout rest, Plan plan, Link link)
    {
        var gaps = rest.Gaps.Where(gap => plan.Steps.Has(gap.First) && plan.Steps.Has(gap.Then)).ToArray();
        var startsAfter = new decimal?[rest.StepCount];
        foreach (var gap in gaps)
            if (gap.First == link.First) Raise(gap.Then, gap.AtLeast!.Value);
        var inOrder = Enumerable.Range(0, rest.StepCount).Where(plan.Steps.Has)
            .OrderBy(step => plan.Before.CountIn(step));
        foreach (var step in inOrder)
        {
            foreach (var earlier in new EachBit(plan.Before.Row(step)))
                if (startsAfter[earlier] is { } at) Raise(step, at);
            foreach (var gap in gaps)
                if (gap.Then == step && gap.First != link.First && startsAfter[gap.First] is { } at)
                    Raise(step, at + gap.AtLeast!.Value);
        }

        return startsAfter[link.Then];

        void Raise(int step, decimal at)
        {
            if (startsAfter[step] is not { } before || before < at) startsAfter[step] = at;
        }
    }
}
