using Training.Records.Ledger;

namespace Training.Web.Startup;

/// <summary>Signs a checkpoint of the log within half a minute of anything new in it.</summary>
public sealed class CheckpointClock(
    IServiceScopeFactory scopes, IHostApplicationLifetime lifetime, TimeProvider time, ILogger<CheckpointClock> log) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(30);
    private string? said;

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        // Before the server listens it does not know its own address.
        var started = new TaskCompletionSource();
        using var registration = lifetime.ApplicationStarted.Register(started.SetResult);
        await started.Task.WaitAsync(stoppingToken);
        using var timer = new PeriodicTimer(Pause, time);
        do
        {
            try
            {
                await using var scope = scopes.CreateAsyncScope();
                var outcome = await scope.ServiceProvider.GetRequiredService<Checkpoints>().SignWhatIsNew();
                var sentence = outcome.IsOk ? null : outcome.Fault.Sentence;
                if (sentence is not null && sentence != said) log.LogWarning("{Sentence}", sentence);
                said = sentence;
            }
            catch (Exception problem) when (problem is not OperationCanceledException)
            {
                log.LogError(problem, "No checkpoint of the log could be signed; it is tried again in half a minute.");
            }
        }
        while (await timer.WaitForNextTickAsync(stoppingToken));
    }
}
