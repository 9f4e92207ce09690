using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Comparing;

/// <summary>Parts of the sentences about changes.</summary>
internal static class ChangeWords
{
    /// <summary>How bad something is, in the same words as beside a finding.</summary>
    public static Sentence Of(Stakes stakes) => (stakes.Harm, stakes.Severity) switch
    {
        (Harm.People, Severity.Critical) => "can kill or maim",
        (Harm.People, Severity.Serious) => "can hurt somebody badly",
        (Harm.People, _) => "can hurt somebody",
        (Harm.Equipment, Severity.Critical) => "can destroy the vehicle",
        (Harm.Equipment, Severity.Serious) => "ruins costly parts",
        (Harm.Equipment, _) => "damages parts",
        (Harm.Environment, Severity.Minor) => "a small spill",
        (Harm.Environment, Severity.Critical) => "a grave spill",
        (Harm.Environment, _) => "a spill",
        (_, Severity.Critical) => "the whole job again",
        (_, Severity.Serious) => "work to do again",
        _ => "a little work to do again",
    };

    /// <summary>What a rule asks, without its reasons.</summary>
    public static Sentence Of(Rule rule, Procedure procedure)
    {
        if (rule is StateRule state) return $"{Names([state.Step], procedure)} only while {All(state.OnlyWhile)}";
        var order = (OrderRule)rule;
        if (order.AtLeast is { } time)
            return $"{Names(order.First, procedure)} before {Names(order.Then, procedure)}, with at least {new SpokenTime(time.Seconds)} between";
        return $"{Names(order.First, procedure)} before {Names(order.Then, procedure)}";
    }

    /// <summary>Settings one behind the other.</summary>
    public static Sentence All(IReadOnlyList<FactSetting> settings) =>
        settings.Count == 0 ? "nothing" : settings.Select(One).Aggregate(Both);

    /// <summary>Kinds of vehicle one behind the other; none means all of them.</summary>
    public static Sentence Vehicles(IReadOnlyList<VariantId> variants) =>
        variants.Count == 0 ? "every vehicle" : string.Join(", ", variants);

    /// <summary>Steps by their words.</summary>
    public static StepNames Names(IEnumerable<StepId> steps, Procedure procedure) =>
        new([.. steps.Select(id => new StepName(id, procedure.Steps.FirstOrDefault(step => step.Id == id)?.Do ?? id.Value))]);

    private static Sentence One(FactSetting setting) => $"{setting.Fact} is {new FactState(setting.Fact, setting.Value)}";

    private static Sentence Both(Sentence first, Sentence second) => $"{first} and {second}";
}
