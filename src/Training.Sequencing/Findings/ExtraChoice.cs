using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Findings;

/// <summary>The law: of a one-of group just one member is done, the one that is given first.</summary>
internal static class ExtraChoice
{
    public static void Find(Attempt attempt, FindingList findings)
    {
        var layout = attempt.Layout;
        for (var e = 0; e < attempt.Roles.Length; e++)
        {
            if (attempt.Roles[e] != Role.ExtraChoice) continue;
            var number = attempt.Reading.Entries[e];
            var step = layout.Steps[number];
            var taken = layout.Steps[attempt.Choice.MemberOf[layout.GroupOf[number]]];
            findings.Add(Of(step, e, taken), e);
        }
    }

    private static Finding Of(Step step, int place, Step taken) =>
        new(FindingKind.ExtraChoice, step.Id.Value, new[] { step.Id }, new[] { place + 1 }, step.Stakes,
            new ChoiceText(step, taken));

    private sealed class ChoiceText(Step step, Step taken) : FindingText
    {
        public override FindingTelling Tell(Finding finding) => new(
            $"“{StepName.Of(step)}” was done as well as “{StepName.Of(taken)}”.", "The job takes just one of the two.",
            $"Leave “{StepName.Of(step)}” out.");
    }
}
