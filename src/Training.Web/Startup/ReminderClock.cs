using Training.Web.Reminding;

namespace Training.Web.Startup;

/// <summary>Sends the weekly mails, where there is a mail server; what was not taken is tried again after ten minutes.</summary>
public sealed class ReminderClock(
    IServiceScopeFactory scopes, IHostApplicationLifetime lifetime, MailSettings settings, TimeProvider time, ILogger<ReminderClock> log) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromMinutes(10);

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (settings.Server is null) return;
        if (settings.From.Length == 0)
        {
            log.LogWarning("No mail is sent: the setting Mail:From is missing. Set it to the address that mails come from.");
            return;
        }

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
                var (_, fault) = await scope.ServiceProvider.GetRequiredService<ReminderPost>().SendDue(stoppingToken);
                if (fault is not null) log.LogWarning(fault, "A weekly mail was not sent; it is tried again in ten minutes.");
            }
            catch (Exception problem) when (problem is not OperationCanceledException)
            {
                log.LogError(problem, "The weekly mails could not be made; it is tried again in ten minutes.");
            }
        }
        while (await timer.WaitForNextTickAsync(stoppingToken));
    }
}
