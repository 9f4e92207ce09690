using Training.Sequencing.Layouts;
using Training.Sequencing.Ordering;

namespace Training.Sequencing.Authoring;

/// <summary>The step sets that answers can bring, as far as a check must look at them.</summary>
internal static class Choices
{
    /// <summary>How many combinations of one-of members are looked through.</summary>
    public const int MostCombinations = 4096;

    /// <summary>The steps that every answer brings, without any member of a one-of group.</summary>
    public static StepSet Least(Layout layout) => Where(layout, layout.IsRequired);

    /// <summary>Every step but the members of one-of groups.</summary>
    public static StepSet Most(Layout layout) => Where(layout, step => layout.GroupOf[step] < 0);

    /// <summary>A set with each combination of members of the groups that have none in it.</summary>
    public static IEnumerable<StepSet> Of(Layout layout, StepSet steps)
    {
        var open = layout.Groups.Where(group => !group.Members.Any(steps.Has)).ToArray();
        var at = new int[open.Length];
        while (true)
        {
            var one = steps.Copy();
            for (var g = 0; g < open.Length; g++) one.Add(open[g].Members[at[g]]);
            yield return one;
            var turn = 0;
            while (turn < open.Length && ++at[turn] == open[turn].Members.Length) at[turn++] = 0;
            if (turn == open.Length) yield break;
        }
    }

    /// <summary>Whether there are too many combinations to look through.</summary>
    public static bool AreTooMany(Layout layout)
    {
        var combinations = 1L;
        foreach (var group in layout.Groups)
        {
            combinations *= group.Members.Length;
            if (combinations > MostCombinations) return true;
        }

        return false;
    }

    private static StepSet Where(Layout layout, Func<int, bool> belongs)
    {
        var steps = new StepSet(layout.StepCount);
        for (var s = 0; s < layout.StepCount; s++)
            if (belongs(s)) steps.Add(s);
        return steps;
    }
}
