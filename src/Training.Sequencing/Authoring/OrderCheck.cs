using Training.Sequencing.Layouts;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Authoring;

/// <summary>
/// The laws of a procedure on one kind of vehicle: the listing is itself a right order, every need of a state comes down
/// to order, and every gap can be filled; for whatever optional steps and choices an answer brings.
/// </summary>
/// <remarks>
/// More steps bring more pairs and never take one away. So what is left open is looked for with the fewest steps, and
/// loops with the most; and where the listing agrees with every rule there can be no loop.
/// </remarks>
internal static class OrderCheck
{
    public static void Find(Layout layout, ProblemList problems)
    {
        if (!HasSteps(layout, problems)) return;
        if (ListingCheck.Faults(layout) is { Count: > 0 } faults)
        {
            if (!ListingCheck.TellLoops(layout, problems)) ListingCheck.Tell(faults, problems);
            return;
        }

        if (StateCheck.Find(layout, problems)) GapCheck.Find(layout, problems);
    }

    /// <summary>Only what leaves an answer without an order to be graded by: loops, and states that stay open.</summary>
    public static void FindWithoutOrder(Layout layout, ProblemList problems)
    {
        if (!HasSteps(layout, problems)) return;
        if (ListingCheck.Faults(layout).Count > 0 && ListingCheck.TellLoops(layout, problems)) return;
        StateCheck.Find(layout, problems);
    }

    private static bool HasSteps(Layout layout, ProblemList problems)
    {
        if (layout.StepCount > 0) return SettersCheck.Find(layout, problems);
        problems.Add(AuthoringCodes.NoSteps,
            $"There is nothing to do for the vehicle “{layout.Variant}”.", ProblemSubject.Procedure);
        return false;
    }
}
