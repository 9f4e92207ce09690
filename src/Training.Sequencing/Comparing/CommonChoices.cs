using Training.Sequencing.Analysis.Counting;
using Training.Sequencing.Authoring;
using Training.Sequencing.Layouts;
using Training.Sequencing.Ordering;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Comparing;

/// <summary>
/// Which of the common steps an order does: all that either revision asks for, one of each one-of group, and none that
/// both leave to the technician; and what each revision asks of them.
/// </summary>
internal sealed record CommonChoice(StepId[] Steps, OrderUnion Before, OrderUnion After);

/// <summary>Goes through the choices that two revisions have in common.</summary>
internal static class CommonChoices
{
    // Every pair of steps is looked at some times over; a job of work that people learn has a tenth of it.
    private const int MostSteps = 200;

    /// <summary>All of them; nothing where there are too many to look through, more than 200 steps, or no step that both have.</summary>
    public static IReadOnlyList<CommonChoice>? Of(Grader before, Grader after)
    {
        if (Choices.AreTooMany(before.Layout) || Choices.AreTooMany(after.Layout)) return null;
        if (before.Layout.StepCount > MostSteps || after.Layout.StepCount > MostSteps) return null;
        var (old, now) = (new Side(before.Layout, before.Plans), new Side(after.Layout, after.Plans));
        StepId[] common = [.. now.Ids.Where(old.Has)];
        HashSet<StepId> always = [.. common.Where(id => old.Requires(id) || now.Requires(id))];
        StepId[][] groups = [.. old.GroupsAmong(common).Concat(now.GroupsAmong(common))];
        StepId[][] open = [.. groups.Where(group => !group.Any(always.Contains))];
        if (open.Aggregate(1L, (product, group) => Math.Min(product * group.Length, Choices.MostCombinations + 1)) > Choices.MostCombinations)
            return null;
        List<CommonChoice> choices = [];
        HashSet<string> seen = new(StringComparer.Ordinal);
        foreach (var chosen in Combinations(open))
        {
            StepId[] steps = [.. common.Where(id => always.Contains(id) || chosen.Contains(id))];
            if (steps.Length == 0 || groups.Any(group => group.Count(steps.Contains) != 1)) continue;
            if (seen.Add(string.Join(' ', steps))) choices.Add(new(steps, old.OrdersOf(steps), now.OrdersOf(steps)));
        }

        return choices.Count == 0 ? null : choices;
    }

    private static IEnumerable<HashSet<StepId>> Combinations(StepId[][] groups)
    {
        var at = new int[groups.Length];
        while (true)
        {
            yield return [.. groups.Select((group, g) => group[at[g]])];
            var turn = 0;
            while (turn < groups.Length && ++at[turn] == groups[turn].Length) at[turn++] = 0;
            if (turn == groups.Length) yield break;
        }
    }

    private sealed class Side(Layout layout, PlanShelf plans)
    {
        public IEnumerable<StepId> Ids => layout.Steps.Select(step => step.Id);

        public bool Has(StepId id) => layout.TryNumber(id, out var number) && number < layout.StepCount;

        public bool Requires(StepId id) => layout.IsRequired(Number(id));

        public IEnumerable<StepId[]> GroupsAmong(StepId[] common) => layout.Groups
            .Select(group => group.Members.Select(layout.IdOf).Where(common.Contains).ToArray())
            .Where(members => members.Length > 0);

        public OrderUnion OrdersOf(StepId[] steps)
        {
            int[] numbers = [.. steps.Select(Number)];
            var done = Choices.Least(layout);
            foreach (var number in numbers) done.Add(number);
            return OrderUnion.Of(Choices.Of(layout, done).Select(set => plans.For(set))
                .Select(plan => new PlannedOrder(Poset.Of(plan, numbers), plan)));
        }

        private int Number(StepId id) => layout.TryNumber(id, out var number) ? number : throw new InvalidOperationException($"There is no step {id}.");
    }
}
