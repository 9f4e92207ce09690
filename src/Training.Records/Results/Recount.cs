using Microsoft.EntityFrameworkCore;
using Training.Content.Competencies;
using Training.Records.Storage;
using Training.Sequencing.Procedures;

namespace Training.Records.Results;

/// <summary>
/// Counts all results again from the answers themselves. The tallies that are kept with each answer are the same, so this
/// is for a database that is older than they are, and for whoever wants to be sure.
/// </summary>
public sealed class Recount
{
    private const int RowsAtOnce = 5000;

    private readonly TrainingDbContext db;
    private readonly KeptWork kept;
    private readonly ExaminerPairs pairs;

    internal Recount(TrainingDbContext db, KeptWork kept, ExaminerPairs pairs) => (this.db, this.kept, this.pairs) = (db, kept, pairs);

    /// <summary>Counts again if there are answers and nothing is counted: the database was written before anything was.</summary>
    public async Task WhereNothingIsCounted()
    {
        var areAnswersNew = !await db.Tallies.AnyAsync() && (await db.PracticeTries.AnyAsync() || await db.Runs.AnyAsync(run => run.SignedAt != null));
        var arePapersNew = !await db.PaperSums.AnyAsync() && await db.Papers.AnyAsync(paper => paper.HandedInAt != null);
        var arePairsNew = !await db.JudgedPairs.AnyAsync() && await pairs.Ended().AnyAsync();
        if (areAnswersNew || arePapersNew || arePairsNew) await Everything();
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
        await db.JudgedPairs.ExecuteDeleteAsync();
        var lanes = new Lanes();
        await foreach (var order in kept.Tries()) await lanes.Take(order);
        var made = await Papers(lanes);
        made.AddRange(await Runs(lanes));
        var counted = await lanes.End(made);
        await Add(made);
        await change.CommitAsync();
        return counted;
    }

    private async Task<List<object>> Papers(Lanes lanes)
    {
        var made = new List<object>();
        var sheets = new PaperSheets { Added = made.Add };
        var sittings = await db.Sittings.AsNoTracking().ToDictionaryAsync(sitting => sitting.Id, sitting => (sitting.PublicationNumber, sitting.CompetencyHash));
        var first = new HashSet<(PersonId, CompetencyId)>();
        await foreach (var paper in kept.Papers())
        {
            var (publication, competency) = sittings[paper.SittingId];
            await foreach (var order in kept.OrdersOf(paper, publication)) await lanes.Take(order);
            if (first.Add((paper.PersonId, paper.Competency))) sheets.Add(PaperResults.Closed(paper, competency));
        }

        return made;
    }

    private async Task<List<object>> Runs(Lanes lanes)
    {
        var made = new List<object>();
        var sheet = new PairSheet { Added = made.Add };
        var besides = (await pairs.Ended().Include(beside => beside.Taps).ToListAsync()).ToLookup(beside => beside.RunId);
        await foreach (var run in kept.Runs())
        {
            await lanes.Take(kept.OrderOf(run));
            foreach (var beside in besides[run.Id]) sheet.Add(run.Procedure, await pairs.Of(run, beside));
        }

        return made;
    }

    private async Task Add(List<object> made)
    {
        db.ChangeTracker.AutoDetectChangesEnabled = false;
        foreach (var rows in made.Chunk(RowsAtOnce))
        {
            db.AddRange(rows);
            await db.SaveChangesAsync();
            db.ChangeTracker.Clear();
        }

        db.ChangeTracker.AutoDetectChangesEnabled = true;
    }

    /// <summary>As many lanes as there are cores; a procedure keeps to one.</summary>
    private sealed class Lanes
    {
        private readonly CountingLane[] lanes = [.. Enumerable.Range(0, Environment.ProcessorCount).Select(_ => new CountingLane())];
        private readonly Dictionary<ProcedureId, CountingLane> laneOf = [];

        public ValueTask Take(KeptOrder order)
        {
            if (!laneOf.TryGetValue(order.Procedure, out var lane)) laneOf.Add(order.Procedure, lane = lanes[laneOf.Count % lanes.Length]);
            return lane.Take(order);
        }

        /// <summary>Adds all that the lanes have made.</summary>
        /// <returns>How many orders they have counted.</returns>
        public async Task<int> End(List<object> made)
        {
            var counted = 0;
            foreach (var lane in lanes)
            {
                counted += await lane.End();
                made.AddRange(lane.Made);
            }

            return counted;
        }
    }
}
