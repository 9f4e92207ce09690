namespace Training.Records.Results;

/// <summary>
/// What the answers to a paper say about its questions. A row is one paper, a column one question, a value whether the
/// answer was right. All variances are those of the whole group (divided by n), as KR-20 needs them.
/// </summary>
public sealed class ItemAnalysis
{
    private ItemAnalysis(int papers, IReadOnlyList<ItemFigures> items, double? reliability, double? errorOfMeasurement) =>
        (Papers, Items, Reliability, ErrorOfMeasurement) = (papers, items, reliability, errorOfMeasurement);

    /// <summary>How many papers were looked at.</summary>
    public int Papers { get; }

    /// <summary>The figures of each question, in their order.</summary>
    public IReadOnlyList<ItemFigures> Items { get; }

    /// <summary>
    /// KR-20, Kuder and Richardson, Psychometrika 2 (1937) 151–160: k/(k−1) · (1 − Σpq/σ²). How far the questions measure
    /// one thing. Null where everybody has the same total, or with one question.
    /// </summary>
    public double? Reliability { get; }

    /// <summary>The standard error of measurement, σ · √(1 − reliability), in questions; null where there is no reliability.</summary>
    public double? ErrorOfMeasurement { get; }

    /// <summary>Analyses papers that asked the same number of questions.</summary>
    /// <param name="papers">For each paper, whether each answer was right.</param>
    /// <exception cref="ArgumentException">The papers have different numbers of questions.</exception>
    public static ItemAnalysis Of(IReadOnlyList<IReadOnlyList<bool>> papers)
    {
        ArgumentNullException.ThrowIfNull(papers);
        if (papers.Count == 0) return new(0, [], null, null);
        var questions = papers[0].Count;
        if (papers.Any(paper => paper.Count != questions))
            throw new ArgumentException("The papers have different numbers of questions.", nameof(papers));
        var totals = papers.Select(paper => (double)paper.Count(right => right)).ToList();
        var items = Enumerable.Range(0, questions).Select(question => Figures(papers, totals, question)).ToList();
        var variance = Variance(totals);
        if (questions < 2 || variance == 0) return new(papers.Count, items, null, null);
        var spread = items.Sum(item => item.Facility * (1 - item.Facility));
        var reliability = questions / (questions - 1.0) * (1 - spread / variance);
        return new(papers.Count, items, reliability, Error(variance, reliability));
    }

    /// <summary>
    /// The standard error of measurement. Where all questions of every paper are answered alike the reliability is 1 and
    /// rounding may put it a hair above: no error, never the root of a negative number.
    /// </summary>
    internal static double Error(double variance, double reliability) => Math.Sqrt(Math.Max(0, variance * (1 - reliability)));

    private static ItemFigures Figures(IReadOnlyList<IReadOnlyList<bool>> papers, List<double> totals, int question)
    {
        var values = papers.Select(paper => paper[question] ? 1.0 : 0.0).ToList();
        var rest = totals.Select((total, paper) => total - values[paper]).ToList();
        return new(values.Average(), Correlation(values, totals), Correlation(values, rest));
    }

    private static double? Correlation(List<double> xs, List<double> ys)
    {
        var (meanX, meanY) = (xs.Average(), ys.Average());
        var scale = Math.Sqrt(Variance(xs) * Variance(ys));
        return scale == 0 ? null : xs.Zip(ys, (x, y) => (x - meanX) * (y - meanY)).Average() / scale;
    }

    private static double Variance(List<double> values)
    {
        var mean = values.Average();
        return values.Average(value => (value - mean) * (value - mean));
    }
}

/// <summary>What the answers say about one question.</summary>
/// <param name="Facility">The share of right answers, 0 to 1.</param>
/// <param name="WithTotal">The point-biserial correlation with the total; null where all answered alike.</param>
/// <param name="WithRest">
/// The same with the total of the other questions, which the question itself does not prop up: what a judgement is made from.
/// </param>
public sealed record ItemFigures(double Facility, double? WithTotal, double? WithRest);
