using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;
using Training.Web.Drawings;

namespace Training.Web.Features.Shared;

/// <summary>A verdict as it is shown: the word, the replay, each finding with its sign, and the mend.</summary>
/// <param name="Procedure">What it was judged by.</param>
/// <param name="Answer">What was judged.</param>
/// <param name="Verdict">What the engine said.</param>
public sealed record VerdictView(Procedure Procedure, Answer Answer, Verdict Verdict)
{
    /// <summary>An id that no other verdict of the page has.</summary>
    public string Id { get; init; } = "verdict";

    /// <summary>The findings with their signs, in the order in which they are shown.</summary>
    public FindingsView Shown => new(Verdict.Findings, Procedure, Id);

    /// <summary>What a step or a decoy says.</summary>
    /// <param name="id">Which.</param>
    public string TextOf(StepId id) => Procedure.NameOf(id);

    /// <summary>Whether somebody watched the work at a vehicle, so that its times are real ones.</summary>
    public bool IsObserved => Answer.Entries.Any(entry => entry.Observed is not null);

    /// <summary>The steps of the mended order that stand elsewhere than before, are new, or wait longer.</summary>
    public IReadOnlySet<StepId> Changed =>
        Verdict.Mend.Moves.Concat(Verdict.Mend.Add).Concat(Verdict.Mend.Waits.Select(wait => wait.Step)).ToHashSet();

    /// <summary>The replay as plain data for the drawing.</summary>
    public ReplayPicture Replay()
    {
        var signs = Shown;
        var lanes = Procedure.Facts.Select(fact => new ReplayLane(
            fact.Called, fact.ValuesCalled, AtStart(fact))).ToList();
        var rows = Verdict.Replay.Select(entry => new ReplayRow(
            (entry.Place + Answer.Start.Count).ToString(System.Globalization.CultureInfo.InvariantCulture),
            TextOf(entry.Step) + Stated(entry.Place),
            ReplayDrawing.Clock(entry.StartsAt.Seconds),
            [.. Procedure.Facts.Select(fact => Index(fact, entry.Facts))],
            [.. entry.Findings.Select(signs.Mark).OrderBy(mark => mark.Number)])).ToList();
        var gaps = Verdict.Findings.Index().Where(item => item.Item.Kind == FindingKind.Missing)
            .Select(item => new ReplayGap(string.Join(" / ", item.Item.Steps.Select(TextOf)), signs.Mark(item.Index)))
            .OrderBy(gap => gap.Fault.Number).ToList();
        return new(lanes, rows, gaps);
    }

    private string Stated(int place) =>
        place >= 1 && place <= Answer.Entries.Count && LengthOf(Answer.Entries[place - 1]) is { } length ? $" ({length})" : "";

    // How long a wait was said to be or, at a vehicle, how long it was kept.
    private Duration? LengthOf(Entry entry) => entry.Stated
        ?? (entry.Observed is { } times && Procedure.Steps.Any(step => step.Id == entry.Step && step.IsWait)
            ? Duration.FromSeconds(decimal.Floor(times.FinishedAt.Seconds - times.StartedAt.Seconds))
            : null);

    private int AtStart(Fact fact)
    {
        var value = fact.Values[0];
        foreach (var entry in Answer.Start)
        {
            var sets = Procedure.Steps.FirstOrDefault(step => step.Id == entry.Step)?.Sets ?? [];
            foreach (var set in sets)
                if (set.Fact == fact.Id) value = set.Value;
        }

        return Math.Max(0, fact.Values.ToList().IndexOf(value));
    }

    private static int Index(Fact fact, IReadOnlyList<FactSetting> facts) =>
        Math.Max(0, fact.Values.ToList().IndexOf(facts.FirstOrDefault(setting => setting.Fact == fact.Id).Value));
}
