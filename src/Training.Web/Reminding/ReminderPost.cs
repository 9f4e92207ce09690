using MailKit.Net.Smtp;
using Microsoft.Extensions.Localization;
using MimeKit;
using Training.Records.Reminding;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Reminding;

/// <summary>Sends the weekly mails that are due.</summary>
/// <param name="mails">Which they are.</param>
/// <param name="sentences">Says the reminders.</param>
/// <param name="words">The other sentences.</param>
/// <param name="settings">The mail server.</param>
/// <param name="rooms">Names the provider.</param>
/// <param name="place">Where the provider is reached from outside.</param>
/// <param name="time">The date of a mail.</param>
public sealed class ReminderPost(
    WeeklyMails mails, ReminderSentences sentences, IStringLocalizer<Words> words, MailSettings settings, Rooms rooms, ProviderPlace place, TimeProvider time)
{
    /// <summary>Sends what is due, each mail by itself, so that one that is not taken does not keep back the others.</summary>
    /// <param name="cancellation">Ends the work.</param>
    /// <returns>How many were sent, and the first fault, if any.</returns>
    public async Task<(int Sent, Exception? Fault)> SendDue(CancellationToken cancellation)
    {
        if (settings.Server is null) return (0, null);
        var (sent, first) = (0, default(Exception));
        foreach (var mail in await mails.Due(Address() is { } address ? new Uri(address).IdnHost : "localhost"))
        {
            try
            {
                await Send(Write(mail), cancellation);
                await mails.Sent(mail);
                sent++;
            }
            catch (Exception fault) when (fault is not OperationCanceledException)
            {
                first ??= fault;
            }
        }

        return (sent, first);
    }

    /// <summary>The mail, as plain text in the owner's language.</summary>
    /// <param name="mail">What it says.</param>
    public MimeMessage Write(WeeklyMail mail)
    {
        ArgumentNullException.ThrowIfNull(mail);
        return Tongues.In(mail.Language, () =>
        {
            var message = new MimeMessage { MessageId = mail.MessageId, Date = time.GetUtcNow(), Subject = words["{0}: what to look after", mail.Shop] };
            message.From.Add(new MailboxAddress(rooms.Provider, settings.From));
            message.To.Add(new MailboxAddress(mail.Name, mail.Address));
            // Programs that answer by themselves leave such mails alone (RFC 3834 §5).
            message.Headers.Add(HeaderId.AutoSubmitted, "auto-generated");
            string[] lines =
            [
                words["This is what to look after in the next {0} days.", Reminders.DaysAhead],
                "",
                .. mail.Reminders.Select(reminder => "- " + sentences.Whole(reminder)),
                "",
                .. Address() is { } address ? new[] { $"{address}/reminders" } : [],
                words["You get this once a week, and nothing when there is nothing to say. To end it, empty the field of the address on the page of the reminders."],
            ];
            message.Body = new TextPart("plain") { Text = string.Join("\r\n", lines) + "\r\n" };
            return message;
        });
    }

    private string? Address() => place.Address() is { IsOk: true } known ? known.Value.Base : null;

    private async Task Send(MimeMessage message, CancellationToken cancellation)
    {
        using var client = new SmtpClient();
        await client.ConnectAsync(settings.Server!, settings.Port, settings.Security, cancellation);
        if (settings.User is not null) await client.AuthenticateAsync(settings.User, settings.Password, cancellation);
        await client.SendAsync(message, cancellation);
        await client.DisconnectAsync(quit: true, cancellation);
    }
}
