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
            var members = layout.GroupOf[s] is var group and >= 0 ? layout.Groups[group].Members : [];
            if (IsAnyThere(attempt, members)) continue;
            findings.Add(members.Length < 2 ? Of(layout, s) : OfGroup(layout, s, members), Attempt.Nowhere);
        }
    }

    private static bool IsAnyThere(Attempt attempt, int[] members)
    {
        foreach (var member in members)
            if (attempt.FirstPlaceOf(member) != Attempt.Nowhere) return true;
        return false;
    }

    private static Finding Of(Layout layout, int number)
    {
        var step = layout.Steps[number];
        return new(FindingKind.Missing, step.Id.Value, new[] { step.Id }, [], step.Stakes, new StepText(layout, number));
    }

    private static Finding OfGroup(Layout layout, int number, int[] members)
    {
        var step = layout.Steps[number];
        var ids = new StepId[members.Length];
        for (var m = 0; m < members.Length; m++) ids[m] = layout.IdOf(members[m]);
        return new(FindingKind.Missing, step.Id.Value, ids, [], step.Stakes, new GroupText(layout, number, members));
    }

    private sealed class StepText(Layout layout, int number) : FindingText
    {
        public override FindingTelling Tell(Finding finding)
        {
            Sentence happened = $"“{layout.Named(number)}” was left out.";
            return WhyNeeded.Of(layout, number) is { } rule
                ? Sentences.Tell(happened, rule, "Add it.") with { SpokenBy = rule.Id }
                : new(happened, "The job is not right without it.", "Add it.");
        }
    }

    private sealed class GroupText(Layout layout, int number, int[] members) : FindingText
    {
        public override FindingTelling Tell(Finding finding)
        {
            var rule = WhyNeeded.Of(layout, number);
            return new(
                $"None of these was done: {new StepNames([.. members.Select(layout.Named)])}.",
                "The job needs just one of them.", $"Do one of them, for instance “{layout.Named(number)}”.")
            {
                Because = rule?.Because,
                Otherwise = rule?.Otherwise,
                SpokenBy = rule?.Id,
            };
        }
    }
}
