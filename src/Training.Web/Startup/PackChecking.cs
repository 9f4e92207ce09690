using Training.Content;
using Training.Content.Packing;

namespace Training.Web.Startup;

/// <summary>
/// Checks packs of strangers, one at a time and not for ever: whoever writes a pack that takes hours to check holds up one
/// thread and nobody else. One for the whole process.
/// </summary>
/// <param name="clock">Tells when the time is over.</param>
public sealed class PackChecking(TimeProvider clock) : IDisposable
{
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(2);
    private readonly SemaphoreSlim oneAtATime = new(1);

    /// <summary>What a pack would bring; null where that was not known in time, or another pack is still being checked.</summary>
    /// <param name="pack">The pack.</param>
    /// <param name="here">The content that is here.</param>
    public async Task<PackIntake?> Look(Pack pack, IReadOnlyList<ContentFile> here)
    {
        if (!await oneAtATime.WaitAsync(Longest)) return null;
        var checking = Task.Run(() =>
        {
            try
            {
                return PackIntake.Of(pack, here);
            }
            finally
            {
                oneAtATime.Release();
            }
        });
        try
        {
            return await checking.WaitAsync(Longest, clock);
        }
        catch (TimeoutException)
        {
            return null;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => oneAtATime.Dispose();
}
