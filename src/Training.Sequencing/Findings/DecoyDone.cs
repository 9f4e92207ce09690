using Training.Sequencing.Layouts;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Findings;

/// <summary>The law: nothing is done that is never right in this job, and no step of another kind of vehicle.</summary>
internal static class DecoyDone
{
    public static void Find(Attempt attempt, FindingList findings)
    {
        for (var e = 0; e < attempt.Roles.Length; e++)
        {
            if (attempt.Roles[e] != Role.Stranger) continue;
            var stranger = attempt.Layout.Strangers[attempt.Reading.Entries[e] - attempt.Layout.StepCount];
            findings.Add(Of(stranger, e, attempt.Layout.Variant), e);
        }
    }

    private static Finding Of(Stranger stranger, int place, VariantId? variant) =>
        new(FindingKind.Decoy, stranger.Id.Value, new[] { stranger.Id }, new[] { place + 1 }, stranger.Stakes,
            new StrangerText(stranger, variant));

    private sealed class StrangerText(Stranger stranger, VariantId? variant) : FindingText
    {
        public override FindingTelling Tell(Finding finding)
        {
            var name = new StepName(stranger.Id, stranger.Do);
            return stranger.IsDecoy
                ? new(stranger.IsAbsentStep ? CannotBeDone(name) : NeverRight(name), null, "Leave it out.")
                {
                    Because = stranger.Because,
                    Otherwise = stranger.Otherwise,
                }
                : new($"“{name}” was done.", $"It does not belong to this vehicle ({variant}).", "Leave it out.");
        }

        private static Sentence NeverRight(StepName name) => $"“{name}” was done; it is never right in this job.";

        private static Sentence CannotBeDone(StepName name) => $"“{name}” was done; it cannot be done this time.";
    }
}
