using Training.Content.Scenarios;
using Training.Content.Yaml;
using Training.Sequencing;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;

namespace Training.Content.Links;

/// <summary>What a scenario calls absent is a step of its kind of vehicle, and a right order is left without it.</summary>
internal static class AbsentLinks
{
    /// <summary>Whether every absent step is there and can be spared; what is not is reported.</summary>
    public static bool Check(ScenarioDraft scenario, Procedure procedure, VariantId? kind)
    {
        var absent = scenario.Absent.Select(entry => new StepId(entry.Id.Text)).ToHashSet();
        var vehicle = kind ?? procedure.Kinds.First();
        var areSound = true;
        foreach (var entry in scenario.Absent)
        {
            var step = procedure.Steps.FirstOrDefault(known => known.Id.Value == entry.Id.Text);
            var why = step is null ? $"The procedure \"{procedure.Id}\" has no step \"{Fields.Shown(entry.Id.Text)}\": mend the id."
                : !step.IsFor(vehicle) ? $"The step \"{step.Id}\" does not exist for {vehicle}: remove it from \"absent\"."
                : !procedure.CanBeSpared(step, absent, vehicle) ? $"Without \"{step.Id}\" no right order is left: {WhyNot(step)}"
                : null;
            if (why is null) continue;
            scenario.Problems.Error(entry.Id.Place, why);
            areSound = false;
        }

        return areSound;
    }

    /// <summary>Whether the nearest order to doing nothing is a right one; where none is left, that is reported.</summary>
    /// <param name="scenario">The scenario, whose procedure is sound.</param>
    /// <param name="grader">The grader of its job; null where there is nothing left to grade by.</param>
    public static bool LeaveAnOrder(ScenarioDraft scenario, Grader? grader)
    {
        if (scenario.Absent.Count == 0) return true;
        if (grader is not null && grader.Grade(new Answer(grader.Grade(new Answer([])).Value.Nearest)).Value.Accepted) return true;
        var first = scenario.Absent[0].Id;
        scenario.Problems.Error(first.Place, $"Without \"{first.Text}\" no right order is left: change what is absent, or the procedure.");
        return false;
    }

    private static string WhyNot(Step step) => step.Choice is { } choice
        ? $"no other way of \"{choice}\" can be done. Leave one, or change the situation."
        : "the job needs it. Only an optional step, or one of several ways, can be absent.";
}
