namespace Training.Web.Startup;

/// <summary>Work that is done again and again while the server runs. A turn that fails is told in the log, and the next one comes.</summary>
/// <param name="scopes">Each turn has a scope of its own.</param>
/// <param name="time">Tells when the next turn is due.</param>
/// <param name="log">Where a turn that failed is told.</param>
/// <param name="pause">How long it is from turn to turn.</param>
public abstract class RepeatedWork(IServiceScopeFactory scopes, TimeProvider time, ILogger log, TimeSpan pause) : BackgroundService
{
    /// <summary>Tells when the next turn is due.</summary>
    protected TimeProvider Time { get; } = time;

    /// <summary>Where a turn that failed is told.</summary>
    protected ILogger Log { get; } = log;

    /// <summary>What is said of a turn that failed.</summary>
    protected abstract string Failed { get; }

    /// <summary>Until when no turn begins; false where none ever does.</summary>
    /// <param name="stopping">Ends the waiting.</param>
    protected abstract Task<bool> Ready(CancellationToken stopping);

    /// <summary>One turn.</summary>
    /// <param name="services">What this turn works with.</param>
    /// <param name="stopping">Ends the turn.</param>
    protected abstract Task Turn(IServiceProvider services, CancellationToken stopping);

    /// <summary>Waits until the server listens: before that it does not know its own address.</summary>
    /// <param name="lifetime">The server's.</param>
    /// <param name="stopping">Ends the waiting.</param>
    protected static async Task Started(IHostApplicationLifetime lifetime, CancellationToken stopping)
    {
        ArgumentNullException.ThrowIfNull(lifetime);
        var started = new TaskCompletionSource();
        using var registration = lifetime.ApplicationStarted.Register(started.SetResult);
        await started.Task.WaitAsync(stopping);
    }

    /// <inheritdoc/>
    protected sealed override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (!await Ready(stoppingToken)) return;
        using var timer = new PeriodicTimer(pause, Time);
        do
        {
            try
            {
                await using var scope = scopes.CreateAsyncScope();
                await Turn(scope.ServiceProvider, stoppingToken);
            }
            catch (Exception problem) when (problem is not OperationCanceledException)
            {
                Log.LogError(problem, "{Sentence}", Failed);
            }
        }
        while (await timer.WaitForNextTickAsync(stoppingToken));
    }
}
