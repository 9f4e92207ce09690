using System.Collections.Concurrent;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Caching.Memory;
using Microsoft.Extensions.DependencyInjection;
using Training.Content;
using Training.Content.Competencies;
using Training.Records.Storage;
using Training.Sequencing.Procedures;

namespace Training.Records.Publishing;

/// <summary>Every publication that ever was, read again from the texts that were kept. One for the whole process.</summary>
internal sealed class Archive(IServiceScopeFactory scopes) : IDisposable
{
    private const int MostInMemory = 32;
    private readonly MemoryCache libraries = new(new MemoryCacheOptions { SizeLimit = MostInMemory });

    // Where a text stood first never changes, so it is asked once; a list of many records names the same few texts again and again.
    private readonly ConcurrentDictionary<ContentHash, int> firstNumbers = new();

    /// <summary>The publication of a number.</summary>
    /// <exception cref="InvalidOperationException">There is none, or what was sound once no longer reads: a fault of ours.</exception>
    public async ValueTask<PublishedLibrary> Of(int number)
    {
        if (libraries.TryGetValue(number, out PublishedLibrary? known)) return known!;
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<TrainingDbContext>();
        var at = await db.Publications.Where(publication => publication.Number == number)
            .Select(publication => publication.At).SingleAsync();
        var reading = ContentReader.Read(await Files(db, number));
        var library = new PublishedLibrary(number, at, reading.Library ?? throw new InvalidOperationException(
            $"Publication {number} no longer reads: {reading.Problems.FirstOrDefault(p => p.Level == ProblemLevel.Error)}"));
        return libraries.Set(number, library, new MemoryCacheEntryOptions { Size = 1 });
    }

    /// <summary>The first publication that a text stood in.</summary>
    /// <exception cref="InvalidOperationException">The text was never published: a fault of ours.</exception>
    public async ValueTask<PublishedLibrary> Holding(ContentHash text)
    {
        if (firstNumbers.TryGetValue(text, out var known)) return await Of(known);
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<TrainingDbContext>();
        var number = await db.Set<PublishedFile>().Where(file => file.Hash == text).OrderBy(file => file.PublicationNumber)
            .Select(file => (int?)file.PublicationNumber).FirstOrDefaultAsync();
        return await Of(firstNumbers[text] = number ?? throw new InvalidOperationException($"No text of the hash {text} was published."));
    }

    /// <summary>A competency as a text of it said.</summary>
    public async ValueTask<Competency> Competency(ContentHash text) =>
        (await Holding(text)).Content.Competencies.First(competency => competency.File.Hash == text);

    /// <summary>Competencies as texts of them said, by the hashes of those.</summary>
    public async ValueTask<IReadOnlyDictionary<ContentHash, Competency>> Competencies(IEnumerable<ContentHash> texts)
    {
        var read = new Dictionary<ContentHash, Competency>();
        foreach (var text in texts)
            if (!read.ContainsKey(text)) read.Add(text, await Competency(text));
        return read;
    }

    /// <summary>A procedure as a text of it said.</summary>
    public async ValueTask<Procedure> Procedure(ContentHash text) =>
        (await Holding(text)).Content.Procedures.First(procedure => procedure.File.Hash == text).Procedure;

    /// <summary>The files of a publication.</summary>
    public static async Task<IReadOnlyList<ContentFile>> Files(TrainingDbContext db, int number) =>
        await (from file in db.Set<PublishedFile>()
               where file.PublicationNumber == number
               join text in db.PublishedTexts on file.Hash equals text.Hash
               orderby file.Path
               select new ContentFile(file.Path, text.Text)).ToListAsync();

    public void Dispose() => libraries.Dispose();
}
