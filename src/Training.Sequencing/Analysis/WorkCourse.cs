using Training.Sequencing.Layouts;
using Training.Sequencing.Ordering;

namespace Training.Sequencing.Analysis;

/// <summary>A step set with its plan and gaps, and how the time goes on when its steps are done.</summary>
internal sealed class WorkCourse
{
    private readonly int[] slotOf;

    public WorkCourse(Layout layout, Plan plan)
    {
        (Layout, Plan) = (layout, plan);
        Steps = [.. Enumerable.Range(0, layout.StepCount).Where(plan.Steps.Has).OrderBy(step => plan.Before.CountIn(step))];
        Gaps = [.. GapsOf(layout, plan)];
        slotOf = new int[layout.StepCount];
        Array.Fill(slotOf, -1);
        foreach (var then in Gaps.Select(gap => gap.Then).Distinct()) slotOf[then] = SlotCount++;
    }

    public Layout Layout { get; }

    public Plan Plan { get; }

    /// <summary>The steps in a right order.</summary>
    public int[] Steps { get; }

    public Link[] Gaps { get; }

    /// <summary>How many steps a gap ends at.</summary>
    public int SlotCount { get; }

    /// <summary>The gaps between steps of a plan.</summary>
    public static IEnumerable<Link> GapsOf(Layout layout, Plan plan) =>
        layout.Gaps.Where(gap => plan.Steps.Has(gap.First) && plan.Steps.Has(gap.Then));

    public decimal Takes(int step) => Layout.Takes[step];

    public Stage Begin() => new(0, new decimal[SlotCount], new decimal[SlotCount]);

    /// <summary>How long a step must still be held off.</summary>
    public decimal HoldOff(Stage stage, int step) =>
        slotOf[step] < 0 ? 0 : Math.Max(stage.Old[slotOf[step]], stage.New[slotOf[step]]);

    /// <summary>
    /// Does a step: what is missing of a gap that ends here was waited at the last wait step, so that only gaps that
    /// were open at that wait have grown shorter by it.
    /// </summary>
    /// <exception cref="InvalidOperationException">
    /// No wait stood inside the gap: a fault of ours, <see cref="LeastTime.IsThere"/> was not asked.
    /// </exception>
    public Stage Do(Stage stage, int step)
    {
        var slot = slotOf[step];
        if (slot >= 0 && stage.New[slot] > 0)
            throw new InvalidOperationException($"A checked procedure has no wait before {Layout.IdOf(step)}.");
        var wait = slot < 0 ? 0 : stage.Old[slot];
        var takes = Takes(step);
        var (old, fresh) = (new decimal[SlotCount], new decimal[SlotCount]);
        for (var s = 0; s < SlotCount; s++)
        {
            old[s] = Math.Max(0, stage.Old[s] - wait - takes);
            fresh[s] = Math.Max(0, stage.New[s] - takes);
            if (!Layout.IsWait(step)) continue;
            old[s] = Math.Max(old[s], fresh[s]);
            fresh[s] = 0;
        }

        foreach (var gap in Gaps)
            if (gap.First == step) fresh[slotOf[gap.Then]] = Math.Max(fresh[slotOf[gap.Then]], gap.AtLeast!.Value);
        return new(stage.Time + wait + takes, old, fresh);
    }
}

/// <summary>How far the work has come.</summary>
/// <param name="Time">What it took up to here.</param>
/// <param name="Old">
/// For each step at which a gap ends, how much of the gaps is still missing that were open at the last wait.
/// </param>
/// <param name="New">The same for the gaps that have opened since.</param>
internal sealed record Stage(decimal Time, decimal[] Old, decimal[] New)
{
    /// <summary>Whether nothing that can follow is done sooner from the other stage: the same steps are done in both.</summary>
    public bool IsAsGoodAs(Stage other)
    {
        // Who is ahead can wait at the last wait step until both are level, which shortens the old gaps alone.
        var ahead = other.Time - Time;
        if (ahead < 0) return false;
        for (var s = 0; s < Old.Length; s++)
            if (New[s] > other.New[s] || (Old[s] > 0 && Old[s] - ahead > other.Old[s])) return false;
        return true;
    }
}
