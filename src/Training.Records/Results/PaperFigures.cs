using Training.Content.Scenarios;

namespace Training.Records.Results;

/// <summary>
/// What the papers of a competency say about its questions, reckoned from sums: the same figures that
/// <see cref="ItemAnalysis"/> reckons from the answers themselves.
/// </summary>
public sealed class PaperFigures
{
    /// <summary>Below this many papers no figure says much. Common practice, no published source.</summary>
    public const int EnoughPapers = 30;

    /// <summary>Below this many papers a discrimination is mostly chance. Common practice, no published source.</summary>
    public const int EnoughForDiscrimination = 100;

    /// <summary>A discrimination below this tells those who know from those who do not poorly. Common practice, from memory.</summary>
    public const double PoorDiscrimination = 0.2;

    private PaperFigures()
    {
    }

    /// <summary>How many passed, of how many papers; each person's first one.</summary>
    public required Share Passed { get; init; }

    /// <summary>How many questions a paper asks.</summary>
    public required int Questions { get; init; }

    /// <summary>KR-20 by the places of the paper (<see cref="ItemAnalysis.Reliability"/>); null where it cannot be reckoned.</summary>
    public required double? Reliability { get; init; }

    /// <summary>The standard error of measurement, in questions; null where there is no reliability.</summary>
    public required double? ErrorOfMeasurement { get; init; }

    /// <summary>The questions, the hardest first; those that fewer than five people were asked are put together.</summary>
    public required IReadOnlyList<QuestionFigures> Items { get; init; }

    /// <summary>The figures of sums; null for fewer than five papers.</summary>
    internal static PaperFigures? Of(PaperSum sum, IEnumerable<ItemSum> items)
    {
        if (sum.Papers < SmallGroups.Fewest) return null;
        var known = items.ToDictionary(item => (item.Kind, item.Scenario));
        var (n, k) = ((double)sum.Papers, sum.RightAtPlace.Count);
        var variance = Variance(n, sum.Total, sum.TotalSquares);
        var spread = sum.RightAtPlace.Sum(right => right / n * (1 - (right / n)));
        double? reliability = k < 2 || variance == 0 ? null : k / (k - 1.0) * (1 - (spread / variance));
        return new()
        {
            Passed = new(sum.Passed, sum.Papers),
            Questions = k,
            Reliability = reliability,
            ErrorOfMeasurement = reliability is { } known20 ? ItemAnalysis.Error(variance, known20) : null,
            Items = [.. Parts(known.Values.OrderBy(item => item.Scenario.Value, StringComparer.Ordinal).ThenBy(item => item.Kind)
                    .Select(item => ((item.Kind, item.Scenario), new Share(item.Right, item.Asked))).ToList())
                .Select(part => new QuestionFigures(part, part.Keys is [var alone] ? Discrimination(known[alone]) : null))
                .OrderBy(item => item.Part.Share.Value)],
        };
    }

    /// <summary>
    /// The questions, those that fewer than five were asked together with the one of the others that the fewest were:
    /// several questions were asked of the same people, so five answers to small ones could be those of two.
    /// </summary>
    private static IEnumerable<Part<(QuestionKind Kind, ScenarioId Scenario)>> Parts(IReadOnlyList<((QuestionKind, ScenarioId) Key, Share Share)> items)
    {
        var shown = items.Where(item => item.Share.Whole >= SmallGroups.Fewest).ToList();
        var together = items.Where(item => item.Share.Whole < SmallGroups.Fewest).ToList();
        if (together.Count > 0 && shown.Count > 0)
        {
            var smallest = shown.MinBy(item => item.Share.Whole);
            shown.Remove(smallest);
            together.Add(smallest);
        }

        IEnumerable<Part<(QuestionKind Kind, ScenarioId Scenario)>> alone = shown.Select(item => new Part<(QuestionKind Kind, ScenarioId Scenario)>([item.Key], item.Share));
        return together.Count == 0 ? alone : alone.Append(Part<(QuestionKind Kind, ScenarioId Scenario)>.Of(together));
    }

    /// <summary>The point-biserial correlation of a right answer with the right answers to the others; null where it cannot be reckoned.</summary>
    private static double? Discrimination(ItemSum item)
    {
        var n = (double)item.Asked;
        var p = item.Right / n;
        var scale = Math.Sqrt(p * (1 - p) * Variance(n, item.Rest, item.RestSquares));
        return scale == 0 ? null : ((item.RestWhereRight / n) - (p * item.Rest / n)) / scale;
    }

    // Whole numbers as far as they go, so that equal totals have no variance at all.
    private static double Variance(double n, long sum, long squares) => ((squares * n) - ((double)sum * sum)) / (n * n);
}

/// <summary>What the answers say about a question, or about several that are put together.</summary>
/// <param name="Part">The question, and how many of how many answered it rightly: its facility.</param>
/// <param name="Discrimination">The point-biserial correlation with the rest of the paper; null where it cannot be reckoned or may not be shown.</param>
public sealed record QuestionFigures(Part<(QuestionKind Kind, ScenarioId Scenario)> Part, double? Discrimination);
