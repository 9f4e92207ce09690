using Training.Sequencing.Answers;
using Training.Sequencing.Findings;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Mending;

/// <summary>The smallest mend of an answer and the mended answer itself.</summary>
internal sealed record LeastMend(Mend Mend, int Kept, IReadOnlyList<Entry> Nearest)
{
    public static LeastMend Of(Attempt attempt, bool isAccepted) =>
        isAccepted
            ? new(Mend.None, attempt.ToDo, OrderAlone(attempt.Reading))
            : Mended(attempt);

    private static LeastMend Mended(Attempt attempt)
    {
        var kept = KeptEntries.Of(attempt);
        var moved = Moved(attempt, kept);
        var missing = Missing(attempt);
        var order = NearestOrder.Of(attempt, kept.IsKept, moved, missing);
        var nearest = new Entry[order.Slots.Length];
        var waits = Timed(attempt, order, nearest);
        var mend = new Mend
        {
            Moves = Array.ConvertAll(moved, place => attempt.Layout.IdOf(attempt.Reading.Entries[place])),
            Drop = Dropped(attempt, kept, moved),
            Add = Array.ConvertAll(missing, attempt.Layout.IdOf),
            Waits = waits,
        };
        return new(mend, kept.Count, nearest);
    }

    private static IReadOnlyList<Entry> OrderAlone(Reading reading) =>
        reading.IsObserved ? [.. reading.Answer.Entries.Select(entry => new Entry(entry.Step))] : reading.Answer.Entries;

    /// <summary>Of every step that is there but of which no entry is kept, the first entry.</summary>
    private static int[] Moved(Attempt attempt, KeptEntries kept)
    {
        if (kept.Distinct == kept.Count) return [];
        var entries = attempt.Reading.Entries;
        var stays = new bool[attempt.Layout.StepCount];
        for (var e = 0; e < entries.Length; e++)
            if (kept.IsKept[e]) stays[entries[e]] = true;
        var moved = new int[kept.Distinct - kept.Count];
        var count = 0;
        for (var e = 0; e < entries.Length; e++)
        {
            if (!attempt.IsCandidate(e) || stays[entries[e]]) continue;
            stays[entries[e]] = true;
            moved[count++] = e;
        }

        return moved;
    }

    private static int[] Missing(Attempt attempt)
    {
        List<int>? missing = null;
        for (var s = 0; s < attempt.Layout.StepCount; s++)
            if (attempt.Plan.Steps.Has(s) && attempt.FirstPlaceOf(s) == Attempt.Nowhere) (missing ??= []).Add(s);
        return missing is null ? [] : [.. missing];
    }

    private static IReadOnlyList<int> Dropped(Attempt attempt, KeptEntries kept, int[] moved)
    {
        List<int>? dropped = null;
        for (var e = 0; e < kept.IsKept.Length; e++)
            if (!kept.IsKept[e] && Array.BinarySearch(moved, e) < 0) (dropped ??= []).Add(e + 1);
        return dropped is null ? [] : dropped;
    }

    /// <summary>
    /// Makes the entries of the nearest order and says which waits must be longer. What is put elsewhere or added in an
    /// observed run was never timed, so its nearest order has no times at all.
    /// </summary>
    private static IReadOnlyList<Wait> Timed(Attempt attempt, NearestOrder order, Entry[] nearest)
    {
        var isObserved = attempt.Reading.IsObserved;
        var least = attempt.Layout.Gaps.Length > 0 ? LeastWaits.Of(attempt, order) : null;
        List<Wait>? waits = null;
        for (var s = 0; s < nearest.Length; s++)
        {
            var (step, place, _) = order.Slots[s];
            var entry = place >= 0 && !isObserved ? attempt.Reading.Answer.Entries[place] : new Entry(attempt.Layout.IdOf(step));
            if (least?.IsLonger(s) == true)
            {
                var length = Duration.OnClock(least.Lengths[s]);
                if (!isObserved) entry = entry with { Stated = length };
                (waits ??= []).Add(new(entry.Step, length));
            }

            if (least?.HeldOff(s) > 0) (waits ??= []).Add(new(entry.Step, Duration.OnClock(least.HeldOff(s))));

            nearest[s] = entry;
        }

        return waits is null ? [] : waits;
    }
}
