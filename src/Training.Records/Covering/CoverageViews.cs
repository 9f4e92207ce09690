using NodaTime;
using Training.Content.Competencies;
using Training.Records.Certifying;

namespace Training.Records.Covering;

/// <summary>Who may do what in a shop from today on.</summary>
/// <param name="Today">The first day.</param>
/// <param name="LastDay">The last day that is looked at.</param>
/// <param name="Competencies">The competencies: those that are served, then others that people still hold.</param>
public sealed record ShopCoverage(LocalDate Today, LocalDate LastDay, IReadOnlyList<CompetencyCoverage> Competencies);

/// <summary>A competency in a shop from today on.</summary>
/// <param name="Competency">The competency.</param>
/// <param name="Title">What it is called.</param>
/// <param name="Need">How many people the shop needs on each day; 0 where its owner has said nothing.</param>
/// <param name="Holding">The records that hold today, the first to lapse first.</param>
/// <param name="NotHolding">The newest records of those who may not do it today: suspended, expired or withdrawn.</param>
/// <param name="Steps">How many hold it on each day, if nobody is sent and nothing is confirmed.</param>
public sealed record CompetencyCoverage(
    CompetencyId Competency,
    string Title,
    int Need,
    IReadOnlyList<RecordLine> Holding,
    IReadOnlyList<RecordLine> NotHolding,
    IReadOnlyList<CoverageStep> Steps)
{
    /// <summary>The first day on which fewer hold it than are needed; null where that does not happen.</summary>
    public LocalDate? FirstBelow { get; } = CoverageForecast.FirstBelow(Steps, Need);

    /// <summary>How many more people must earn it so that the need can be met at all: no renewal brings them.</summary>
    public int Lacking => Math.Max(0, Need - Holding.Count);

    /// <summary>The fewest renewals that keep the number from falling; empty where the competency is no longer served.</summary>
    public IReadOnlyList<AdvisedRenewal> Renewals { get; init; } = [];

    /// <summary>The confirmations that the plan counts on, the first to run out first.</summary>
    public IReadOnlyList<RecordLine> Confirmations { get; init; } = [];
}

/// <summary>That somebody should renew.</summary>
/// <param name="Record">The record that they hold today.</param>
/// <param name="Plan">When.</param>
/// <param name="IsFirst">False where it renews a renewal of the same plan.</param>
public sealed record AdvisedRenewal(RecordLine Record, PlannedRenewal Plan, bool IsFirst);
