using Google.OrTools.Sat;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Tests.Generating;

namespace Training.Sequencing.Oracle.Tests;

/// <summary>
/// The mend as a constraint problem, stated straight from the rules: every step of the step set has a position, every
/// rule holds of the positions, and as many entries as can be keep the order in which they stand. Steps that nothing
/// puts in order may share a position. No closure, no matching.
/// </summary>
internal static class SolvedMend
{
    /// <summary>The proven optimum, or null where the work allowed to the solver ran out.</summary>
    public static int? Kept(Procedure procedure, RightOrders orders, Answer answer)
    {
        var model = new CpModel();
        var count = orders.Steps.Count;
        var positions = orders.Steps.ToDictionary(
            step => step.Id, step => model.NewIntVar(0, count - 1, step.Id.Value));
        foreach (var rule in procedure.Rules) Rule(model, procedure, orders, positions, rule);
        var entries = answer.Entries.Where(entry => positions.ContainsKey(entry.Step))
            .Select((entry, e) => (entry.Step, IsKept: model.NewBoolVar($"kept{e}"))).ToArray();
        for (var p = 0; p < entries.Length; p++)
        {
            for (var q = p + 1; q < entries.Length; q++)
            {
                if (entries[p].Step == entries[q].Step)
                    model.AddBoolOr([entries[p].IsKept.Not(), entries[q].IsKept.Not()]);
                else
                    model.Add(positions[entries[p].Step] < positions[entries[q].Step])
                        .OnlyEnforceIf([entries[p].IsKept, entries[q].IsKept]);
            }
        }

        model.Maximize(LinearExpr.Sum(entries.Select(entry => entry.IsKept)));
        var solver = new CpSolver { StringParameters = "num_workers:1,random_seed:1,max_deterministic_time:3" };
        return solver.Solve(model) == CpSolverStatus.Optimal ? (int)solver.ObjectiveValue : null;
    }

    private static void Rule(
        CpModel model, Procedure procedure, RightOrders orders, Dictionary<StepId, IntVar> positions, Rule rule)
    {
        if (rule is OrderRule order)
        {
            foreach (var first in order.First.Where(positions.ContainsKey))
                foreach (var then in order.Then.Where(positions.ContainsKey))
                    model.Add(positions[first] < positions[then]);
        }
        else if (rule is StateRule state && positions.ContainsKey(state.Step))
        {
            foreach (var setting in state.OnlyWhile) State(model, procedure, orders, positions, state.Step, setting);
        }
    }

    /// <summary>Just one stretch with the value holds the step: after the setter that opens it, before the next.</summary>
    private static void State(
        CpModel model,
        Procedure procedure,
        RightOrders orders,
        Dictionary<StepId, IntVar> positions,
        StepId step,
        FactSetting setting)
    {
        var needing = positions[step];
        var setters = orders.Steps.Where(other => other.Sets.Any(one => one.Fact == setting.Fact)).ToArray();
        var value = procedure.Facts.Single(fact => fact.Id == setting.Fact).Values[0];
        var stretches = new List<ILiteral>();
        for (var s = 0; s <= setters.Length; s++)
        {
            if (s > 0) value = setters[s - 1].Sets.Single(one => one.Fact == setting.Fact).Value;
            if (value != setting.Value) continue;
            var isHere = model.NewBoolVar("stretch");
            if (s > 0) model.Add(positions[setters[s - 1].Id] < needing).OnlyEnforceIf(isHere);
            if (s < setters.Length && setters[s].Id != step)
                model.Add(needing < positions[setters[s].Id]).OnlyEnforceIf(isHere);
            stretches.Add(isHere);
        }

        model.AddExactlyOne(stretches);
    }
}
