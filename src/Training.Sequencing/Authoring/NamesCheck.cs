using Training.Sequencing.Procedures;

namespace Training.Sequencing.Authoring;

/// <summary>The law: every name is there, stands once, and means something; what is senseless in itself is not written.</summary>
internal sealed class NamesCheck
{
    private const int MostSteps = 5_000;
    private readonly Procedure procedure;
    private readonly ProblemList problems;
    private readonly HashSet<StepId> steps;
    private readonly HashSet<StepId> decoys;
    private readonly Dictionary<FactId, Fact> facts = [];

    private NamesCheck(Procedure procedure, ProblemList problems)
    {
        (this.procedure, this.problems) = (procedure, problems);
        steps = [.. procedure.Steps.Select(step => step.Id)];
        decoys = [.. procedure.Decoys.Select(decoy => decoy.Id)];
    }

    public static void Find(Procedure procedure, ProblemList problems)
    {
        if (procedure.Steps.Count + procedure.Decoys.Count > MostSteps)
        {
            problems.Add(AuthoringCodes.TooMuch,
                $"A procedure has at most {MostSteps} steps and decoys.", ProblemSubject.Procedure);
            return;
        }

        var check = new NamesCheck(procedure, problems);
        check.Variants();
        check.Facts();
        check.Steps();
        check.Choices();
        check.Decoys();
        check.Rules();
    }

    private void Variants()
    {
        Distinct(procedure.Variants.Select(variant => variant.Value), SubjectKind.Procedure, "vehicle");
    }

    private void Facts()
    {
        Distinct(procedure.Facts.Select(fact => fact.Id.Value), SubjectKind.Fact, "fact");
        foreach (var fact in procedure.Facts)
        {
            facts.TryAdd(fact.Id, fact);
            if (fact.Values.Count == 0)
                problems.Add(AuthoringCodes.EmptyList, $"Fact “{fact.Id}” has no values.", SubjectKind.Fact, fact.Id.Value);
            foreach (var value in Twice(fact.Values))
                problems.Add(AuthoringCodes.DuplicateId,
                    $"Fact “{fact.Id}” lists the value “{value}” twice.", SubjectKind.Fact, fact.Id.Value);
        }
    }

    private void Steps()
    {
        if (procedure.Steps.Count == 0)
            problems.Add(AuthoringCodes.NoSteps, "The procedure has no steps.", ProblemSubject.Procedure);
        Distinct(
            procedure.Steps.Select(step => step.Id.Value).Concat(procedure.Decoys.Select(decoy => decoy.Id.Value)),
            SubjectKind.Step, "step or decoy");
        foreach (var step in procedure.Steps)
        {
            var subject = new ProblemSubject(SubjectKind.Step, step.Id.Value);
            Said(step.Do, $"Step “{step.Id}” does not say what to do.", subject);
            foreach (var variant in step.Variants.Where(variant => !procedure.Variants.Contains(variant)))
                problems.Add(AuthoringCodes.UnknownVariant,
                    $"Step “{step.Id}” is for a vehicle “{variant}” that the procedure does not list.", subject);
            foreach (var variant in Twice(step.Variants))
                problems.Add(AuthoringCodes.NamedTwice, $"Step “{step.Id}” names “{variant}” twice.", subject);
            if (step.IsWait && step.Takes > Duration.Zero)
                problems.Add(AuthoringCodes.WaitTakesTime,
                    $"Step “{step.Id}” is a wait, whose time the technician states; it takes no time of its own.", subject);
            if (step.IsOptional && step.Choice is not null)
                problems.Add(AuthoringCodes.OptionalChoice,
                    $"Step “{step.Id}” is one of a group and optional, too; it can be one of them only.", subject);
            Settings(step.Sets, $"Step “{step.Id}”", subject);
        }
    }

