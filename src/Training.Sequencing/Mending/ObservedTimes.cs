using Training.Sequencing.Findings;
using Training.Sequencing.Layouts;

namespace Training.Sequencing.Mending;

/// <summary>
/// What of an observed run's clock still holds in the nearest order: how long each step lasted, and the pause between two
/// steps that both stay and still stand one right behind the other. Whatever is put between two steps takes the place of the
/// pause that was there.
/// </summary>
internal static class ObservedTimes
{
    /// <summary>How long a slot's step lasted; what is missing in the run has lasted no time.</summary>
    public static decimal LengthOf(Attempt attempt, NearestOrder.Slot slot) =>
        slot.Place < 0 ? 0 : attempt.Replay.EndsAt(slot.Place) - attempt.Replay.StartsAt(slot.Place);

    /// <summary>
    /// The pause before a slot whose step stays where it stood, right behind the same one; below zero where it was begun before
    /// that one was done.
    /// </summary>
    public static decimal PauseBefore(Attempt attempt, ReadOnlySpan<NearestOrder.Slot> slots, int slot)
    {
        if (!slots[slot].IsKept || (slot > 0 && !slots[slot - 1].IsKept)) return 0;
        var above = slot > 0 ? slots[slot - 1].Place : -1;
        if (slots[slot].Place != above + 1) return 0;
        return attempt.Replay.StartsAt(slots[slot].Place) - (slot > 0 ? attempt.Replay.EndsAt(above) : attempt.Replay.StartDoneAt);
    }

    /// <summary>
    /// Whether the run kept to a gap, or was at odds with it otherwise than by its time. Only a gap that was found too short
    /// is made longer: of a step that stood elsewhere nobody knows when it would have been begun.
    /// </summary>
    public static bool IsLeftAlone(Attempt attempt, Link gap)
    {
        var (first, then) = (attempt.FirstPlaceOf(gap.First), attempt.FirstPlaceOf(gap.Then));
        return then is < 0 or Attempt.Nowhere || first >= then
            || attempt.Replay.StartsAt(then) - attempt.Replay.EndsAt(first) >= gap.AtLeast!.Value;
    }
}
