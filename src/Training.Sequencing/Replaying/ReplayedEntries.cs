using System.Collections;
using Training.Sequencing.Findings;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Replaying;

/// <summary>
/// What happened at each entry of an answer, put into words when somebody looks: whoever only wants to know what is right
/// pays nothing for it. Threads that look at once make it twice, and alike.
/// </summary>
internal sealed class ReplayedEntries(Attempt attempt, FindingList findings) : IReadOnlyList<ReplayEntry>
{
    private ReplayEntry[]? entries;

    public int Count => attempt.Reading.Entries.Length;

    public ReplayEntry this[int index] => Entries[index];

    private ReplayEntry[] Entries => entries ??= Replayed();

    public IEnumerator<ReplayEntry> GetEnumerator() => ((IEnumerable<ReplayEntry>)Entries).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private ReplayEntry[] Replayed()
    {
        var replayed = new ReplayEntry[Count];
        var caused = findings.Count == 0 ? null : findings.ByCause(replayed.Length);
        int[]? values = null;
        FactSetting[] facts = [];
        for (var e = 0; e < replayed.Length; e++)
        {
            var after = attempt.Replay.ValuesAfter(e);
            if (!ReferenceEquals(after, values)) facts = attempt.Layout.Facts.Named(after);
            values = after;
            replayed[e] = new(
                e + 1,
                attempt.Layout.IdOf(attempt.Reading.Entries[e]),
                Duration.OnClock(attempt.Replay.StartsAt(e)),
                Duration.OnClock(attempt.Replay.EndsAt(e)),
                facts,
                caused is null ? [] : caused[e]);
        }

        return replayed;
    }
}
