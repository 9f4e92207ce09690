using Training.Sequencing.Findings;

namespace Training.Sequencing.Mending;

/// <summary>
/// The right order that is nearest to the answer: the kept entries as they stand, then the moved ones and the missing
/// ones put in one after another, each where the plan allows, nearest to where it stood or to its place in the listing.
/// </summary>
/// <remarks>
/// Room is always left: the kept entries agree with the plan, and as the plan is transitive, the last of what must come
/// before a step stands before the first of what must come after it.
/// </remarks>
internal sealed class NearestOrder
{
    private readonly Attempt attempt;
    private readonly Slot[] slots;
    private int count;

    private NearestOrder(Attempt attempt)
    {
        this.attempt = attempt;
        slots = new Slot[attempt.ToDo];
    }

    /// <summary>One step of the right order.</summary>
    /// <param name="Step">Which.</param>
    /// <param name="Place">Where its entry stands in the answer, from 0; -1 where it is missing there.</param>
    /// <param name="IsKept">Whether the entry stays where it is.</param>
    public readonly record struct Slot(int Step, int Place, bool IsKept);

    public ReadOnlySpan<Slot> Slots => slots;

    public static NearestOrder Of(Attempt attempt, bool[] isKept, ReadOnlySpan<int> moved, ReadOnlySpan<int> missing)
    {
        var order = new NearestOrder(attempt);
        for (var e = 0; e < isKept.Length; e++)
            if (isKept[e]) order.slots[order.count++] = new(attempt.Reading.Entries[e], e, IsKept: true);
        foreach (var place in moved) order.PutMoved(place);
        foreach (var step in missing) order.PutMissing(step);
        return order;
    }

    private void PutMoved(int place)
    {
        var step = attempt.Reading.Entries[place];
        var (from, to) = Room(step);
        // What can be kept is as much as there can be, so the entry is at odds with a kept one, and its own place lies
        // outside the room: either the room begins behind it, or it ends before it.
        var stoodBefore = LastKeptPlace(from) > place;
        var at = stoodBefore ? from : to;
        while (stoodBefore && at < to && !slots[at].IsKept) at++;
        Put(at, new(step, place, IsKept: false));
    }

    /// <summary>Where the last kept entry among the first slots stands in the answer, or -1.</summary>
    private int LastKeptPlace(int slotCount)
    {
        for (var s = slotCount - 1; s >= 0; s--)
            if (slots[s].IsKept) return slots[s].Place;
        return -1;
    }

    private void PutMissing(int step)
    {
        var wanted = 0;
        var neighbour = -1;
        for (var s = 0; s < count; s++)
        {
            if (slots[s].Step > step || slots[s].Step <= neighbour) continue;
            neighbour = slots[s].Step;
            wanted = s + 1;
        }

        var (from, to) = Room(step);
        Put(Math.Clamp(wanted, from, to), new(step, -1, IsKept: false));
    }

    /// <summary>The slots, first and last, at which the plan lets a step in.</summary>
    private (int From, int To) Room(int step)
    {
        var before = attempt.Plan.Before.Row(step);
        var after = attempt.Plan.After.Row(step);
        var (from, to) = (0, count);
        for (var s = 0; s < count; s++)
        {
            if (Has(before, slots[s].Step)) from = s + 1;
            else if (to == count && Has(after, slots[s].Step)) to = s;
        }

        return (from, to);
    }

    private void Put(int at, Slot slot)
    {
        Array.Copy(slots, at, slots, at + 1, count - at);
        slots[at] = slot;
        count++;
    }

    private static bool Has(ReadOnlySpan<ulong> row, int step) => (row[step >> 6] >> step & 1) != 0;
}
