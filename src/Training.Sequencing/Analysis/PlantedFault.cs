using Training.Sequencing.Answers;
using Training.Sequencing.Drawing;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Analysis;

/// <summary>An order of work with just one fault in it, held to that by grading.</summary>
/// <param name="Answer">The order.</param>
/// <param name="Finding">The only thing that is wrong with it.</param>
/// <param name="Place">
/// The place, from 1, of the entry at which it goes wrong: of two steps that stand the wrong way round the one that was
/// done too early. Null where a step is missing.
/// </param>
public sealed record PlantedFault(Answer Answer, Finding Finding, int? Place)
{
    // Where hardly any change makes just one fault, looking on would only take time.
    private const int MostTries = 400;

    /// <summary>Plants one fault of a random kind in a random right order.</summary>
    /// <param name="orders">The right orders.</param>
    /// <param name="kinds">The kinds of fault that may be planted.</param>
    /// <param name="decoys">The decoys that may be put in.</param>
    /// <param name="lots">The lots.</param>
    /// <returns>The order; null where none of these faults can stand alone in the drawn order.</returns>
    public static PlantedFault? Draw(
        RightOrderDraw orders, IReadOnlyList<FindingKind> kinds, IReadOnlyList<StepId> decoys, SeededDraw lots)
    {
        ArgumentNullException.ThrowIfNull(orders);
        ArgumentNullException.ThrowIfNull(kinds);
        ArgumentNullException.ThrowIfNull(decoys);
        ArgumentNullException.ThrowIfNull(lots);
        var right = orders.Draw(lots);
        foreach (var kind in lots.Shuffle(kinds))
        {
            foreach (var change in lots.Shuffle(Changes(kind, right, decoys)).Take(MostTries))
            {
                var answer = new Answer(change());
                var verdict = orders.Graded(answer);
                if (verdict.Findings.Count == 1 && verdict.Findings[0].Kind == kind)
                    return new(answer, verdict.Findings[0], PlaceOf(verdict));
            }
        }

        return null;
    }

    private static int? PlaceOf(Verdict verdict)
    {
        foreach (var entry in verdict.Replay)
            if (entry.Findings.Count > 0) return entry.Place;
        return null;
    }

    /// <summary>Every small change of an order that can bring a fault of a kind.</summary>
    private static List<Func<Entry[]>> Changes(FindingKind kind, IReadOnlyList<Entry> right, IReadOnlyList<StepId> decoys)
    {
        var changes = new List<Func<Entry[]>>();
        for (var place = 0; place < right.Count; place++)
        {
            var from = place;
            switch (kind)
            {
                case FindingKind.Order or FindingKind.State:
                    for (var to = 0; to < right.Count; to++)
                    {
                        var target = to;
                        if (to != from) changes.Add(() => Moved(right, from, target));
                    }

                    break;
                case FindingKind.TooSoon when right[from].Stated is { } stated && stated > Duration.Zero:
                    changes.Add(() => Hurried(right, from, stated));
                    break;
                case FindingKind.Missing:
                    changes.Add(() => [.. right.Where((_, at) => at != from)]);
                    break;
                case FindingKind.Repeated:
                    for (var to = from + 1; to <= right.Count; to++)
                    {
                        var target = to;
                        changes.Add(() => With(right, target, right[from] with { Stated = null }));
                    }

                    break;
                case FindingKind.Decoy:
                    foreach (var decoy in decoys) changes.Add(() => With(right, from, new Entry(decoy)));
                    break;
            }
        }

        return changes;
    }

    private static Entry[] Moved(IReadOnlyList<Entry> right, int from, int to)
    {
        var moved = right.ToList();
        moved.RemoveAt(from);
        moved.Insert(to, right[from]);
        return [.. moved];
    }

    private static Entry[] With(IReadOnlyList<Entry> right, int at, Entry entry) =>
        [.. right.Take(at), entry, .. right.Skip(at)];

    /// <summary>A third of the wait, in whole seconds: too short for anybody who reckons.</summary>
    private static Entry[] Hurried(IReadOnlyList<Entry> right, int wait, Duration stated) =>
    [
        .. right.Select((entry, at) => at == wait
            ? entry with { Stated = Duration.FromSeconds(Math.Floor(stated.Seconds / 3)) }
            : entry),
    ];
}
