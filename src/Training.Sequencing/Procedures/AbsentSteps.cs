namespace Training.Sequencing.Procedures;

/// <summary>A step that cannot be done in a situation, although the procedure has it.</summary>
/// <param name="Id">The step.</param>
/// <param name="Because">Why it cannot be done.</param>
/// <param name="Otherwise">What happens to somebody who does it all the same.</param>
public sealed record AbsentStep(StepId Id, string Because, string Otherwise);

/// <summary>What is right of a procedure where some of its steps cannot be done.</summary>
public static class AbsentSteps
{
    /// <summary>
    /// The same procedure without steps that cannot be done: they are decoys now, with their own text and stakes, and no
    /// rule, group or mirror names them any more. A rule with nothing left on one side falls away, and what is left of a
    /// one-of group alone must be done, since a choice needs two. The right orders are those of the procedure in which
    /// none of the steps is done; whether there is any is for the caller to see (<see cref="CanBeSpared"/>).
    /// </summary>
    /// <param name="procedure">The procedure.</param>
    /// <param name="absent">The steps that cannot be done; where there are none, the procedure itself is given back.</param>
    /// <exception cref="ArgumentException">The procedure has no such step: a fault of ours.</exception>
    public static Procedure Without(this Procedure procedure, IReadOnlyList<AbsentStep> absent)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        ArgumentNullException.ThrowIfNull(absent);
        if (absent.Count == 0) return procedure;
        var gone = absent.ToDictionary(step => step.Id);
        if (absent.FirstOrDefault(step => procedure.Steps.All(known => known.Id != step.Id)) is { } stranger)
            throw new ArgumentException($"{procedure.Id} has no step {stranger.Id}.", nameof(absent));
        var left = procedure.Steps.Where(step => !gone.ContainsKey(step.Id)).ToArray();
        return procedure with
        {
            Steps = [.. left.Select(step => step.Choice is { } choice && left.Count(other => other.Choice == choice) == 1 ? step with { Choice = null } : step)],
            Decoys = [.. procedure.Decoys, .. procedure.Steps.Where(step => gone.ContainsKey(step.Id)).Select(step => DecoyOf(step, gone[step.Id]))],
            Rules = [.. procedure.Rules.Select(rule => Left(rule, gone)).OfType<Rule>()],
            Mirror = procedure.Mirror is { } mirror ? mirror with { Pairs = [.. mirror.Pairs.Where(pair => !gone.ContainsKey(pair.Mine))] } : null,
        };
    }

    /// <summary>
    /// Whether the job can be done without a step: it is optional, or another member of its one-of group exists for the
    /// kind of vehicle that can be done.
    /// </summary>
    /// <param name="procedure">The procedure.</param>
    /// <param name="step">The step.</param>
    /// <param name="absent">All steps that cannot be done.</param>
    /// <param name="kind">The kind of vehicle; null where the procedure tells none apart.</param>
    public static bool CanBeSpared(this Procedure procedure, Step step, IReadOnlySet<StepId> absent, VariantId? kind)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        ArgumentNullException.ThrowIfNull(step);
        ArgumentNullException.ThrowIfNull(absent);
        return step.IsOptional
            || (step.Choice is { } choice && procedure.StepsFor(kind).Any(other => other.Choice == choice && !absent.Contains(other.Id)));
    }

    private static Decoy DecoyOf(Step step, AbsentStep absent) => new(step.Id, step.Do)
    {
        Because = absent.Because,
        Otherwise = absent.Otherwise,
        Stakes = step.Stakes,
        IsAbsentStep = true,
    };

    private static Rule? Left(Rule rule, Dictionary<StepId, AbsentStep> gone)
    {
        switch (rule)
        {
            case OrderRule order when order.First.Concat(order.Then).Any(gone.ContainsKey):
                StepId[] first = [.. order.First.Where(id => !gone.ContainsKey(id))];
                StepId[] then = [.. order.Then.Where(id => !gone.ContainsKey(id))];
                return first.Length == 0 || then.Length == 0 ? null : order with { First = first, Then = then };
            case StateRule state when gone.ContainsKey(state.Step):
                return null;
            default:
                return rule;
        }
    }
}
