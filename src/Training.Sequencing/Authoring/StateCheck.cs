using Training.Sequencing.Layouts;
using Training.Sequencing.Ordering;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Authoring;

/// <summary>
/// The law: the rules put the steps that set a needed fact in one order, and leave every step that needs it just one
/// stretch; with the fewest steps that an answer can bring, and so with any.
/// </summary>
internal static class StateCheck
{
    /// <summary>Tells of what is open; true where nothing is.</summary>
    public static bool Find(Layout layout, ProblemList problems)
    {
        var before = problems.Count;
        if (layout.Needs.Length == 0) return true;
        var least = Choices.Least(layout);
        Look(layout, least, problems);
        foreach (var step in layout.Needs.Select(need => need.Step).Where(step => !layout.IsRequired(step)).Distinct())
        {
            var withStep = least.Copy();
            withStep.Add(step);
            Look(layout, withStep, problems);
        }

        return problems.Count == before;
    }

    private static void Look(Layout layout, StepSet least, ProblemList problems)
    {
        if (Plan.TryMake(layout, least, out _) is not null) return;
        if (Choices.AreTooMany(layout))
        {
            problems.Add(AuthoringCodes.TooMuch,
                $"There are more than {Choices.MostCombinations} combinations of choices; settle the facts by rules "
                + "between steps that are always done.", ProblemSubject.Procedure);
            return;
        }

        foreach (var steps in Choices.Of(layout, least))
            if (Plan.TryMake(layout, steps, out var fault) is null) PlanFaults.Tell(layout, fault!, problems);
    }
}
