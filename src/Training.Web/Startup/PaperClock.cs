using Training.Records.Examining;

namespace Training.Web.Startup;

/// <summary>Closes papers whose time is up, once a minute; what was saved in time is graded.</summary>
public sealed class PaperClock(IServiceScopeFactory scopes, TimeProvider time, ILogger<PaperClock> log) : RepeatedWork(scopes, time, log, Pause)
{
    private static readonly TimeSpan Pause = TimeSpan.FromMinutes(1);

    /// <inheritdoc/>
    protected override string Failed => "Papers whose time is up could not be closed; it is tried again in a minute.";

    /// <inheritdoc/>
    protected override async Task<bool> Ready(CancellationToken stopping)
    {
        await Task.Delay(Pause, Time, stopping);
        return true;
    }

    /// <inheritdoc/>
    protected override async Task Turn(IServiceProvider services, CancellationToken stopping) =>
        await services.GetRequiredService<Papers>().CloseOverdue();
}
