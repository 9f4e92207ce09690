using Training.Sequencing.Findings;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Mending;

/// <summary>
/// What an observed run should have waited: for every gap that was too short, in the order in which the later steps
/// stood, what was missing is added to the last wait step inside it; where none stood inside, the later step itself is
/// to be held off. So a run that was only too soon still has something to mend.
/// </summary>
internal static class ObservedWaits
{
    public static IReadOnlyList<Wait> Of(Attempt attempt)
    {
        var layout = attempt.Layout;
        var entries = attempt.Reading.Entries;
        var longer = new decimal[entries.Length];
        var later = new decimal[entries.Length];
        var gaps = layout.Gaps.Where(gap => IsShort(attempt, gap.First, gap.Then))
            .OrderBy(gap => attempt.FirstPlaceOf(gap.Then));
        foreach (var gap in gaps)
        {
            var first = attempt.FirstPlaceOf(gap.First);
            var then = attempt.FirstPlaceOf(gap.Then);
            var length = attempt.Replay.StartsAt(then) - attempt.Replay.EndsAt(first) + later[then];
            var wait = -1;
            for (var e = then - 1; e > Math.Max(first, -1); e--)
            {
                length += longer[e] + later[e];
                if (wait < 0 && attempt.Roles[e] == Role.Step && layout.IsWait(entries[e])) wait = e;
            }

            var missing = gap.AtLeast!.Value - length;
            if (missing > 0 && wait >= 0) longer[wait] += missing;
            else if (missing > 0) later[then] += missing;
        }

        var waits = new List<Wait>();
        for (var e = 0; e < entries.Length; e++)
        {
            var lasted = attempt.Replay.EndsAt(e) - attempt.Replay.StartsAt(e);
            if (longer[e] > 0) waits.Add(new(layout.IdOf(entries[e]), Duration.OnClock(lasted + longer[e])));
            if (later[e] > 0) waits.Add(new(layout.IdOf(entries[e]), Duration.OnClock(later[e])));
        }

        return waits;
    }

    private static bool IsShort(Attempt attempt, int first, int then)
    {
        var thenPlace = attempt.FirstPlaceOf(then);
        return thenPlace is >= 0 and not Attempt.Nowhere && attempt.FirstPlaceOf(first) < thenPlace
            && !attempt.Layout.AreAlternatives(first, then);
    }
}
