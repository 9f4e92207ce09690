using System.Buffers;
using System.Net;
using System.Net.Sockets;
using MimeKit;
using SmtpServer;
using SmtpServer.ComponentModel;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace Training.Web.Tests.Reminding;

/// <summary>A real mail server in the process, on a port of its own, that keeps what it takes.</summary>
public sealed class MailHouse : IAsyncDisposable
{
    private readonly CancellationTokenSource ending = new();
    private readonly Kept kept = new();
    private readonly Task running;

    public MailHouse()
    {
        using (var free = new TcpListener(IPAddress.Loopback, 0))
        {
            free.Start();
            Port = ((IPEndPoint)free.LocalEndpoint).Port;
        }

        var services = new ServiceProvider();
        services.Add(kept);
        running = new SmtpServer.SmtpServer(
            new SmtpServerOptionsBuilder().ServerName("localhost").Endpoint(endpoint => endpoint.Endpoint(new IPEndPoint(IPAddress.Loopback, Port))).Build(), services)
            .StartAsync(ending.Token);
    }

    public int Port { get; }

    /// <summary>What it took, in order.</summary>
    public IReadOnlyList<MimeMessage> Taken => [.. kept.Messages];

    /// <summary>Whether it refuses every mail.</summary>
    public bool Refuses { set => kept.Refuses = value; }

    public async ValueTask DisposeAsync()
    {
        await ending.CancelAsync();
        try
        {
            await running;
        }
        catch (OperationCanceledException)
        {
            // That is how it ends.
        }

        ending.Dispose();
    }

    private sealed class Kept : MessageStore
    {
        public List<MimeMessage> Messages { get; } = [];

        public bool Refuses { get; set; }

        public override async Task<SmtpResponse> SaveAsync(
            ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
        {
            if (Refuses) return SmtpResponse.TransactionFailed;
            using var stream = new MemoryStream(buffer.ToArray());
            Messages.Add(await MimeMessage.LoadAsync(stream, cancellationToken));
            return SmtpResponse.Ok;
        }
    }
}
