using Training.Sequencing.Layouts;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Findings;

/// <summary>
/// The law: every required step is there, and of every one-of group one member. A member that comes too late is there,
/// too: it is found out of order or too soon, and not missed besides.
/// </summary>
internal static class Missing
{
    public static void Find(Attempt attempt, FindingList findings)
    {
        var layout = attempt.Layout;
        for (var s = 0; s < layout.StepCount; s++)
        {
            if (!attempt.Plan.Steps.Has(s) || attempt.FirstPlaceOf(s) != Attempt.Nowhere) continue;
            var step = layout.Steps[s];
            var members = layout.GroupOf[s] is var group and >= 0 ? layout.Groups[group].Members : [];
            if (IsAnyThere(attempt, members)) continue;
            findings.Add(members.Length < 2 ? Of(step) : OfGroup(attempt, step, members), Attempt.Nowhere);
        }
    }

    private static bool IsAnyThere(Attempt attempt, int[] members)
    {
        foreach (var member in members)
            if (attempt.FirstPlaceOf(member) != Attempt.Nowhere) return true;
        return false;
    }

    private static Finding Of(Step step) =>
        new(FindingKind.Missing, step.Id.Value, new[] { step.Id }, [], step.Stakes, new StepText(step));

    private static Finding OfGroup(Attempt attempt, Step step, int[] members)
    {
        var layout = attempt.Layout;
        var ids = new StepId[members.Length];
        for (var m = 0; m < members.Length; m++) ids[m] = layout.IdOf(members[m]);
        return new(FindingKind.Missing, step.Id.Value, ids, [], step.Stakes, new GroupText(layout, step, members));
    }

    private sealed class StepText(Step step) : FindingText
    {
        public override FindingTelling Tell(Finding finding) =>
            new($"“{StepName.Of(step)}” was left out.", "The job is not right without it.", "Add it.");
    }

    private sealed class GroupText(Layout layout, Step step, int[] members) : FindingText
    {
        public override FindingTelling Tell(Finding finding) => new(
            $"None of these was done: {new StepNames([.. members.Select(layout.Named)])}.",
            "The job needs just one of them.", $"Do one of them, for instance “{StepName.Of(step)}”.");
    }
}
