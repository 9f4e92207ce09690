using Training.Sequencing.Answers;
using Training.Sequencing.Layouts;
using Training.Sequencing.Ordering;
using Training.Sequencing.Replaying;

namespace Training.Sequencing.Starting;

/// <summary>
/// The plan of an answer that goes on from a start. All that must come before the steps of the start must be in it; the
/// question itself is judged by that, without what only the answer brings. An author is also told of a gap that begins
/// in the start and that nothing can fill any more; an answer is graded all the same, and found too soon.
/// </summary>
/// <remarks>
/// An answer may bring an optional step, or a member of a one-of group, for which it is too late: something that must
/// follow it was done already. Such a step is barred from the step set, so that the question keeps a right answer:
/// it is found out of order, and dropped by the mend.
/// </remarks>
internal sealed record StartedPlan(StepChoice Choice, Plan Plan, StepSet? Late)
{
    /// <summary>Makes the plan, or refuses a question whose start is impossible.</summary>
    public static StartedPlan? TryMake(
        Layout layout, PlanShelf shelf, Reading reading, bool isForAuthor, out Refusal? refusal)
    {
        var done = new StepSet(layout.StepCount);
        foreach (var step in reading.Start) done.Add(step);
        var replay = Replay.Of(layout, reading);
        var question = new Search(layout, shelf, reading, replay, done, isForAuthor);
        var bare = question.Run([], out refusal);
        if (bare is null || reading.Entries.Length == 0) return bare;
        return question.Run(reading.Entries, out refusal) ?? WithoutExtras(layout, reading, bare, out refusal);
    }

    /// <summary>The question's own plan; all that the answer brings beyond it counts as too late.</summary>
    private static StartedPlan WithoutExtras(Layout layout, Reading reading, StartedPlan bare, out Refusal? refusal)
    {
        refusal = null;
        var late = bare.Late?.Copy() ?? new StepSet(layout.StepCount);
        foreach (var number in reading.Entries)
            if (number < layout.StepCount && !bare.Plan.Steps.Has(number)) late.Add(number);
        return bare with { Late = late };
    }

    private sealed class Search(
        Layout layout, PlanShelf shelf, Reading reading, Replay replay, StepSet done, bool isForAuthor)
    {
        public StartedPlan? Run(int[] entries, out Refusal? refusal)
        {
            StepSet? late = null;
            while (true)
            {
                var choice = StepChoice.Of(layout, reading.Start, entries, late);
                var empty = Array.IndexOf(choice.MemberOf, -1);
                if (empty >= 0)
                {
                    refusal = new(
                        $"The start is impossible: every way to do “{layout.Groups[empty].Id}” must come before it.");
                    return null;
                }

                var plan = shelf.For(choice.Steps);
                refusal = null;
                var barred = false;
                for (var s = 0; s < layout.StepCount; s++)
                {
                    if (!choice.Steps.Has(s) || done.Has(s) || Fault(plan, s) is not { } fault) continue;
                    if (layout.IsRequired(s))
                    {
                        refusal ??= fault;
                        continue;
                    }

                    (late ??= new(layout.StepCount)).Add(s);
                    barred = true;
                }

                if (barred) continue;
                return refusal is null ? new(choice, plan, late) : null;
            }
        }

        /// <summary>Why a step can no longer be done rightly, or nothing.</summary>
        private Refusal? Fault(Plan plan, int step)
        {
            foreach (var later in new EachBit(plan.After.Row(step)))
                if (done.Has(later))
                    return new($"The start is impossible: “{layout.Named(step)}” must come before “{layout.Named(later)}”.");
            if (reading.IsObserved || (!isForAuthor && layout.IsRequired(step))) return null;
            foreach (var gap in layout.Gaps)
                if (gap.Then == step && done.Has(gap.First) && !CanFill(plan, gap))
                    return new($"The start is impossible: no wait is left between “{layout.Named(gap.First)}” and "
                        + $"“{layout.Named(step)}” for rule “{gap.Rule.Id}”.");
            return null;
        }

        private bool CanFill(Plan plan, Link gap)
        {
            var first = Array.IndexOf(reading.Start, gap.First) - replay.StartCount;
            var length = replay.StartDoneAt - replay.EndsAt(first);
            foreach (var between in new EachBit(plan.Before.Row(gap.Then)))
            {
                if (done.Has(between)) continue;
                if (layout.IsWait(between)) return true;
                length += layout.Takes[between];
            }

            return length >= gap.AtLeast!.Value;
        }
    }
}
