using Training.Sequencing.Layouts;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Findings;

/// <summary>
/// The law: where the two steps of a pair stand the right way round, at least the rule's time lies between the end of
/// the one and the start of the other; first occurrences count.
/// </summary>
internal static class TooSoon
{
    public static void Find(Attempt attempt, FindingList findings)
    {
        foreach (var link in attempt.Layout.Gaps)
        {
            var first = attempt.FirstPlaceOf(link.First);
            var then = attempt.FirstPlaceOf(link.Then);
            if (then == Attempt.Nowhere || then < 0 || first >= then) continue;
            if (attempt.Layout.AreAlternatives(link.First, link.Then)) continue;
            var gap = attempt.Replay.StartsAt(then) - attempt.Replay.EndsAt(first);
            if (gap >= link.AtLeast!.Value) continue;
            findings.Add(Of(attempt.Layout, link, first, then, gap), then);
        }
    }

    private static Finding Of(Layout layout, Link link, int first, int then, decimal gap) =>
        new(FindingKind.TooSoon, link.Rule.Id.Value, link.Steps,
            new[] { Math.Max(first + 1, 0), then + 1 }, link.Rule.Stakes, new GapText(layout, link, gap));

    private sealed class GapText(Layout layout, Link link, decimal gap) : FindingText
    {
        public override FindingTelling Tell(Finding finding)
        {
            var (first, then) = (layout.Named(link.First), layout.Named(link.Then));
            Sentence begun = $"“{then}” was begun before “{first}” was done.";
            Sentence only = $"Only {gap:0.##} s lay between “{first}” and “{then}”.";
            return Sentences.Tell(
                gap < 0 ? begun : only, link.Rule, $"Wait at least {new SpokenTime(link.AtLeast!.Value)} after “{first}”.");
        }
    }
}
