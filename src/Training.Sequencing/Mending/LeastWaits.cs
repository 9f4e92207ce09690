using System.Buffers;
using Training.Sequencing.Findings;
using Training.Sequencing.Layouts;

namespace Training.Sequencing.Mending;

/// <summary>
/// How long the waits of the nearest order must be: rule by rule in the order in which the later steps stand, what is
/// missing of a gap is added to the last wait step inside it. As every gap that ends later also holds that wait or
/// starts after it, no other choice adds less in all. In an observed run the gaps that were too short are filled so, by what
/// <see cref="ObservedTimes"/> says of the clock.
/// </summary>
internal sealed class LeastWaits
{
    private readonly Attempt attempt;
    private readonly NearestOrder order;
    private readonly bool isObserved;
    private readonly decimal[] lengths;
    private decimal[]? heldOff;

    private LeastWaits(Attempt attempt, NearestOrder order)
    {
        (this.attempt, this.order) = (attempt, order);
        isObserved = attempt.Reading.IsObserved;
        lengths = new decimal[order.Slots.Length];
        for (var s = 0; s < lengths.Length; s++) lengths[s] = LengthOf(s);
    }

    /// <summary>For every slot of the nearest order how long it lasts.</summary>
    public ReadOnlySpan<decimal> Lengths => lengths;

    /// <summary>Whether a slot is a wait that must be longer than it was.</summary>
    public bool IsLonger(int slot) => attempt.Layout.IsWait(order.Slots[slot].Step) && lengths[slot] > LengthOf(slot);

    /// <summary>
    /// How much longer a slot must be held off where no wait stands inside the gap before it. On paper a procedure without an
    /// error and a start that is possible never come to this.
    /// </summary>
    public decimal HeldOff(int slot) => heldOff is null ? 0 : heldOff[slot];

    public static LeastWaits Of(Attempt attempt, NearestOrder order)
    {
        var waits = new LeastWaits(attempt, order);
        waits.Stretch();
        return waits;
    }

    private decimal LengthOf(int slot)
    {
        if (isObserved) return ObservedTimes.LengthOf(attempt, order.Slots[slot]);
        var (step, place, _) = order.Slots[slot];
        var layout = attempt.Layout;
        if (!layout.IsWait(step)) return layout.Takes[step];
        return place < 0 ? 0 : attempt.Reading.Answer.Entries[place].Stated?.Seconds ?? 0;
    }

    private void Stretch()
    {
        // Scratch of every wrong answer: borrowed, as it is of no use afterwards.
        var endsAt = ArrayPool<decimal>.Shared.Rent(lengths.Length);
        var slotOf = ArrayPool<int>.Shared.Rent(attempt.Layout.StepCount);
        Array.Fill(slotOf, -1);
        for (var s = 0; s < lengths.Length; s++) slotOf[order.Slots[s].Step] = s;
        var clock = attempt.Replay.StartDoneAt;
        for (var s = 0; s < lengths.Length; s++)
        {
            if (isObserved) clock += ObservedTimes.PauseBefore(attempt, order.Slots, s);
            foreach (var gap in attempt.Layout.GapsBefore[order.Slots[s].Step])
            {
                if (!attempt.Plan.Steps.Has(gap.First) || (isObserved && ObservedTimes.IsLeftAlone(attempt, gap))) continue;
                clock += Fill(gap, slotOf[gap.First], s, clock, endsAt);
            }

            clock += lengths[s];
            endsAt[s] = clock;
        }

        ArrayPool<decimal>.Shared.Return(endsAt);
        ArrayPool<int>.Shared.Return(slotOf);
    }

    /// <summary>Adds what is missing of one gap; says how much later everything after it is.</summary>
    private decimal Fill(Link gap, int first, int then, decimal clock, decimal[] endsAt)
    {
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

        (heldOff ??= new decimal[lengths.Length])[then] += missing;
        return missing;
    }
}
