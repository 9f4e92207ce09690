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

/// <summary>Findings with their signs.</summary>
/// <param name="Findings">The findings.</param>
/// <param name="Procedure">What they were judged by, in the reader's language.</param>
/// <param name="Id">An id that no other list of the page has.</param>
public sealed record FindingsView(IReadOnlyList<Finding> Findings, Procedure Procedure, string Id)
{
    /// <summary>The sign of a finding.</summary>
    /// <param name="finding">Its place in the list, from 0.</param>
    public FaultMark Mark(int finding) => new(finding + 1, Findings[finding].Stakes.Severity);
}
