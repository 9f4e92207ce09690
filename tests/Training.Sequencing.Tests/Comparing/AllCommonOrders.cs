using Training.Sequencing.Procedures;
using Training.Sequencing.Tests.Generating;

namespace Training.Sequencing.Tests.Comparing;

/// <summary>
/// The orders of the common steps that are right under each of two revisions, by looking through every right order of
/// each with every choice made and every optional step done or not.
/// </summary>
internal static class AllCommonOrders
{
    public static (HashSet<string> Before, HashSet<string> After) Of(Procedure before, Procedure after, VariantId? variant)
    {
        var (old, now) = (Steps(before, variant), Steps(after, variant));
        var common = now.Select(step => step.Id).Where(id => old.Any(step => step.Id == id)).ToHashSet();
        HashSet<StepId> always = [.. old.Concat(now).Where(step => common.Contains(step.Id) && !step.IsOptional && step.Choice is null).Select(step => step.Id)];
        var groups = new[] { old, now }.SelectMany(steps => steps.Where(step => step.Choice is not null && common.Contains(step.Id))
            .GroupBy(step => step.Choice).Select(group => group.Select(step => step.Id).ToArray())).ToArray();
        return (Orders(before, old), Orders(after, now));

        HashSet<string> Orders(Procedure procedure, Step[] steps)
        {
            HashSet<string> orders = new(StringComparer.Ordinal);
            foreach (var done in Sets(steps))
            {
                var looked = done.Select(step => step.Id).Where(common.Contains).ToHashSet();
                if (looked.Count == 0 || !always.IsSubsetOf(looked) || groups.Any(group => group.Count(looked.Contains) != 1)) continue;
                if (looked.Any(id => !always.Contains(id) && !groups.Any(group => group.Contains(id)))) continue;
                foreach (var order in new RightOrders(procedure, done).All())
                    orders.Add(string.Join(' ', order.Select(step => done[step].Id).Where(common.Contains)));
            }

            return orders;
        }
    }

    private static Step[] Steps(Procedure procedure, VariantId? variant) => [.. procedure.Steps.Where(step =>
        step.Variants.Count == 0 || (variant is { } one && procedure.Variants.Count > 0 && step.Variants.Contains(one)))];

    private static IEnumerable<Step[]> Sets(Step[] steps)
    {
        Step[] open = [.. steps.Where(step => step.IsOptional || step.Choice is not null)];
        for (var some = 0; some < 1 << open.Length; some++)
        {
            var left = open.Where((_, at) => (some >> at & 1) == 0).ToHashSet();
            Step[] done = [.. steps.Where(step => !left.Contains(step))];
            var one = steps.Where(step => step.Choice is not null).Select(step => step.Choice).Distinct()
                .All(choice => done.Count(step => step.Choice == choice) == 1);
            if (one) yield return done;
        }
    }
}
