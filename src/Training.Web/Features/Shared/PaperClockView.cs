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

    /// <summary>In the last five minutes, how many are left, the one that runs counted whole; null before.</summary>
    public int? SoonOver => Seconds > 300 ? null : Math.Max(1, (int)Math.Ceiling(Seconds / 60m));
}
