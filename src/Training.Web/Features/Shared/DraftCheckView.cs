using System.Globalization;
using System.Numerics;
using Training.Content;
using Training.Content.Writing;
using Training.Sequencing.Analysis;
using Training.Sequencing.Procedures;

namespace Training.Web.Features.Shared;

/// <summary>What is said of a draft, as it is shown.</summary>
/// <param name="Report">What was found.</param>
public sealed record DraftCheckView(DraftReport Report)
{
    /// <summary>The most problems that are told one by one: nobody mends more before the next check.</summary>
    public const int MostTold = 200;

    /// <summary>What keeps the draft back, as far as it is told; what runs in a circle is told by its rules.</summary>
    public IReadOnlyList<IGrouping<string, ContentProblem>> Errors { get; } =
    [
        .. Report.Problems.Where(problem => problem.HoldsBack)
            .Where(problem => Report.Loop.Count == 0 || !problem.Sentence.StartsWith("The rules run in a circle", StringComparison.Ordinal))
            .Take(MostTold).GroupBy(problem => problem.Sentence),
    ];

    /// <summary>What is worth knowing, as far as it is told.</summary>
    public IReadOnlyList<ContentProblem> Remarks { get; } = [.. Report.Problems.Where(problem => !problem.HoldsBack).Take(MostTold)];

    /// <summary>How many things keep the draft back.</summary>
    public int Faults { get; } = Report.Problems.Count(problem => problem.HoldsBack);

    /// <summary>How many problems are not told one by one.</summary>
    public int Untold => Math.Max(0, Faults - MostTold) + Math.Max(0, Report.Problems.Count - Faults - MostTold);

    /// <summary>What a step says.</summary>
    /// <param name="step">The step.</param>
    public string NameOf(StepId step) => Report.Procedure is { } procedure ? procedure.NameOf(step) : step.Value;

    /// <summary>A number of orders as people read it; a great one as a power of ten.</summary>
    /// <param name="accepted">The number.</param>
    public static string Count(AcceptedOrders accepted)
    {
        ArgumentNullException.ThrowIfNull(accepted);
        var (about, count) = (accepted.IsExact ? "" : "≈ ", accepted.Count);
        return about + (count < 1_000_000_000 ? count.ToString("N0", CultureInfo.CurrentCulture) : Power(count));
    }

    /// <summary>A chance as one in so many.</summary>
    /// <param name="chance">From 0 to 1.</param>
    public static string OneIn(double chance)
    {
        if (chance <= 0) return "∞";
        var times = 1 / chance;
        return times < 1_000_000_000 ? Math.Round(times).ToString("N0", CultureInfo.CurrentCulture) : Power(new BigInteger(times));
    }

    private static string Power(BigInteger count)
    {
        var exponent = (int)Math.Floor(BigInteger.Log10(count));
        var front = Math.Exp(BigInteger.Log(count) - (exponent * Math.Log(10)));
        return $"{front.ToString("0.0", CultureInfo.CurrentCulture)} × 10^{exponent}";
    }
}
