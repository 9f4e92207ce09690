using Training.Sequencing.Findings;
using Training.Sequencing.Ordering;

namespace Training.Sequencing.Mending;

/// <summary>
/// The largest set of entries that can stay in the order in which they stand while the rest is moved, dropped or added.
/// Entry p is before entry q in the sense of the relation when p stands before q and q's step is the same as p's or
/// must come before it; that is a partial order, and what can stay is a set without a related pair.
/// </summary>
internal sealed class KeptEntries
{
    private const int Few = 128;

    private KeptEntries(bool[] isKept, int count, int distinct) =>
        (IsKept, Count, Distinct) = (isKept, count, distinct);

    /// <summary>For every place of the answer whether its entry is kept.</summary>
    public bool[] IsKept { get; }

    /// <summary>How many are kept.</summary>
    public int Count { get; }

    /// <summary>How many different steps stand among the entries, without what is dropped for its own sake.</summary>
    public int Distinct { get; }

    public static KeptEntries Of(Attempt attempt)
    {
        var entries = attempt.Reading.Entries;
        var places = entries.Length <= Few ? stackalloc int[Few] : new int[entries.Length];
        var count = 0;
        var distinct = 0;
        for (var e = 0; e < entries.Length; e++)
        {
            if (!attempt.IsCandidate(e)) continue;
            places[count++] = e;
            if (attempt.FirstPlaceOf(entries[e]) == e) distinct++;
        }

        var isKept = new bool[entries.Length];
        if (Conflicts(attempt, places[..count]) is not { } conflicts)
        {
            for (var c = 0; c < count; c++) isKept[places[c]] = true;
            return new(isKept, count, distinct);
        }

        var matching = LargestMatching.Of(conflicts);
        var antichain = matching.Antichain();
        for (var c = 0; c < count; c++) isKept[places[c]] = antichain[c];
        return new(isKept, count - matching.Size, distinct);
    }

    /// <summary>The relation among the candidates; nothing where no two are related.</summary>
    private static BitRows? Conflicts(Attempt attempt, ReadOnlySpan<int> places)
    {
        BitRows? conflicts = null;
        var entries = attempt.Reading.Entries;
        for (var p = 0; p < places.Length; p++)
        {
            var step = entries[places[p]];
            var before = attempt.Plan.Before.Row(step);
            for (var q = p + 1; q < places.Length; q++)
            {
                var later = entries[places[q]];
                if (later != step && (before[later >> 6] >> later & 1) == 0) continue;
                (conflicts ??= new(places.Length, places.Length)).Set(p, q);
            }
        }

        return conflicts;
    }
}
