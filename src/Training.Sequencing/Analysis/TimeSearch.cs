using Training.Sequencing.Ordering;

namespace Training.Sequencing.Analysis;

/// <summary>The least time by looking through what can be done at each stage, step count by step count.</summary>
internal static class TimeSearch
{
    /// <summary>The time; nothing where the room does not do.</summary>
    public static decimal? Of(WorkCourse course, ref long room)
    {
        var level = new Dictionary<StepSet, List<Stage>> { [new StepSet(course.Layout.StepCount)] = [course.Begin()] };
        for (var done = 0; done < course.Steps.Length; done++)
        {
            var next = new Dictionary<StepSet, List<Stage>>();
            foreach (var (set, stages) in level)
            {
                foreach (var step in course.Steps)
                {
                    if (set.Has(step) || !IsFree(course, set, step)) continue;
                    var with = set.Copy();
                    with.Add(step);
                    if (!next.TryGetValue(with, out var reached)) next.Add(with, reached = []);
                    foreach (var stage in stages)
                    {
                        if (--room < 0) return null;
                        Keep(reached, course.Do(stage, step));
                    }
                }
            }

            level = next;
        }

        return level.Values.Single().Min(stage => stage.Time);
    }

    private static void Keep(List<Stage> stages, Stage one)
    {
        if (stages.Exists(other => other.IsAsGoodAs(one))) return;
        stages.RemoveAll(one.IsAsGoodAs);
        stages.Add(one);
    }

    private static bool IsFree(WorkCourse course, StepSet set, int step)
    {
        foreach (var earlier in new EachBit(course.Plan.Before.Row(step)))
            if (!set.Has(earlier)) return false;
        return true;
    }
}
