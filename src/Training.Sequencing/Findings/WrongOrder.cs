using Training.Sequencing.Layouts;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Findings;

/// <summary>
/// The law: where both steps of a <c>first</c>/<c>then</c> pair are there, the first occurrences stand the right way
/// round. A step that comes too late, as what must follow it was done before the answer began, breaks it too.
/// </summary>
internal static class WrongOrder
{
    public static void Find(Attempt attempt, FindingList findings)
    {
        foreach (var link in attempt.Layout.Links)
        {
            var first = attempt.FirstPlaceOf(link.First);
            var then = attempt.FirstPlaceOf(link.Then);
            if (first == Attempt.Nowhere || first < then || link.First == link.Then) continue;
            if (attempt.Layout.AreAlternatives(link.First, link.Then)) continue;
            findings.Add(Of(attempt.Layout, link, first, then), then < 0 ? first : then);
        }
    }

    /// <summary>A late step that no other finding names: the way to what was done before runs through other steps.</summary>
    public static void FindLate(Attempt attempt, FindingList findings)
    {
        if (attempt.Late is null) return;
        for (var e = 0; e < attempt.Roles.Length; e++)
        {
            if (attempt.Roles[e] != Role.Late) continue;
            var step = attempt.Layout.Steps[attempt.Reading.Entries[e]];
            if (findings.Names(step.Id)) continue;
            findings.Add(OfLate(step, e), e);
        }
    }

    private static Finding Of(Layout layout, Link link, int first, int then) =>
        new(FindingKind.Order, link.Rule.Id.Value, link.Steps,
            new[] { first + 1, Math.Max(then + 1, 0) }, link.Rule.Stakes, link.WrongWayRound ??= new PairText(layout, link));

    private static Finding OfLate(Step step, int place) =>
        new(FindingKind.Order, step.Id.Value, new[] { step.Id }, new[] { place + 1 }, step.Stakes, new LateText(step));

    private sealed class PairText(Layout layout, Link link) : FindingText
    {
        public override FindingTelling Tell(Finding finding)
        {
            var (former, latter) = (layout.Named(link.First), layout.Named(link.Then));
            var (first, then) = (finding.Places[0] - 1, finding.Places[1] - 1);
            return then < 0
                ? Sentences.Tell(
                    $"“{former}” comes too late: “{latter}” was done before you began.", link.Rule, $"Leave “{former}” out.")
                : Sentences.Tell(
                    $"“{latter}” ({Sentences.Place(then)}) was done before “{former}” ({Sentences.Place(first)}).",
                    link.Rule, $"First “{former}”, then “{latter}”.");
        }
    }

    private sealed class LateText(Step step) : FindingText
    {
        public override FindingTelling Tell(Finding finding) => new(
            $"“{StepName.Of(step)}” comes too late.", "Something that must come after it was done before you began.",
            "Leave it out.");
    }
}
