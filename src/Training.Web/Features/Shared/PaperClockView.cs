using NodaTime;
using Training.Records;

namespace Training.Web.Features.Shared;

/// <summary>How long a paper is still open.</summary>
/// <param name="Paper">The paper.</param>
/// <param name="EndsAt">When its time is over.</param>
/// <param name="Left">How much is left by the server's clock.</param>
/// <param name="Zone">The time zone that times are told in.</param>
public sealed record PaperClockView(PaperId Paper, Instant EndsAt, Duration Left, string Zone)
{
    /// <summary>Whole seconds that are left, never negative.</summary>
    public long Seconds => Math.Max(0, (long)Math.Floor(Left.TotalSeconds));
}
