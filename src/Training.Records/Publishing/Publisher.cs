using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Training.Content;
using Training.Records.Accounts;
using Training.Records.Ledger;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Publishing;

/// <summary>
/// Publishes content. A folder with an error changes nothing: what was published before is served on, also after a
/// restart, and the trainer is told. One for the whole process.
/// </summary>
public sealed class Publisher : IDisposable
{
    private readonly IServiceScopeFactory scopes;
    private readonly Library library;
    private readonly Archive archive;
    private readonly TimeProvider clock;
    private readonly SemaphoreSlim oneAtATime = new(1);
    private volatile PublishingState state = new(0, null, null, []);

    internal Publisher(IServiceScopeFactory scopes, Library library, Archive archive, TimeProvider clock) =>
        (this.scopes, this.library, this.archive, this.clock) = (scopes, library, archive, clock);

    /// <summary>
    /// Serves the newest publication of the database; what the host calls first. What has been demanded of content since
    /// does not take away what was published before.
    /// </summary>
    public async Task Restore()
    {
        await oneAtATime.WaitAsync();
        try
        {
            await using var scope = scopes.CreateAsyncScope();
            var db = scope.ServiceProvider.GetRequiredService<TrainingDbContext>();
            if (await Newest(db) is not { } newest) return;
            var reading = ContentReader.Read(await Archive.Files(db, newest.Number));
            if (reading.Library is { } sound) Serve(new(newest.Number, newest.At, sound));
            state = state with { Problems = [.. reading.Problems.Where(problem => problem.Level != ProblemLevel.Held)] };
        }
        finally
        {
            oneAtATime.Release();
        }
    }

    /// <summary>
    /// Reads the files. Without an error their texts are kept for good by their hash, a new publication is made if
    /// anything differs from the last one, and it is served from now on.
    /// </summary>
    /// <param name="files">All files of the content folder.</param>
    /// <returns>What is served now and what stands in the way of the rest.</returns>
    public async Task<PublishingState> Publish(IReadOnlyList<ContentFile> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        var reading = ContentReader.Read(files);
        await oneAtATime.WaitAsync();
        try
        {
            if (reading.IsFit) Serve(await Keep(files, reading.Library!));
            return state = state with { ReadAt = clock.Instant(), Problems = reading.Problems };
        }
        finally
        {
            oneAtATime.Release();
        }
    }

    /// <summary>What is served and what is wrong with the newest state of the folder (trainers, administrators).</summary>
    /// <param name="actor">Who asks.</param>
    public Outcome<PublishingState, Refusal> State(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return actor.Is(Roles.Trainer) || actor.Is(Roles.Administrator) ? state : Refused.NotAllowed;
    }

    /// <inheritdoc/>
    public void Dispose() => oneAtATime.Dispose();

    private void Serve(PublishedLibrary served)
    {
        library.Serve(served);
        state = state with { Served = served.Number, ServedSince = served.PublishedAt };
    }

    private async Task<PublishedLibrary> Keep(IReadOnlyList<ContentFile> files, ContentLibrary sound)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<TrainingDbContext>();
        await using var change = await db.BeginChange();
        var newest = await Newest(db);
        var hashes = files.ToDictionary(file => file.Path, file => file.Hash);
        if (newest is not null && newest.Files.Count == hashes.Count &&
            newest.Files.All(file => hashes.TryGetValue(file.Path, out var hash) && hash == file.Hash))
            return new(newest.Number, newest.At, sound);

        var now = clock.Instant();
        var kept = (await db.PublishedTexts.Select(text => text.Hash).ToListAsync()).ToHashSet();
        foreach (var file in files)
            if (kept.Add(file.Hash))
                db.Add(new PublishedText { Hash = file.Hash, Text = file.Text, FirstPublishedAt = now });
        var number = (newest?.Number ?? 0) + 1;
        db.Add(new Publication
        {
            Number = number,
            At = now,
            Files = [.. hashes.Select(file => new PublishedFile { Path = file.Key, Hash = file.Value })],
        });
        await db.SaveChangesAsync();
        // A record may have to be renewed because of it: its state follows from the log alone.
        var writer = scope.ServiceProvider.GetRequiredService<LogWriter>();
        var served = newest is null ? null : (await archive.Of(newest.Number)).Content;
        foreach (var written in sound.Procedures)
            if (served?.FindProcedure(written.Procedure.Id)?.Procedure.Revision != written.Procedure.Revision)
                await writer.Add(new LogEvent.Published(written.File.Path, written.File.Hash, written.Procedure.Revision));
        await change.CommitAsync();
        return new(number, now, sound);
    }

    private static Task<Publication?> Newest(TrainingDbContext db) => db.Publications.AsNoTracking()
        .Include(publication => publication.Files).OrderByDescending(publication => publication.Number).FirstOrDefaultAsync();
}

/// <summary>What is served, and what is wrong with the newest state of the content folder.</summary>
/// <param name="Served">The number of the publication that is served; 0 for none.</param>
/// <param name="ServedSince">When it was published; null for none.</param>
/// <param name="ReadAt">When the folder was last read; null since the start.</param>
/// <param name="Problems">All problems of that reading, remarks too.</param>
public sealed record PublishingState(int Served, Instant? ServedSince, Instant? ReadAt, IReadOnlyList<ContentProblem> Problems)
{
    /// <summary>Whether the newest state of the folder could not be published.</summary>
    public bool IsHeldBack => Problems.Any(problem => problem.HoldsBack);
}
