using MailKit.Security;

namespace Training.Web.Reminding;

/// <summary>By which mail server the house sends (<c>Mail:Server</c> and what stands beside it).</summary>
/// <param name="configuration">The settings.</param>
public sealed class MailSettings(IConfiguration configuration)
{
    private const int TlsPort = 465;

    /// <summary>The server; null where the house sends no mail.</summary>
    public string? Server { get; } = configuration["Mail:Server"] is { Length: > 0 } server ? server : null;

    /// <summary>Its port; 587, the port of submission (RFC 6409), unless it is said.</summary>
    public int Port { get; } = configuration.GetValue("Mail:Port", 587);

    /// <summary>The address that mails come from.</summary>
    public string From { get; } = configuration["Mail:From"] ?? "";

    /// <summary>The name to sign in with; null where the server asks for none.</summary>
    public string? User { get; } = configuration["Mail:User"] is { Length: > 0 } user ? user : null;

    /// <summary>The password to it.</summary>
    public string Password { get; } = configuration["Mail:Password"] ?? "";

    /// <summary>How the way to it is kept secret: always, unless <c>Mail:Encryption</c> says <c>none</c>, for a server on the same machine.</summary>
    public SecureSocketOptions Security => configuration["Mail:Encryption"] == "none" ? SecureSocketOptions.None
        : Port == TlsPort ? SecureSocketOptions.SslOnConnect
        : SecureSocketOptions.StartTls;
}
