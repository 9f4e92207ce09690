using Training.Records.Examining;

namespace Training.Web.Startup;

/// <summary>Closes papers whose time is up, once a minute; what was saved in time is graded.</summary>
public sealed class PaperClock(IServiceScopeFactory scopes, TimeProvider time, ILogger<PaperClock> log) : BackgroundService
{
    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(TimeSpan.FromMinutes(1), time);
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
            try
            {
                await using var scope = scopes.CreateAsyncScope();
                await scope.ServiceProvider.GetRequiredService<Papers>().CloseOverdue();
            }
            catch (Exception problem) when (problem is not OperationCanceledException)
            {
                log.LogError(problem, "Papers whose time is up could not be closed; it is tried again in a minute.");
            }
        }
    }
}
