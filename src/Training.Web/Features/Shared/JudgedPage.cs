using Training.Records.Asking;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;
using Training.Web.Drawings;

namespace Training.Web.Features.Shared;

/// <summary>A judged answer as a part of a page.</summary>
/// <param name="Judged">The answer with what is said of it.</param>
/// <param name="Id">An id that nothing else of the page has.</param>
public sealed record JudgedPage(JudgedAnswerView Judged, string Id)
{
    /// <summary>The verdict on an order.</summary>
    /// <param name="order">The order.</param>
    public VerdictView Verdict(GradedOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        return new(order.Procedure, order.Answer, order.Verdict) { Id = Id };
    }
}

/// <summary>
/// Findings with their signs, as a reader meets them going through the order: by the place where each happened, and what
/// was left out last. The verdict itself, as it is kept and handed on, lists them kind by kind.
/// </summary>
/// <param name="Findings">The findings.</param>
/// <param name="Procedure">What they were judged by, in the reader's language.</param>
/// <param name="Id">An id that no other list of the page has.</param>
public sealed record FindingsView(IReadOnlyList<Finding> Findings, Procedure Procedure, string Id)
{
    private readonly int[] order = [.. Findings.Index().OrderBy(item => PlaceOf(item.Item)).Select(item => item.Index)];

    /// <summary>The findings in the order in which they are shown, each with its sign.</summary>
    public IEnumerable<(Finding Finding, FaultMark Mark)> Shown => order.Select(at => (Findings[at], Mark(at)));

    /// <summary>The sign of a finding.</summary>
    /// <param name="finding">Its place in the verdict's list, from 0.</param>
    public FaultMark Mark(int finding) => new(Array.IndexOf(order, finding) + 1, Findings[finding].Stakes.Severity);

    // The entry that caused it: where a pair stands the wrong way round, the one that came too early; otherwise the later one.
    private static int PlaceOf(Finding finding) => finding.Places.Where(place => place > 0).ToArray() is not { Length: > 0 } places
        ? int.MaxValue
        : finding.Kind == FindingKind.Order ? places.Min() : places.Max();
}
