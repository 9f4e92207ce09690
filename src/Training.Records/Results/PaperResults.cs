using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Records.Examining;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Results;

/// <summary>What papers say about their questions, for staff of the provider (trainers, examiners, administrators).</summary>
public sealed class PaperResults
{
    private const decimal FullScore = 100;

    private readonly TrainingDbContext db;
    private readonly Library library;
    private readonly Archive archive;

    internal PaperResults(TrainingDbContext db, Library library, Archive archive) => (this.db, this.library, this.archive) = (db, library, archive);

    /// <summary>The figures of a competency's papers, each text of it by itself, the newest first.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="competency">The competency.</param>
    public async Task<Outcome<CompetencyPapers, Refusal>> Of(Actor actor, CompetencyId competency)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer) && !actor.Is(Roles.Examiner) && !actor.Is(Roles.Administrator)) return Refused.NotAllowed;
        // Of one shop's papers it would be too easy to guess whose they are.
        if (actor.Shop is not null || library.Current.Content.FindCompetency(competency) is not { } found) return Refused.NotFound;
        var sums = await db.PaperSums.AsNoTracking().Where(sum => sum.Competency == competency).ToListAsync();
        var hashes = sums.Select(sum => sum.CompetencyHash).ToList();
        var items = (await db.ItemSums.AsNoTracking().Where(item => hashes.Contains(item.CompetencyHash)).ToListAsync()).ToLookup(item => item.CompetencyHash);
        var texts = new List<(int Publication, PapersOfText Papers)>();
        foreach (var sum in sums)
        {
            var first = await archive.Holding(sum.CompetencyHash);
            texts.Add((first.Number, new(first.PublishedAt, PaperFigures.Of(sum, items[sum.CompetencyHash]))));
        }

        return new CompetencyPapers(found, [.. texts.OrderByDescending(text => text.Publication).Select(text => text.Papers)]);
    }

    /// <summary>Adds a paper that is being closed, within the change that closes it; only somebody's first one of a competency counts.</summary>
    internal static async Task Add(TrainingDbContext db, Paper paper, Sitting sitting)
    {
        if (await db.Papers.AnyAsync(other =>
            other.PersonId == paper.PersonId && other.Competency == paper.Competency && other.Id != paper.Id && other.HandedInAt != null)) return;
        var sheets = new PaperSheets { Added = made => db.Add(made) };
        if (await db.PaperSums.FindAsync(sitting.CompetencyHash) is { } sum) sheets.Papers.Add(sum.CompetencyHash, sum);
        foreach (var question in paper.Questions)
            if (await db.ItemSums.FindAsync(sitting.CompetencyHash, question.Kind, question.Scenario) is { } item)
                sheets.Items.TryAdd((item.CompetencyHash, item.Kind, item.Scenario), item);
        sheets.Add(Closed(paper, sitting.CompetencyHash));
    }

    /// <summary>A paper as it is added.</summary>
    internal static ClosedPaper Closed(Paper paper, Training.Content.ContentHash competency) => new(
        paper.Competency, competency, paper.Passed!.Value,
        [.. paper.Questions.OrderBy(question => question.Number).Select(question => (question.Kind, question.Scenario, question.Score == FullScore))]);
}

/// <summary>The papers of a competency.</summary>
/// <param name="Competency">The competency as it is served.</param>
/// <param name="Texts">Each text of it by itself, the newest first.</param>
public sealed record CompetencyPapers(Competency Competency, IReadOnlyList<PapersOfText> Texts);

/// <summary>The papers that were sat by one text of a competency.</summary>
/// <param name="Since">When the text was first published.</param>
/// <param name="Figures">The figures; null for fewer than five papers.</param>
public sealed record PapersOfText(Instant Since, PaperFigures? Figures);
