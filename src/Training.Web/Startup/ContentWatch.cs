using Training.Content;
using Training.Records.Publishing;

namespace Training.Web.Startup;

/// <summary>
/// Looks at the content folder every few seconds and publishes it when a file has changed. Asking is dearer than being
/// told, but works on every file system, and a folder that is half copied is simply read again on the next look.
/// </summary>
public sealed class ContentWatch(House house, Publisher publisher, TimeProvider time, ILogger<ContentWatch> log) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(5);

    /// <summary>Reads the folder and publishes it.</summary>
    public Task<PublishingState> PublishNow() => publisher.Publish(ContentFolder.Read(house.Content));

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var seen = Stamp();
        using var timer = new PeriodicTimer(Pause, time);
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
            try
            {
                var now = Stamp();
                if (now == seen) continue;
                var state = await PublishNow();
                seen = now;
                if (state.IsHeldBack) log.LogWarning("The content folder has errors; publication {Served} is served on.", state.Served);
                else log.LogInformation("Publication {Served} is served.", state.Served);
            }
            catch (Exception problem) when (problem is not OperationCanceledException)
            {
                log.LogError(problem, "The content folder could not be published; it is tried again.");
            }
        }
    }

    private (int Files, long Newest, long Bytes) Stamp()
    {
        var files = new DirectoryInfo(house.Content).GetFiles("*", SearchOption.AllDirectories);
        return (files.Length, files.Select(file => file.LastWriteTimeUtc.Ticks).DefaultIfEmpty(0).Max(), files.Sum(file => file.Length));
    }
}
