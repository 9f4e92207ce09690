using Training.Web.Reminding;

namespace Training.Web.Startup;

/// <summary>Sends the weekly mails, where there is a mail server; what was not taken is tried again after ten minutes.</summary>
public sealed class ReminderClock(
    IServiceScopeFactory scopes, IHostApplicationLifetime lifetime, MailSettings settings, TimeProvider time, ILogger<ReminderClock> log)
    : RepeatedWork(scopes, time, log, TimeSpan.FromMinutes(10))
{
    /// <inheritdoc/>
    protected override string Failed => "The weekly mails could not be made; it is tried again in ten minutes.";

    /// <inheritdoc/>
    protected override async Task<bool> Ready(CancellationToken stopping)
    {
        if (settings.Server is null) return false;
        if (settings.From.Length == 0)
        {
            Log.LogWarning("No mail is sent: the setting Mail:From is missing. Set it to the address that mails come from.");
            return false;
        }

        await Started(lifetime, stopping);
        return true;
    }

    /// <inheritdoc/>
    protected override async Task Turn(IServiceProvider services, CancellationToken stopping)
    {
        var (_, fault) = await services.GetRequiredService<ReminderPost>().SendDue(stopping);
        if (fault is not null) Log.LogWarning(fault, "A weekly mail was not sent; it is tried again in ten minutes.");
    }
}
