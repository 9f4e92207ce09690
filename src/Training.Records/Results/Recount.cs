using Microsoft.EntityFrameworkCore;
using Training.Records.Storage;

namespace Training.Records.Results;

/// <summary>
/// Counts all results again from the answers themselves. The tallies that are kept with each answer are the same, so this
/// is for a database that is older than they are, and for whoever wants to be sure.
/// </summary>
public sealed class Recount
{
    private const int RowsAtOnce = 5000;

    private readonly TrainingDbContext db;
    private readonly Tallies tallies;
    private readonly KeptWork kept;

    internal Recount(TrainingDbContext db, Tallies tallies, KeptWork kept) => (this.db, this.tallies, this.kept) = (db, tallies, kept);

    /// <summary>Counts again if there are answers and nothing is counted: the database was written before anything was.</summary>
    public async Task WhereNothingIsCounted()
    {
        var areAnswersNew = !await db.Tallies.AnyAsync() && (await db.PracticeTries.AnyAsync() || await db.Runs.AnyAsync(run => run.SignedAt != null));
        var arePapersNew = !await db.PaperSums.AnyAsync() && await db.Papers.AnyAsync(paper => paper.HandedInAt != null);
        if (areAnswersNew || arePapersNew) await Everything();
    }

    /// <summary>Counts everything again, in one change: nobody sees it half done, and nobody else writes meanwhile.</summary>
    /// <returns>How many orders of work were counted.</returns>
    public async Task<int> Everything()
    {
        await using var change = await db.BeginChange();
        await db.Tallies.ExecuteDeleteAsync();
        await db.FirstChances.ExecuteDeleteAsync();
        await db.WrongOrders.ExecuteDeleteAsync();
        await db.TallySubjects.ExecuteDeleteAsync();
        await db.PaperSums.ExecuteDeleteAsync();
        await db.ItemSums.ExecuteDeleteAsync();
        var made = new List<object>();
        var sheets = new TallySheets { Added = made.Add };
        var counted = 0;
        await foreach (var (worker, judged, at) in kept.All())
        {
            if (judged.Answer.Entries.Count == 0) continue;
            sheets.Count(await tallies.WorkOf(worker, judged, at));
            counted++;
        }

        await AddPapers(new() { Added = made.Add });
        foreach (var rows in made.Chunk(RowsAtOnce))
        {
            db.AddRange(rows);
            await db.SaveChangesAsync();
            db.ChangeTracker.Clear();
        }

        await change.CommitAsync();
        return counted;
    }

    private async Task AddPapers(PaperSheets sheets)
    {
        var hashes = await db.Sittings.AsNoTracking().ToDictionaryAsync(sitting => sitting.Id, sitting => sitting.CompetencyHash);
        var papers = db.Papers.AsNoTracking().Include(paper => paper.Questions).Where(paper => paper.HandedInAt != null)
            .OrderBy(paper => paper.HandedInAt).ThenBy(paper => paper.Id).AsAsyncEnumerable();
        var first = new HashSet<(PersonId, Training.Content.Competencies.CompetencyId)>();
        await foreach (var paper in papers)
            if (first.Add((paper.PersonId, paper.Competency))) sheets.Add(PaperResults.Closed(paper, hashes[paper.SittingId]));
    }
}
