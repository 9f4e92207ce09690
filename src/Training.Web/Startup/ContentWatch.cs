using Training.Records.Publishing;

namespace Training.Web.Startup;

/// <summary>
/// Looks at the content folder every few seconds and publishes it when a file has changed. Asking is dearer than being
/// told, but works on every file system, and a folder that is half copied is simply read again on the next look.
/// </summary>
public sealed class ContentWatch(House house, Publisher publisher, TimeProvider time, ILogger<ContentWatch> log) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(5);
    private readonly FolderWatch watch = new(house.Content, publisher);

    /// <summary>Reads the folder for the first time and publishes it.</summary>
    public Task<PublishingState?> Begin() => watch.Look();

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Pause, time);
        var told = "";
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
            try
            {
                if (await watch.Look() is not { } state) continue;
                var said = state.IsHeldBack
                    ? $"{state.Problems.First(problem => problem.HoldsBack)} Publication {state.Served} is served on."
                    : $"Publication {state.Served} is served.";
                // What goes on being wrong is tried again and again, and told once.
                if (said == told) continue;
                told = said;
                if (state.IsHeldBack) log.LogWarning("The content folder has errors: {Said}", said);
                else log.LogInformation("{Said}", said);
            }
            catch (Exception problem) when (problem is not OperationCanceledException)
            {
                log.LogError(problem, "The content folder could not be published; it is tried again.");
            }
        }
    }
}
