using Training.Sequencing.Findings;
using Training.Sequencing.Layouts;

namespace Training.Sequencing.Mending;

/// <summary>
/// How long the waits of the nearest order must be: rule by rule in the order in which the later steps stand, what is
/// missing of a gap is added to the last wait step inside it. As every gap that ends later also holds that wait or
/// starts after it, no other choice adds less in all.
/// </summary>
internal sealed class LeastWaits
{
    private readonly Attempt attempt;
    private readonly NearestOrder order;
    private readonly decimal[] lengths;
    private readonly decimal[] heldOff;
    private readonly decimal[] endsAt;
    private readonly int[] slotOf;

    private LeastWaits(Attempt attempt, NearestOrder order)
    {
        (this.attempt, this.order) = (attempt, order);
        var slots = order.Slots;
        lengths = new decimal[slots.Length];
        heldOff = new decimal[slots.Length];
        endsAt = new decimal[slots.Length];
        slotOf = new int[attempt.Layout.StepCount];
        Array.Fill(slotOf, -1);
        for (var s = 0; s < slots.Length; s++)
        {
            slotOf[slots[s].Step] = s;
            lengths[s] = StatedLength(s);
        }
    }

    /// <summary>For every slot of the nearest order how long it lasts.</summary>
    public ReadOnlySpan<decimal> Lengths => lengths;

    /// <summary>
    /// For every slot how much longer it must be held off where no wait stands inside the gap before it. A procedure
    /// without a remark and a start that is possible never come to this.
    /// </summary>
    public ReadOnlySpan<decimal> HeldOff => heldOff;

    public static LeastWaits Of(Attempt attempt, NearestOrder order)
    {
        var waits = new LeastWaits(attempt, order);
        waits.Stretch();
        return waits;
    }

    private decimal StatedLength(int slot)
    {
        var (step, place, _) = order.Slots[slot];
        var layout = attempt.Layout;
        if (!layout.IsWait(step)) return layout.Takes[step];
        return place < 0 ? 0 : attempt.Reading.Answer.Entries[place].Stated?.Seconds ?? 0;
    }

    private void Stretch()
    {
        var gaps = GapsByLaterSlot();
        var clock = attempt.Replay.StartDoneAt;
        var next = 0;
        for (var s = 0; s < lengths.Length; s++)
        {
            for (; next < gaps.Length && slotOf[gaps[next].Then] == s; next++) clock += Fill(gaps[next], s, clock);
            clock += lengths[s];
            endsAt[s] = clock;
        }
    }

    /// <summary>Adds what is missing of one gap; says how much later everything after it is.</summary>
    private decimal Fill(Link gap, int then, decimal clock)
    {
        var first = slotOf[gap.First];
        var firstEnd = first >= 0 ? endsAt[first] : attempt.Replay.EndsAt(attempt.FirstPlaceOf(gap.First));
        var missing = gap.AtLeast!.Value - (clock - firstEnd);
        if (missing <= 0) return 0;
        for (var s = then - 1; s > first; s--)
        {
            if (!attempt.Layout.IsWait(order.Slots[s].Step)) continue;
            lengths[s] += missing;
            for (var later = s; later < then; later++) endsAt[later] += missing;
            return missing;
        }

        heldOff[then] += missing;
        return missing;
    }

    private Link[] GapsByLaterSlot()
    {
        var gaps = attempt.Layout.Gaps;
        var mine = new Link[gaps.Length];
        var count = 0;
        foreach (var gap in gaps)
            if (slotOf[gap.Then] >= 0 && attempt.Plan.Steps.Has(gap.First)) mine[count++] = gap;
        Array.Resize(ref mine, count);
        Array.Sort(mine, (a, b) => slotOf[a.Then].CompareTo(slotOf[b.Then]));
        return mine;
    }
}
