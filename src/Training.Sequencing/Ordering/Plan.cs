using Training.Sequencing.Layouts;

namespace Training.Sequencing.Ordering;

/// <summary>
/// The order behind the rules for one step set: the transitive closure of every <c>first</c>/<c>then</c> pair and of
/// every pair that an <c>only-while</c> comes down to.
/// </summary>
internal sealed class Plan
{
    private Plan(StepSet steps, BitRows after)
    {
        Steps = steps;
        StepCount = steps.Count;
        After = after;
        Before = Closure.Turned(after);
    }

    /// <summary>The step set.</summary>
    public StepSet Steps { get; }

    /// <summary>How many steps are in the set.</summary>
    public int StepCount { get; }

    /// <summary>For every step the steps that must come after it.</summary>
    public BitRows After { get; }

    /// <summary>For every step the steps that must come before it.</summary>
    public BitRows Before { get; }

    /// <summary>Makes the plan of a step set, or says why there is none.</summary>
    public static Plan? TryMake(Layout layout, StepSet steps, out PlanFault? fault)
    {
        var pairs = OrderPair.Of(layout, steps);
        while (true)
        {
            var after = Closure.Of(pairs, layout.StepCount);
            for (var s = 0; s < layout.StepCount; s++)
            {
                if (!after[s, s]) continue;
                fault = new PlanFault.Loop(ShortestLoop.Of(pairs, layout.StepCount));
                return null;
            }

            var settled = pairs.Count;
            fault = Settle(layout, steps, after, pairs);
            if (pairs.Count > settled) continue;
            return fault is null ? new(steps, after) : null;
        }
    }

    /// <summary>Turns every need that has just one stretch left into pairs; the fault is what is still open.</summary>
    private static PlanFault? Settle(Layout layout, StepSet steps, BitRows after, List<OrderPair> pairs)
    {
        PlanFault? fault = null;
        foreach (var need in layout.Needs)
        {
            if (!steps.Has(need.Step)) continue;
            foreach (var setting in need.Settings)
            {
                var stretches = StateStretches.TryCut(layout, steps, after, setting.Fact, out var unordered);
                if (stretches is null)
                {
                    fault ??= new PlanFault.SettersUnordered(need, setting.Fact, unordered.Item1, unordered.Item2);
                    continue;
                }

                var standing = stretches.Place(need.Step, setting.Value, after);
                switch (standing.Kind)
                {
                    case StandingKind.Impossible:
                        return new PlanFault.StateImpossible(need, setting);
                    case StandingKind.Open:
                        fault ??= new PlanFault.StateOpen(need, setting, stretches.Stretches);
                        break;
                    case StandingKind.Settled:
                        Bound(need, standing.Stretch, after, pairs);
                        break;
                }
            }
        }

        return fault;
    }

    private static void Bound(Need need, Stretch stretch, BitRows after, List<OrderPair> pairs)
    {
        // The default stretch (both ends 0) stands for a setter in the chain itself, which needs no new pair.
        if (stretch == default) return;
        if (stretch.Opener >= 0 && !after[stretch.Opener, need.Step]) pairs.Add(new(stretch.Opener, need.Step, need.Rule));
        if (stretch.Ender >= 0 && !after[need.Step, stretch.Ender]) pairs.Add(new(need.Step, stretch.Ender, need.Rule));
    }
}

/// <summary>Why a step set has no plan.</summary>
internal abstract record PlanFault
{
    /// <summary>The rules run in a circle.</summary>
    public sealed record Loop(IReadOnlyList<OrderPair> Pairs) : PlanFault;

    /// <summary>Two steps set a needed fact, and no rule says which comes first.</summary>
    public sealed record SettersUnordered(Need Need, int Fact, int One, int Other) : PlanFault;

    /// <summary>A step could stand in several stretches with the value that it needs.</summary>
    public sealed record StateOpen(Need Need, Setting Setting, Stretch[] Stretches) : PlanFault;

    /// <summary>A step can stand in no stretch with the value that it needs.</summary>
    public sealed record StateImpossible(Need Need, Setting Setting) : PlanFault;
}
