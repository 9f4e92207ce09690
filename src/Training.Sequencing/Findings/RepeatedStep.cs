using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Findings;

/// <summary>The law: a step is done once, and not again where someone had done it before.</summary>
internal static class RepeatedStep
{
    public static void Find(Attempt attempt, FindingList findings)
    {
        for (var e = 0; e < attempt.Roles.Length; e++)
        {
            if (attempt.Roles[e] != Role.Repeated) continue;
            var step = attempt.Layout.Steps[attempt.Reading.Entries[e]];
            var first = attempt.FirstPlaceOf(attempt.Reading.Entries[e]);
            findings.Add(Of(step, e, first), e);
        }
    }

    private static Finding Of(Step step, int place, int first) =>
        new(FindingKind.Repeated, step.Id.Value, new[] { step.Id }, new[] { place + 1 }, step.Stakes,
            new AgainText(step, first));

    private sealed class AgainText(Step step, int first) : FindingText
    {
        public override FindingTelling Tell(Finding finding) => new(
            $"“{StepName.Of(step)}” was done again.", $"It was done already ({Sentences.Place(first)}).", "Do it once.");
    }
}
