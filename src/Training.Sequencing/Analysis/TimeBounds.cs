using Training.Sequencing.Ordering;

namespace Training.Sequencing.Analysis;

/// <summary>Times that the work cannot fall below, and one that it can keep.</summary>
internal static class TimeBounds
{
    /// <summary>
    /// The longest way through the gaps: before a step lies all the work that must come before it, after it all that must
    /// come after it.
    /// </summary>
    public static decimal Below(WorkCourse course)
    {
        var count = course.Layout.StepCount;
        var (heads, tails) = (new decimal[count], Tails(course));
        var bound = course.Steps.Sum(course.Takes);
        foreach (var step in course.Steps)
        {
            heads[step] = WorkIn(course, course.Plan.Before.Row(step));
            foreach (var earlier in new EachBit(course.Plan.Before.Row(step)))
                heads[step] = Math.Max(heads[step], heads[earlier] + course.Takes(earlier));
            foreach (var gap in course.Gaps)
                if (gap.Then == step)
                    heads[step] = Math.Max(heads[step], heads[gap.First] + course.Takes(gap.First) + gap.AtLeast!.Value);
            bound = Math.Max(bound, heads[step] + course.Takes(step) + tails[step]);
        }

        return bound;
    }

    /// <summary>
    /// The time of one right order: of the steps that may be done at once always the one behind which the longest way
    /// lies, waits last.
    /// </summary>
    public static decimal OfGoodOrder(WorkCourse course)
    {
        var tails = Tails(course);
        var open = course.Steps.ToList();
        var isDone = new bool[course.Layout.StepCount];
        var stage = course.Begin();
        while (open.Count > 0)
        {
            var free = open.Where(step => IsFree(course, step, isDone));
            var next = free.OrderBy(step => course.HoldOff(stage, step))
                .ThenBy(course.Layout.IsWait)
                .ThenByDescending(step => tails[step]).First();
            stage = course.Do(stage, next);
            isDone[next] = true;
            open.Remove(next);
        }

        return stage.Time;
    }

    private static bool IsFree(WorkCourse course, int step, bool[] isDone)
    {
        foreach (var earlier in new EachBit(course.Plan.Before.Row(step)))
            if (!isDone[earlier]) return false;
        return true;
    }

    private static decimal[] Tails(WorkCourse course)
    {
        var tails = new decimal[course.Layout.StepCount];
        foreach (var step in course.Steps.Reverse())
        {
            tails[step] = WorkIn(course, course.Plan.After.Row(step));
            foreach (var later in new EachBit(course.Plan.After.Row(step)))
                tails[step] = Math.Max(tails[step], course.Takes(later) + tails[later]);
            foreach (var gap in course.Gaps)
                if (gap.First == step)
                    tails[step] = Math.Max(tails[step], gap.AtLeast!.Value + course.Takes(gap.Then) + tails[gap.Then]);
        }

        return tails;
    }

    private static decimal WorkIn(WorkCourse course, ReadOnlySpan<ulong> steps)
    {
        var sum = 0m;
        foreach (var step in new EachBit(steps)) sum += course.Takes(step);
        return sum;
    }
}
