using Training.Sequencing.Procedures;

namespace Training.Sequencing.Tests.Generating;

/// <summary>
/// Random procedures with everything that a procedure can have. Rules run forward in the listing and states are what
/// the listing makes them, so that most are sound; rules that the engine still complains of are taken out.
/// </summary>
internal static class RandomProcedure
{
    private static readonly VariantId[] Vehicles = [new("va"), new("vb")];

    public static (Procedure Procedure, Grader Grader) Of(int size, ulong seed)
    {
        var random = new Random(seed.GetHashCode());
        var procedure = new Procedure(new("random"), "Random", 1)
        {
            Variants = random.Next(3) == 0 ? Vehicles : [],
            Facts = [.. Enumerable.Range(0, random.Next(3)).Select(Fact)],
        };
        var steps = Steps(procedure, size, random);
        procedure = procedure with
        {
            Steps = steps,
            Decoys = random.Next(2) == 0 ? [] : [new(new("bad"), "Never do this") { Stakes = Stakes(random) }],
        };
        procedure = procedure with { Rules = [.. Rules(procedure, random).Select((rule, r) => rule with { Id = new($"r{r}"), Stakes = Stakes(random) })] };
        VariantId? variant = procedure.Variants.Count == 0 ? null : procedure.Variants[random.Next(2)];
        return Sound(procedure, variant);
    }

    private static (Procedure, Grader) Sound(Procedure procedure, VariantId? variant)
    {
        for (var round = 0; round < 200; round++)
        {
            var problems = ProcedureCheck.Problems(procedure);
            if (problems.Count == 0) return (procedure, Grader.For(procedure, variant).Value);
            var subjects = problems.Select(problem => problem.Subject).ToHashSet();
            procedure = procedure with
            {
                Rules = [.. procedure.Rules.Where(rule => !Complained(rule, subjects))],
                Steps = [.. procedure.Steps.Select(step =>
                    subjects.Contains(new(SubjectKind.Step, step.Id.Value)) ? step with { Sets = [], Choice = null } : step)],
            };
        }

        throw new InvalidOperationException("The random procedure could not be made sound.");
    }

    private static bool Complained(Rule rule, HashSet<ProblemSubject> subjects) =>
        subjects.Contains(new(SubjectKind.Rule, rule.Id.Value))
        || rule is StateRule state
            && state.OnlyWhile.Any(setting => subjects.Contains(new(SubjectKind.Fact, setting.Fact.Value)));

    private static Fact Fact(int f) => new(new($"f{f}"), [new("x"), new("y"), new("z")]);

    private static Step[] Steps(Procedure procedure, int size, Random random)
    {
        var steps = new Step[size];
        for (var s = 0; s < size; s++)
        {
            var kind = random.Next(12);
            steps[s] = new(new($"s{s}"), $"Do {s}")
            {
                Stakes = Stakes(random),
                IsWait = kind is 0 or 1,
                IsOptional = kind == 2 || kind == 0 && random.Next(4) == 0,
                Choice = kind == 3 ? new ChoiceId($"g{random.Next(1 + (size / 8))}") : null,
                Takes = kind > 1 && random.Next(3) == 0 ? Duration.FromSeconds(random.Next(1, 60)) : Duration.Zero,
                Variants = s > 0 && procedure.Variants.Count > 0 && random.Next(6) == 0 ? [Vehicles[random.Next(2)]] : [],
                Sets = kind > 7 && procedure.Facts.Count > 0 ? [Setting(procedure, random)] : [],
            };
        }

        return steps;
    }

    private static FactSetting Setting(Procedure procedure, Random random)
    {
        var fact = procedure.Facts[random.Next(procedure.Facts.Count)];
        return new(fact.Id, fact.Values[random.Next(2)]);
    }

    private static IEnumerable<Rule> Rules(Procedure procedure, Random random)
    {
        var steps = procedure.Steps;
        var density = random.Next(1, 6);
        for (var a = 0; a < steps.Count; a++)
        {
            for (var b = a + 1; b < steps.Count; b++)
            {
                if (random.Next(steps.Count) >= density) continue;
                var third = random.Next(b, steps.Count);
                StepId[] then = third == b || random.Next(3) > 0 ? [steps[b].Id] : [steps[b].Id, steps[third].Id];
                yield return new OrderRule(new("r"), [steps[a].Id], then);
            }
        }

        foreach (var fact in procedure.Facts)
        {
            foreach (var (one, next) in Neighbours(steps, fact))
                yield return new OrderRule(new("r"), [one.Id], [next.Id]);
            foreach (var rule in Needs(steps, fact, random)) yield return rule;
        }

        for (var w = 1; w + 1 < steps.Count; w++)
        {
            if (random.Next(5) > 0 && !steps[w].IsWait) continue;
            var (a, b) = (random.Next(w), random.Next(w + 1, steps.Count));
            yield return new OrderRule(new("r"), [steps[a].Id], [steps[w].Id]);
            yield return new OrderRule(new("r"), [steps[w].Id], [steps[b].Id]);
            yield return new OrderRule(new("r"), [steps[a].Id], [steps[b].Id])
            {
                AtLeast = Duration.FromSeconds(random.Next(1, 90)),
            };
        }
    }

    private static IEnumerable<(Step, Step)> Neighbours(IReadOnlyList<Step> steps, Fact fact)
    {
        var setters = steps.Where(step => step.Sets.Any(setting => setting.Fact == fact.Id)).ToArray();
        return setters.Zip(setters.Skip(1));
    }

    private static IEnumerable<Rule> Needs(IReadOnlyList<Step> steps, Fact fact, Random random)
    {
        var value = fact.Values[0];
        Step? setter = null;
        foreach (var step in steps)
        {
            if (random.Next(3) == 0)
            {
                yield return new StateRule(new("r"), step.Id, [new(fact.Id, value)]);
                if (setter is not null && random.Next(2) == 0)
                    yield return new OrderRule(new("r"), [setter.Id], [step.Id]);
            }

            foreach (var setting in step.Sets.Where(setting => setting.Fact == fact.Id))
                (value, setter) = (setting.Value, step);
        }
    }

    private static Stakes Stakes(Random random) => new((Harm)random.Next(4), (Severity)random.Next(3));
}
