using Training.Sequencing.Procedures;

namespace Training.Sequencing.Tests.Generating;

/// <summary>What an author does to a procedure from one revision to the next. What would not be sound is not done.</summary>
internal static class RandomRevision
{
    public static Procedure Of(Procedure procedure, Random random)
    {
        for (var changes = random.Next(1, 5); changes > 0; changes--)
        {
            var changed = Changed(procedure, random);
            if (ProcedureCheck.Problems(changed).Count == 0) procedure = changed;
        }

        return procedure;
    }

    private static Procedure Changed(Procedure procedure, Random random)
    {
        var (steps, rules) = (procedure.Steps, procedure.Rules);
        var step = steps[random.Next(steps.Count)];
        var rule = rules.Count == 0 ? null : rules[random.Next(rules.Count)];
        return random.Next(15) switch
        {
            0 or 1 when rule is not null => procedure with { Rules = [.. rules.Where(other => other != rule)] },
            2 or 3 => procedure with { Rules = [.. rules, Forward(procedure, random)] },
            4 => Without(procedure, step.Id),
            5 => procedure with { Steps = [.. steps.Take(steps.Count / 2), new(new("new"), "Do the new one") { IsOptional = random.Next(2) == 0 }, .. steps.Skip(steps.Count / 2)] },
            6 => With(procedure, step, step with { IsOptional = !step.IsOptional, Choice = null }),
            7 => With(procedure, step, step with { Do = step.Do + "!" }),
            8 => With(procedure, step, step with { Stakes = new(Harm.People, Severity.Critical), Takes = Duration.FromSeconds(7) }),
            9 when rule is not null => procedure with { Rules = [.. rules.Select(other => other == rule ? rule with { Because = "It must be." } : other)] },
            10 when rule is OrderRule order => procedure with { Rules = [.. rules.Select(other => other == rule ? order with { First = order.Then, Then = order.First } : other)] },
            13 or 14 => WithChoice(procedure, random),
            11 => procedure with { Decoys = procedure.Decoys.Count > 0 ? [] : [new(new("bad"), "Never do this")] },
            _ => procedure with { Steps = Swapped(steps, random), Revision = procedure.Revision + 1 },
        };
    }

    private static OrderRule Forward(Procedure procedure, Random random)
    {
        var (a, b) = (random.Next(procedure.Steps.Count), random.Next(procedure.Steps.Count));
        return new(new($"n{procedure.Rules.Count}-{random.Next(100)}"), [procedure.Steps[Math.Min(a, b)].Id], [procedure.Steps[Math.Max(a, b)].Id]);
    }

    /// <summary>Two new ways of which one is done, each with a place of its own between the other steps.</summary>
    private static Procedure WithChoice(Procedure procedure, Random random)
    {
        var half = procedure.Steps.Count / 2;
        var (early, late) = (procedure.Steps.Take(half).ToArray(), procedure.Steps.Skip(half).ToArray());
        Step[] ways = [.. Enumerable.Range(0, 2).Select(way => new Step(new($"way{way}"), $"Do it this way: {way}") { Choice = new("way") })];
        return procedure with
        {
            Steps = [.. early, .. ways, .. late],
            Rules =
            [
                .. procedure.Rules,
                .. ways.SelectMany((way, w) => new[] { (One(early), way), (way, One(late)) }.Where(pair => pair.Item1 is not null && pair.Item2 is not null)
                    .Select((pair, p) => new OrderRule(new($"w{w}-{p}"), [pair.Item1!.Id], [pair.Item2!.Id]))),
            ],
        };

        Step? One(Step[] steps) => steps.Length == 0 ? null : steps[random.Next(steps.Length)];
    }

    private static Procedure Without(Procedure procedure, StepId gone) => procedure with
    {
        Steps = [.. procedure.Steps.Where(step => step.Id != gone)],
        Rules = [.. procedure.Rules.Where(rule => rule switch
        {
            OrderRule order => !order.First.Contains(gone) && !order.Then.Contains(gone),
            StateRule state => state.Step != gone,
            _ => true,
        })],
    };

    private static Procedure With(Procedure procedure, Step step, Step changed) =>
        procedure with { Steps = [.. procedure.Steps.Select(other => other == step ? changed : other)] };

    private static IReadOnlyList<Step> Swapped(IReadOnlyList<Step> steps, Random random)
    {
        var swapped = steps.ToArray();
        var (a, b) = (random.Next(steps.Count), random.Next(steps.Count));
        (swapped[a], swapped[b]) = (swapped[b], swapped[a]);
        return swapped;
    }
}
