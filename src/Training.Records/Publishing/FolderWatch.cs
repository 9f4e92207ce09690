using Training.Content;

namespace Training.Records.Publishing;

/// <summary>
/// Looks at the content folder, as often as it is asked, and publishes it where a file has changed. What keeps it from
/// being read is told where trainers look, and it is tried again on the next look. One look at a time.
/// </summary>
/// <param name="folder">The folder that holds <c>modules/</c>, <c>procedures/</c> and the rest.</param>
/// <param name="publisher">Publishes it.</param>
public sealed class FolderWatch(string folder, Publisher publisher)
{
    private IReadOnlyList<FileStamp>? seen;
    private IReadOnlyList<ContentFile>? read;

    /// <summary>Publishes what has changed since the last look; the first look publishes always.</summary>
    /// <returns>What is served and what is wrong; null where nothing has changed.</returns>
    /// <exception cref="Exception">It could not be published, by a fault of ours or of the disk; trainers have been told.</exception>
    public async Task<PublishingState?> Look()
    {
        try
        {
            var stamps = ContentFolder.Stamps(folder);
            // What could not be read may be readable now without having changed: only then it is read again.
            if (seen is not null && stamps.SequenceEqual(seen) && read!.All(file => file.Fault is null)) return null;
            var files = ContentFolder.Read(folder);
            if (read is not null && seen is not null && files.SequenceEqual(read))
            {
                seen = stamps;
                return null;
            }

            var state = await publisher.Publish(files);
            (seen, read) = (stamps, files);
            return state;
        }
        catch (DirectoryNotFoundException)
        {
            seen = null;
            return await publisher.NotRead("There is no content folder, or a part of it went away while it was read. It is looked for again every few seconds.");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            seen = null;
            return await publisher.NotRead("The content folder, or a folder in it, cannot be read: see that the server may read it. It is tried again every few seconds.");
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            seen = null;
            await publisher.NotRead("The content folder could not be published, and not because of what stands in it. It is tried again every few seconds; the server's log says more.");
            throw;
        }
    }
}
