using Training.Content.Procedures;
using Training.Sequencing.Procedures;

namespace Training.Content.Scenarios;

/// <summary>What is right in a scenario: its procedure without the steps that cannot be done in it.</summary>
public static class ScenarioJobs
{
    /// <summary>
    /// The procedure as it is judged by in a scenario, in every language. What cannot be done is a decoy: what it says is
    /// the procedure's text, why it cannot be done is the scenario's. The file stays that of the procedure.
    /// </summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="written">Its procedure.</param>
    public static WrittenProcedure JobOf(this Scenario scenario, WrittenProcedure written)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(written);
        if (scenario.Absent.Count == 0) return written;
        return written with
        {
            Procedure = written.Procedure.Without(scenario.Absent),
            Translations = [.. written.Translations.Select(texts => texts with { Procedure = texts.Procedure.Without(scenario.In(texts.Language).Absent) })],
        };
    }

    /// <summary>Names what is absent with its texts, for whoever keeps things by it: two scenarios with one name have one job.</summary>
    /// <param name="absent">The steps that cannot be done.</param>
    public static string KeyOf(IReadOnlyList<AbsentStep> absent)
    {
        ArgumentNullException.ThrowIfNull(absent);
        return absent.Count == 0 ? "" : string.Join('\0', absent.SelectMany(step => new[] { step.Id.Value, step.Because, step.Otherwise }));
    }
}
