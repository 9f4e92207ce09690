using Training.Sequencing.Authoring;
using Training.Sequencing.Layouts;
using Training.Sequencing.Ordering;

namespace Training.Sequencing.Analysis;

/// <summary>
/// The least time in which one person can do the required steps rightly: what the steps take, one after another, and
/// the least waits, over all right orders and choices. Work that is done within a gap makes its wait shorter.
/// </summary>
/// <remarks>
/// One machine, precedences and minimal delays: a problem without a fast exact way in general (J. Wikum, D. Llewellyn and
/// G. Nemhauser, "One-machine generalized precedence constrained scheduling problems", Operations Research Letters 16,
/// 1994). A bound from below is held against a good order; where the two differ, all right orders are looked through,
/// and of those that have done the same steps only the ones that no other beats are followed.
/// </remarks>
internal static class LeastTime
{
    /// <summary>
    /// Whether there is such a time: whatever members of the one-of groups are taken, every gap can be filled by what must
    /// come between its steps. Where it cannot, an author has an error to mend first.
    /// </summary>
    public static bool IsThere(Layout layout, PlanShelf plans) =>
        Choices.AreTooMany(layout) || Choices.Of(layout, Choices.Least(layout)).All(steps =>
            plans.For(steps) is var plan && WorkCourse.GapsOf(layout, plan).All(gap => GapCheck.CanFill(layout, plan, gap)));

    /// <summary>The time in seconds; nothing where finding it would pass the room. There must be one.</summary>
    /// <param name="layout">The layout.</param>
    /// <param name="plans">Its plans.</param>
    /// <param name="room">How many stages may be looked at.</param>
    public static decimal? Of(Layout layout, PlanShelf plans, long room)
    {
        if (Choices.AreTooMany(layout)) return null;
        decimal? least = null;
        foreach (var steps in Choices.Of(layout, Choices.Least(layout)))
        {
            var course = new WorkCourse(layout, plans.For(steps));
            var bound = TimeBounds.Below(course);
            if (least <= bound) continue;
            var time = course.Gaps.Length == 0 ? bound : TimeBounds.OfGoodOrder(course);
            if (time > bound)
            {
                if (TimeSearch.Of(course, ref room) is not { } found) return null;
                time = found;
            }

            if (least is null || time < least) least = time;
        }

        return least;
    }
}
