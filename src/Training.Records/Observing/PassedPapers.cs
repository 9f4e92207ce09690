using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Records.Examining;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing.Procedures;

namespace Training.Records.Observing;

/// <summary>Passed papers whose record is still to be earned at a vehicle.</summary>
internal sealed class PassedPapers(TrainingDbContext db, Archive archive)
{
    /// <summary>
    /// The newest passed paper of each person and competency, where it has no record yet and its time for the runs is
    /// not over.
    /// </summary>
    public async Task<List<AwaitedRuns>> Awaiting(IQueryable<Paper> papers, Instant now)
    {
        var rows = await (from paper in papers.AsNoTracking()
                          where paper.Passed == true
                          join sitting in db.Sittings on paper.SittingId equals sitting.Id
                          join shop in db.Shops on paper.ShopId equals shop.Id
                          select new
                          {
                              paper,
                              sitting.CompetencyHash,
                              shop,
                              HasRecord = db.CompetencyRecords.Any(record => record.PaperId == paper.Id),
                          }).ToListAsync();
        var awaiting = new List<AwaitedRuns>();
        foreach (var newest in rows.GroupBy(row => (row.paper.PersonId, row.paper.Competency))
            .Select(of => of.MaxBy(row => row.paper.HandedInAt)!))
        {
            var competency = await archive.Competency(newest.CompetencyHash);
            if (newest.HasRecord || competency.Observed is not { } observed) continue;
            var until = LastDay(newest.paper, observed, newest.shop);
            if (now.DayIn(newest.shop) > until) continue;
            var passed = await db.Runs.Where(run => run.PaperId == newest.paper.Id && run.SignedAt != null && run.Accepted == true)
                .Select(run => run.Procedure).ToListAsync();
            awaiting.Add(new(newest.paper, competency, until, [.. observed.Procedures.Where(procedure => !passed.Contains(procedure))]));
        }

        return awaiting;
    }

    /// <summary>The last day, in the shop's calendar, on which a run for the paper can be signed.</summary>
    public static LocalDate LastDay(Paper paper, ObservedRequirement observed, Shop shop) =>
        paper.HandedInAt!.Value.DayIn(shop).PlusMonths(observed.Within.Months).PlusDays(observed.Within.Days);
}

/// <summary>A passed paper and what is still to be shown for it.</summary>
/// <param name="Paper">The paper.</param>
/// <param name="Competency">The competency as the paper was sat by.</param>
/// <param name="Until">The last day.</param>
/// <param name="Procedures">The jobs that have not been passed.</param>
internal sealed record AwaitedRuns(Paper Paper, Competency Competency, LocalDate Until, IReadOnlyList<ProcedureId> Procedures);
