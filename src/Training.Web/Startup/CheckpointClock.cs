using Training.Records.Ledger;

namespace Training.Web.Startup;

/// <summary>Signs a checkpoint of the log within half a minute of anything new in it.</summary>
public sealed class CheckpointClock(
    IServiceScopeFactory scopes, IHostApplicationLifetime lifetime, TimeProvider time, ILogger<CheckpointClock> log)
    : RepeatedWork(scopes, time, log, TimeSpan.FromSeconds(30))
{
    private string? said;

    /// <inheritdoc/>
    protected override string Failed => "No checkpoint of the log could be signed; it is tried again in half a minute.";

    /// <inheritdoc/>
    protected override async Task<bool> Ready(CancellationToken stopping)
    {
        await Started(lifetime, stopping);
        return true;
    }

    /// <inheritdoc/>
    protected override async Task Turn(IServiceProvider services, CancellationToken stopping)
    {
        var outcome = await services.GetRequiredService<Checkpoints>().SignWhatIsNew();
        var sentence = outcome.IsOk ? null : outcome.Fault.Sentence;
        if (sentence is not null && sentence != said) Log.LogWarning("{Sentence}", sentence);
        said = sentence;
    }
}
