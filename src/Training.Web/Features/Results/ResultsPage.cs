using Training.Content.Competencies;
using Training.Records.Results;

namespace Training.Web.Features.Results;

/// <summary>All procedures.</summary>
/// <param name="Source">Where the orders were given.</param>
/// <param name="Procedures">The procedures.</param>
/// <param name="Papers">The competencies whose papers can be looked at; none for people of a shop.</param>
public sealed record ResultsPage(WorkSource Source, IReadOnlyList<ProcedureOverview> Procedures, IReadOnlyList<Competency> Papers)
{
    /// <summary>Those in which something is got wrong, the surest first.</summary>
    public IEnumerable<ProcedureOverview> WithFaults =>
        Procedures.Where(one => one.Worst is not null).OrderByDescending(one => one.Worst!.AtLeast);

    /// <summary>Those in which nothing is, or nothing that may be shown.</summary>
    public IEnumerable<ProcedureOverview> Others => Procedures.Where(one => one.Worst is null);
}
