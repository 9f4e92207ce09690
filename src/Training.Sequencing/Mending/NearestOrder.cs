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
        foreach (var place in moved) order.PutMoved(place, isKept);
        foreach (var step in missing) order.PutMissing(step);
        return order;
    }

    private void PutMoved(int place, bool[] isKept)
    {
        var step = attempt.Reading.Entries[place];
        var wanted = 0;
        for (var e = 0; e < place; e++)
            if (isKept[e]) wanted++;
        var (from, to) = Room(step);
        var kept = 0;
        for (var s = 0; s < from; s++)
            if (slots[s].IsKept) kept++;
        var at = from;
        while (at < to)
        {
            if (slots[at].IsKept && ++kept > wanted) break;
            at++;
        }

        Put(at, new(step, place, IsKept: false));
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
