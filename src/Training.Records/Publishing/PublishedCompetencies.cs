using Microsoft.EntityFrameworkCore;
using Training.Content;
using Training.Content.Competencies;
using Training.Records.Storage;

namespace Training.Records.Publishing;

/// <summary>What competencies ask, also of those that are no longer taught: credentials name them for as long as somebody keeps one.</summary>
public sealed class PublishedCompetencies
{
    private readonly TrainingDbContext db;
    private readonly Library library;
    private readonly Archive archive;

    internal PublishedCompetencies(TrainingDbContext db, Library library, Archive archive) => (this.db, this.library, this.archive) = (db, library, archive);

    /// <summary>A competency as it is served, or as it was served last; null where there never was one of that name. Anybody may ask.</summary>
    /// <param name="id">Its name.</param>
    public async Task<PublishedCompetency?> Find(CompetencyId id)
    {
        if (library.Current.Content is var served && served.FindCompetency(id) is { } present) return new(present, served, IsServed: true);
        var path = $"competencies/{id}.yaml";
        var last = await db.Set<PublishedFile>().Where(file => file.Path == path).MaxAsync(file => (int?)file.PublicationNumber);
        if (last is not { } number) return null;
        var content = (await archive.Of(number)).Content;
        return content.FindCompetency(id) is { } former ? new(former, content, IsServed: false) : null;
    }
}

/// <summary>A competency and the content that it stands in.</summary>
/// <param name="Competency">The competency.</param>
/// <param name="Content">The content, for the names of modules and procedures.</param>
/// <param name="IsServed">Whether it is taught now.</param>
public sealed record PublishedCompetency(Competency Competency, ContentLibrary Content, bool IsServed);