    private void Choices()
    {
        foreach (var group in procedure.Steps.Where(step => step.Choice is not null).GroupBy(step => step.Choice!.Value))
        {
            var first = group.First();
            var subject = new ProblemSubject(SubjectKind.Step, first.Id.Value);
            Said(group.Key.Value, $"Step “{first.Id}” is one of a group without a name.", subject);
        }
    }

    private void Decoys()
    {
        foreach (var decoy in procedure.Decoys)
            Said(decoy.Do, $"Decoy “{decoy.Id}” does not say what is done.", new(SubjectKind.Decoy, decoy.Id.Value));
    }

    private void Rules()
    {
        Distinct(procedure.Rules.Select(rule => rule.Id.Value), SubjectKind.Rule, "rule");
        foreach (var rule in procedure.Rules)
        {
            var subject = new ProblemSubject(SubjectKind.Rule, rule.Id.Value);
            switch (rule)
            {
                case OrderRule order:
                    Named(order.First, "first", order, subject);
                    Named(order.Then, "then", order, subject);
                    break;
                case StateRule state:
                    Named([state.Step], "step", state, subject);
                    if (state.OnlyWhile.Count == 0)
                        problems.Add(AuthoringCodes.EmptyList, $"Rule “{rule.Id}” names no fact.", subject);
                    Settings(state.OnlyWhile, $"Rule “{rule.Id}”", subject);
                    break;
            }
        }
    }

    private void Named(IReadOnlyList<StepId> ids, string key, Rule rule, ProblemSubject subject)
    {
        if (ids.Count == 0)
            problems.Add(AuthoringCodes.EmptyList, $"Rule “{rule.Id}” names no step under “{key}”.", subject);
        foreach (var id in Twice(ids))
            problems.Add(AuthoringCodes.NamedTwice, $"Rule “{rule.Id}” names “{id}” twice under “{key}”.", subject);
        foreach (var id in ids)
        {
            if (steps.Contains(id)) continue;
            if (decoys.Contains(id))
                problems.Add(AuthoringCodes.RuleOnDecoy,
                    $"Rule “{rule.Id}” names the decoy “{id}”; what is never right has no order.", subject);
            else
                problems.Add(AuthoringCodes.UnknownStep,
                    $"Rule “{rule.Id}” names a step “{id}” that the procedure does not have.", subject);
        }
    }

    private void Settings(IReadOnlyList<FactSetting> settings, string who, ProblemSubject subject)
    {
        foreach (var fact in Twice(settings.Select(setting => setting.Fact)))
            problems.Add(AuthoringCodes.NamedTwice, $"{who} names the fact “{fact}” twice.", subject);
        foreach (var setting in settings)
        {
            if (!facts.TryGetValue(setting.Fact, out var fact))
                problems.Add(AuthoringCodes.UnknownFact,
                    $"{who} names a fact “{setting.Fact}” that the procedure does not have.", subject);
            else if (!fact.Values.Contains(setting.Value))
                problems.Add(AuthoringCodes.UnknownValue,
                    $"{who} names “{setting.Value}”, which is no value of the fact “{setting.Fact}”.", subject);
        }
    }

    private void Distinct(IEnumerable<string> ids, SubjectKind kind, string what)
    {
        var all = ids.ToArray();
        foreach (var id in all.Where(string.IsNullOrWhiteSpace))
            problems.Add(AuthoringCodes.EmptyText, $"A {what} has no id.", kind, id ?? "");
        foreach (var id in Twice(all))
            problems.Add(AuthoringCodes.DuplicateId, $"The id “{id}” stands for more than one {what}.", kind, id);
    }

    private void Said(string? text, string sentence, ProblemSubject subject)
    {
        if (string.IsNullOrWhiteSpace(text)) problems.Add(AuthoringCodes.EmptyText, sentence, subject);
    }

    private static IEnumerable<T> Twice<T>(IEnumerable<T> all) =>
        all.GroupBy(one => one).Where(same => same.Count() > 1).Select(same => same.Key);
}
