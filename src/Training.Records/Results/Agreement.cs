namespace Training.Records.Results;

/// <summary>
/// How far two people who judged the same things agree beyond chance: Cohen's kappa, Educational and Psychological
/// Measurement 20 (1960) 37–46, (observed − expected) / (1 − expected), where what is expected follows from how often each
/// of them gives each judgement.
/// </summary>
public sealed record Agreement
{
    private Agreement(Share observed, double expected) => (Observed, Expected) = (observed, expected);

    /// <summary>In how many of how many things both judged alike.</summary>
    public Share Observed { get; }

    /// <summary>The share in which they would be alike by chance.</summary>
    public double Expected { get; }

    /// <summary>1 is full agreement, 0 no more than chance; null of nothing, or where both gave one and the same judgement to all.</summary>
    public double? Kappa => Observed.Value is { } observed && Expected < 1 ? (observed - Expected) / (1 - Expected) : null;

    /// <summary>
    /// The interval of kappa by the large-sample standard error of the same paper, √(pₒ(1−pₒ) / (n(1−pₑ)²)); from memory.
    /// Null where there is no kappa.
    /// </summary>
    public Interval? Interval()
    {
        if (Kappa is not { } kappa || Observed.Value is not { } observed) return null;
        var reach = Results.Interval.Z * Math.Sqrt(observed * (1 - observed) / (Observed.Whole * (1 - Expected) * (1 - Expected)));
        return new(Math.Max(-1, kappa - reach), Math.Min(1, kappa + reach));
    }

    /// <summary>Compares two people's judgements of the same things.</summary>
    /// <typeparam name="T">What a judgement is.</typeparam>
    /// <param name="pairs">For each thing, the first one's judgement and the second one's.</param>
    public static Agreement Of<T>(IReadOnlyCollection<(T First, T Second)> pairs) where T : notnull
    {
        ArgumentNullException.ThrowIfNull(pairs);
        return Of(pairs.Select(pair => (pair.First, pair.Second, 1L)));
    }

    /// <summary>Compares two people's judgements that are counted already.</summary>
    /// <typeparam name="T">What a judgement is.</typeparam>
    /// <param name="counted">The first one's judgement and the second one's, and of how many things both were so.</param>
    public static Agreement Of<T>(IEnumerable<(T First, T Second, long Times)> counted) where T : notnull
    {
        var (all, alike) = (0L, 0L);
        var (first, second) = (new Dictionary<T, long>(), new Dictionary<T, long>());
        foreach (var (one, other, times) in counted)
        {
            all += times;
            if (one.Equals(other)) alike += times;
            first[one] = first.GetValueOrDefault(one) + times;
            second[other] = second.GetValueOrDefault(other) + times;
        }

        if (all == 0) return new(new(0, 0), 0);
        return new(new(alike, all), first.Sum(each => (double)each.Value * second.GetValueOrDefault(each.Key)) / ((double)all * all));
    }
}
