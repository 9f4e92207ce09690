using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Training.Content;
using Training.Records.Accounts;
using Training.Records.Ledger;
using Training.Records.Storage;
using Training.Records.Writing;
using Training.Sequencing;

namespace Training.Records.Publishing;

/// <summary>
/// Publishes content. A folder with an error changes nothing: what was published before is served on, also after a
/// restart, and the trainer is told. One for the whole process.
/// </summary>
public sealed class Publisher : IDisposable
{
    /// <summary>The name by which problems of the folder as a whole are told.</summary>
    public const string WholeFolder = "content";

    private readonly IServiceScopeFactory scopes;
    private readonly Library library;
    private readonly Archive archive;
    private readonly TimeProvider clock;
    private readonly SemaphoreSlim oneAtATime = new(1);
    private volatile PublishingState state = new(0, null, null, []);
    private volatile IReadOnlyList<ContentFile> served = [];
    private IReadOnlyList<ContentFile>? folder;

    internal Publisher(IServiceScopeFactory scopes, Library library, Archive archive, TimeProvider clock) =>
        (this.scopes, this.library, this.archive, this.clock) = (scopes, library, archive, clock);

    /// <summary>What is served and what is wrong, for the other services.</summary>
    internal PublishingState StateNow => state;

    /// <summary>All files that are served: the folder's, with those that were published from the desk in place of theirs.</summary>
    public IReadOnlyList<ContentFile> Served => served;

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
            var files = await Archive.Files(db, newest.Number);
            var reading = ContentReader.Read(files);
            if (reading.Library is { } sound) Serve(new(newest.Number, newest.At, sound), files);
            state = state with { Problems = [.. reading.Problems.Where(problem => problem.Level != ProblemLevel.Held)] };
        }
        finally
        {
            oneAtATime.Release();
        }
    }

    /// <summary>
    /// Reads the files, with those that were published from the desk laid over them. Without an error their texts are kept
    /// for good by their hash, a new publication is made if anything differs from the last one, and it is served from now on.
    /// </summary>
    /// <param name="files">All files of the content folder.</param>
    /// <returns>What is served now and what stands in the way of the rest.</returns>
    public async Task<PublishingState> Publish(IReadOnlyList<ContentFile> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        await oneAtATime.WaitAsync();
        try
        {
            folder = files;
            return await PublishFolder();
        }
        finally
        {
            oneAtATime.Release();
        }
    }

    /// <summary>
    /// Publishes files from the desk, laid over what is served now, so that a folder that is broken elsewhere is not in the
    /// way. Nothing is changed where the whole would have an error.
    /// </summary>
    /// <param name="laid">The files.</param>
    /// <param name="alongside">What else is written in the same change, given the publication's number; what it refuses is undone whole.</param>
    internal async Task<Outcome<PublishedLibrary, Refusal>> Lay(
        IReadOnlyList<ContentFile> laid, Func<TrainingDbContext, int, Task<Refusal?>> alongside)
    {
        await oneAtATime.WaitAsync();
        try
        {
            ContentFile[] files = [.. served.ExceptBy(laid.Select(file => file.Path), file => file.Path), .. laid];
            // Until the folder was read after a start, what is served is what it said last.
            var below = folder ?? served;
            return await Change(files, async (db, number) =>
            {
                foreach (var file in laid)
                {
                    var over = below.FirstOrDefault(other => other.Path == file.Path)?.Hash;
                    var row = await db.Set<LaidOver>().FindAsync(file.Path);
                    if (row is null) db.Add(new LaidOver { Path = file.Path, Text = file.Hash, Over = over });
                    else (row.Text, row.Over) = (file.Hash, folder is null ? row.Over : over);
                }

                return await alongside(db, number);
            });
        }
        finally
        {
            oneAtATime.Release();
        }
    }

    /// <summary>Serves the folder's file again in place of the one that was published from the desk; none where the folder has none.</summary>
    /// <param name="path">The file.</param>
    /// <param name="alongside">What else is written in the same change.</param>
    internal async Task<Outcome<PublishedLibrary, Refusal>> Unlay(string path, Func<TrainingDbContext, int, Task<Refusal?>> alongside)
    {
        await oneAtATime.WaitAsync();
        try
        {
            if (folder is null) return new Refusal("The content folder has not been read yet: try it again in a few seconds.");
            var theirs = folder.FirstOrDefault(other => other.Path == path);
            ContentFile[] files = [.. served.Where(other => other.Path != path), .. theirs is null ? Array.Empty<ContentFile>() : [theirs]];
            return await Change(files, async (db, number) =>
            {
                if (await db.Set<LaidOver>().FindAsync(path) is not { } row) return Refused.NotFound;
                db.Remove(row);
                return await alongside(db, number);
            });
        }
        finally
        {
            oneAtATime.Release();
        }
    }

    /// <summary>Serves the desk's file on, though the folder's was changed: the trainer has seen both.</summary>
    /// <param name="path">The file.</param>
    internal async Task<Outcome<PublishingState, Refusal>> KeepLaid(string path)
    {
        await oneAtATime.WaitAsync();
        try
        {
            await using (var scope = scopes.CreateAsyncScope())
            {
                var db = scope.ServiceProvider.GetRequiredService<TrainingDbContext>();
                if (await db.Set<LaidOver>().FindAsync(path) is not { } row) return Refused.NotFound;
                row.Over = folder?.FirstOrDefault(other => other.Path == path)?.Hash;
                await db.SaveChangesAsync();
            }

            return folder is null ? state : await PublishFolder();
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

    /// <summary>Tells trainers that the folder could not be read, or not be published. What was published before is served on.</summary>
    /// <param name="sentence">Why.</param>
    internal async Task<PublishingState> NotRead(string sentence)
    {
        await oneAtATime.WaitAsync();
        try
        {
            return state = state with { Problems = [new(WholeFolder, 1, 1, ProblemLevel.Error, sentence)] };
        }
        finally
        {
            oneAtATime.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => oneAtATime.Dispose();

    private void Serve(PublishedLibrary publication, IReadOnlyList<ContentFile> files)
    {
        library.Serve(publication);
        served = files;
        state = state with { Served = publication.Number, ServedSince = publication.PublishedAt };
    }

    private async Task<PublishingState> PublishFolder()
    {
        var overlay = Overlay.Of(folder!, await Laid());
        var reading = ContentReader.Read(overlay.Files);
        if (reading.IsFit) Serve((await Keep(overlay.Files, reading.Library!, null)).Value, overlay.Files);
        return state = state with { ReadAt = clock.Instant(), Problems = reading.Problems, Changes = overlay.Changes };
    }

    private async Task<Outcome<PublishedLibrary, Refusal>> Change(
        IReadOnlyList<ContentFile> files, Func<TrainingDbContext, int, Task<Refusal?>> alongside)
    {
        var reading = ContentReader.Read(files);
        if (reading.Problems.FirstOrDefault(problem => problem.HoldsBack) is { } problem)
            return new Refusal($"Nothing was published, for the content would have an error: {problem.File}, line {problem.Line}: {problem.Sentence}");
        var kept = await Keep(files, reading.Library!, alongside);
        if (!kept.IsOk) return kept;
        Serve(kept.Value, files);
        // The folder may have been held back by just what was mended now.
        if (folder is not null) await PublishFolder();
        return library.Current;
    }

    private async Task<IReadOnlyList<(LaidOver Row, string Text)>> Laid()
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<TrainingDbContext>();
        var rows = await (from row in db.Set<LaidOver>().AsNoTracking()
                          join text in db.PublishedTexts on row.Text equals text.Hash
                          select new { row, text.Text }).ToListAsync();
        return [.. rows.Select(item => (item.row, item.Text))];
    }

    private async Task<Outcome<PublishedLibrary, Refusal>> Keep(
        IReadOnlyList<ContentFile> files, ContentLibrary sound, Func<TrainingDbContext, int, Task<Refusal?>>? alongside)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<TrainingDbContext>();
        await using var change = await db.BeginChange();
        var newest = await Newest(db);
        var hashes = files.ToDictionary(file => file.Path, file => file.Hash);
        var isSame = newest is not null && newest.Files.Count == hashes.Count &&
            newest.Files.All(file => hashes.TryGetValue(file.Path, out var hash) && hash == file.Hash);
        var made = isSame ? new PublishedLibrary(newest!.Number, newest.At, sound) : await Add(scope, files, hashes, newest, sound);
        if (alongside is not null && await alongside(db, made.Number) is { } refusal) return refusal;
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return made;
    }

    private async Task<PublishedLibrary> Add(
        AsyncServiceScope scope, IReadOnlyList<ContentFile> files, Dictionary<string, ContentHash> hashes, Publication? newest, ContentLibrary sound)
    {
        var db = scope.ServiceProvider.GetRequiredService<TrainingDbContext>();
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
        var before = newest is null ? null : (await archive.Of(newest.Number)).Content;
        foreach (var written in sound.Procedures)
            if (before?.FindProcedure(written.Procedure.Id)?.Procedure.Revision != written.Procedure.Revision)
                await writer.Add(new LogEvent.Published(written.File.Path, written.File.Hash, written.Procedure.Revision));
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
    /// <summary>Files that were published from the desk and have been changed in the folder since; the desk's are served.</summary>
    public IReadOnlyList<FolderChange> Changes { get; init; } = [];

    /// <summary>Whether the newest state of the folder could not be published.</summary>
    public bool IsHeldBack => Problems.Any(problem => problem.HoldsBack);
}
