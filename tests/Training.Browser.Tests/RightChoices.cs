using System.Globalization;
using Training.Content;
using Training.Content.Scenarios;
using Training.Sequencing;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Browser.Tests;

/// <summary>
/// What a technician who knows the trade chooses of the options that stand on a page: worked out from the rules of the
/// procedure by grading, never from how the question was drawn.
/// </summary>
public sealed class RightChoices
{
    private readonly Procedure procedure;
    private readonly Grader grader;

    public RightChoices(ContentLibrary library, Scenario scenario)
    {
        procedure = library.JobOf(scenario)!.Procedure;
        grader = Grader.For(procedure, scenario.Variant).Value;
    }

    /// <summary>The places, from 0, of the options that are right; the first of them is enough where one is asked for.</summary>
    /// <param name="asked">The question as it is asked.</param>
    /// <param name="done">What is done before.</param>
    /// <param name="about">What is done now or waited with, if anything.</param>
    /// <param name="then">What is done after the wait.</param>
    /// <param name="options">The options.</param>
    public IReadOnlyList<int> Of(
        string asked, IReadOnlyList<string> done, string? about, IReadOnlyList<string> then, IReadOnlyList<string> options) => asked switch
        {
            "Where does it first go wrong?" => [FirstFault(options)],
            "Which of these may be done now? Choose all that may." => Next(done, options),
            "How long must the wait be at least?" => [Wait(done, about!, then, options)],
            "What can happen?" => [WhatIf(done, about!, options)],
            _ => throw new ArgumentOutOfRangeException(nameof(asked), asked, "Nobody asks like this."),
        };

    private int FirstFault(IReadOnlyList<string> order) =>
        Graded(order.Select(Entry)).Replay.First(entry => entry.Findings.Count > 0).Place - 1;

    private List<int> Next(IReadOnlyList<string> done, IReadOnlyList<string> options)
    {
        var start = done.Select(Entry).ToList();
        return [.. options.Index().Where(option => grader.CheckStart([.. start, Long(Entry(option.Item))]) is null).Select(option => option.Index)];
    }

    private int Wait(IReadOnlyList<string> done, string about, IReadOnlyList<string> then, IReadOnlyList<string> options)
    {
        var times = options.Select(Seconds).ToList();
        var enough = times.Where(time => Graded([.. done.Select(Entry), Entry(about) with { Stated = time }, .. then.Select(Entry)])
            .Findings.All(finding => finding.Kind == FindingKind.Missing));
        return times.IndexOf(enough.Min());
    }

    private int WhatIf(IReadOnlyList<string> done, string about, IReadOnlyList<string> options)
    {
        List<Entry> begun = [.. done.Select(Entry), Entry(about)];
        var rest = Graded(begun).Nearest.Where(entry => begun.All(other => other.Step != entry.Step));
        var verdict = Graded([.. begun, .. rest]);
        var told = verdict.Replay[begun.Count - 1].Findings.Select(finding => verdict.Findings[finding].Subject).Select(Otherwise).ToList();
        return options.ToList().FindIndex(option => told.Contains(option));
    }

    private Verdict Graded(IEnumerable<Entry> entries) => grader.Grade(new([.. entries])).Value;

    private Entry Long(Entry entry) =>
        procedure.Steps.Any(step => step.Id == entry.Step && step.IsWait) ? entry with { Stated = Duration.FromSeconds(100_000) } : entry;

    private Entry Entry(string text)
    {
        if (Find(text) is { } id) return new(id);
        var bracket = text.LastIndexOf(" (", StringComparison.Ordinal);
        return new(Find(text[..bracket])!.Value) { Stated = Seconds(text[(bracket + 2)..^1]) };
    }

    private StepId? Find(string text) => procedure.Steps.FirstOrDefault(step => step.Do == text)?.Id
        ?? procedure.Decoys.FirstOrDefault(decoy => decoy.Do == text)?.Id;

    private string? Otherwise(string subject) => procedure.Rules.FirstOrDefault(rule => rule.Id.Value == subject)?.Otherwise
        ?? procedure.Decoys.FirstOrDefault(decoy => decoy.Id.Value == subject)?.Otherwise;

    private static Duration Seconds(string text) =>
        Duration.FromSeconds(decimal.Parse(text.Replace("s", "", StringComparison.Ordinal).Trim(), CultureInfo.InvariantCulture));
}
