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

    /// <summary>Counts again if there are answers and no tally: the database was written before there were any.</summary>
    public async Task WhereNothingIsCounted()
    {
        if (await db.Tallies.AnyAsync()) return;
        if (await db.PracticeTries.AnyAsync() || await db.Papers.AnyAsync() || await db.Runs.AnyAsync()) await Everything();
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
        var made = new List<object>();
        var sheets = new TallySheets { Added = made.Add };
        var counted = 0;
        await foreach (var (worker, judged, at) in kept.All())
        {
            if (judged.Answer.Entries.Count == 0) continue;
            sheets.Count(await tallies.WorkOf(worker, judged, at));
            counted++;
        }

        foreach (var rows in made.Chunk(RowsAtOnce))
        {
            db.AddRange(rows);
            await db.SaveChangesAsync();
            db.ChangeTracker.Clear();
        }

        await change.CommitAsync();
        return counted;
    }
}
