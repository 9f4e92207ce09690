using Training.Sequencing.Layouts;

namespace Training.Sequencing.Ordering;

/// <summary>
/// Which steps an answer is about: every required step, each optional step that is there, and of each one-of group the
/// member that is given first (none given: the first listed).
/// </summary>
internal sealed class StepChoice
{
    private StepChoice(StepSet steps, int[] memberOf) => (Steps, MemberOf) = (steps, memberOf);

    /// <summary>The step set.</summary>
    public StepSet Steps { get; }

    /// <summary>The member that was taken of each one-of group, or -1 where every member is barred.</summary>
    public int[] MemberOf { get; }

    /// <summary>Chooses by what was done: the start first, then the answer.</summary>
    /// <param name="layout">The layout.</param>
    /// <param name="start">What was done before.</param>
    /// <param name="entries">What the answer gives.</param>
    /// <param name="barred">Steps that come too late to be chosen; see <c>Starting.StartedPlan</c>.</param>
    public static StepChoice Of(Layout layout, int[] start, int[] entries, StepSet? barred = null)
    {
        var steps = new StepSet(layout.StepCount);
        var memberOf = layout.Groups.Length == 0 ? [] : new int[layout.Groups.Length];
        Array.Fill(memberOf, -1);
        for (var s = 0; s < layout.StepCount; s++)
            if (layout.IsRequired(s)) steps.Add(s);
        Take(layout, start, null, steps, memberOf);
        Take(layout, entries, barred, steps, memberOf);
        for (var g = 0; g < memberOf.Length; g++)
        {
            if (memberOf[g] >= 0) continue;
            memberOf[g] = FirstFree(layout.Groups[g].Members, barred);
            if (memberOf[g] >= 0) steps.Add(memberOf[g]);
        }

        return new(steps, memberOf);
    }

    private static void Take(Layout layout, int[] numbers, StepSet? barred, StepSet steps, int[] memberOf)
    {
        foreach (var number in numbers)
        {
            if (number >= layout.StepCount || barred?.Has(number) == true) continue;
            var group = layout.GroupOf[number];
            if (group < 0)
            {
                steps.Add(number);
            }
            else if (memberOf[group] < 0)
            {
                memberOf[group] = number;
                steps.Add(number);
            }
        }
    }

    private static int FirstFree(int[] members, StepSet? barred)
    {
        foreach (var member in members)
            if (barred?.Has(member) != true) return member;
        return -1;
    }
}
