using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Overviews;

namespace Training.Web.Features.People;

/// <summary>One person.</summary>
/// <param name="Person">The person.</param>
/// <param name="Records">Their records, newest first.</param>
/// <param name="Ways">Their way to each competency; empty for those who are no technicians.</param>
/// <param name="IsSelf">Whether the reader looks at themself.</param>
public sealed record PersonPage(
    PersonView Person, IReadOnlyList<RecordLine> Records, IReadOnlyList<CompetencyPath> Ways, bool IsSelf)
{
    /// <summary>Where a one-time password waits to be shown once.</summary>
    public const string GivenPassword = "one-time-password";

    /// <summary>The one-time password that was just given; shown once.</summary>
    public string? OneTimePassword { get; init; }
}
