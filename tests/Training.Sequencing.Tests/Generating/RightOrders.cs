using Training.Sequencing.Procedures;

namespace Training.Sequencing.Tests.Generating;

/// <summary>
/// What a right order is, read straight from the rules and without any closure: each step is done only when what must
/// come first was done and every fact has its value. Slow and plain, so that the engine can be held to it.
/// </summary>
internal sealed class RightOrders(Procedure procedure, IReadOnlyList<Step> steps)
{
    private readonly Dictionary<StepId, int> numbers = steps.Select((step, s) => (step.Id, s)).ToDictionary();

    public IReadOnlyList<Step> Steps => steps;

    /// <summary>The step set of an answer: required, optional where given, of each group the first that is given.</summary>
    public static RightOrders For(Procedure procedure, VariantId? variant, IEnumerable<StepId> given)
    {
        var order = given.ToList();
        var mine = procedure.Steps.Where(step =>
            step.Variants.Count == 0 || variant is { } one && step.Variants.Contains(one)).ToArray();
        var members = mine.Where(step => step.Choice is not null).GroupBy(step => step.Choice).Select(group => group
            .OrderBy(step => order.IndexOf(step.Id) is var at && at < 0 ? int.MaxValue : at).First()).ToHashSet();
        return new(procedure, [.. mine.Where(step =>
            step.Choice is not null ? members.Contains(step) : !step.IsOptional || order.Contains(step.Id))]);
    }

    /// <summary>All right orders, by the numbers of the steps.</summary>
    public IEnumerable<int[]> All() => Extend([]);

    /// <summary>Whether an order of all steps is right, were the waits long enough.</summary>
    public bool IsRight(IReadOnlyList<int> order)
    {
        var done = new List<int>();
        foreach (var step in order)
        {
            if (!IsFree(step, done)) return false;
            done.Add(step);
        }

        return order.Count == steps.Count;
    }

    /// <summary>
    /// A random right order: steps are taken at random while they are free. Where a state leads into a dead end again
    /// and again, the listing itself.
    /// </summary>
    public int[] Some(Random random)
    {
        for (var attempt = 0; attempt < 20; attempt++)
        {
            var order = new List<int>();
            while (Enumerable.Range(0, steps.Count).Where(step => IsFree(step, order)).ToArray() is { Length: > 0 } free)
                order.Add(free[random.Next(free.Length)]);
            if (order.Count == steps.Count) return [.. order];
        }

        int[] listing = [.. Enumerable.Range(0, steps.Count)];
        return IsRight(listing) ? listing : throw new InvalidOperationException("The listing is no right order.");
    }

    private IEnumerable<int[]> Extend(List<int> done)
    {
        if (done.Count == steps.Count)
        {
            yield return [.. done];
            yield break;
        }

        for (var step = 0; step < steps.Count; step++)
        {
            if (done.Contains(step) || !IsFree(step, done)) continue;
            done.Add(step);
            foreach (var order in Extend(done)) yield return order;
            done.RemoveAt(done.Count - 1);
        }
    }

    private bool IsFree(int step, List<int> done)
    {
        if (done.Contains(step)) return false;
        foreach (var rule in procedure.Rules)
        {
            switch (rule)
            {
                case OrderRule order when order.Then.Contains(steps[step].Id):
                    foreach (var first in order.First)
                        if (numbers.TryGetValue(first, out var number) && !done.Contains(number)) return false;
                    break;
                case StateRule state when state.Step == steps[step].Id:
                    if (state.OnlyWhile.Any(setting => Value(setting.Fact, done) != setting.Value)) return false;
                    break;
            }
        }

        return true;
    }

    private FactValue Value(FactId fact, List<int> done)
    {
        var value = procedure.Facts.Single(one => one.Id == fact).Values[0];
        foreach (var step in done)
            foreach (var setting in steps[step].Sets.Where(setting => setting.Fact == fact)) value = setting.Value;
        return value;
    }
}
