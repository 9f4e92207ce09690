using Microsoft.EntityFrameworkCore;
using Training.Records.Publishing;
using Training.Records.Storage;

namespace Training.Records.Observing;

/// <summary>Makes lines of runs: with names and titles.</summary>
internal sealed class RunLines(TrainingDbContext db, Archive archive)
{
    /// <summary>The lines of those runs, open ones first, then the newest.</summary>
    public async Task<List<RunLine>> Of(IQueryable<Run> runs)
    {
        var rows = await (from run in runs.AsNoTracking()
                          join technician in db.Users on run.TechnicianId equals technician.Id
                          join examiner in db.Users on run.ExaminerId equals examiner.Id
                          join shop in db.Shops on run.ShopId equals shop.Id
                          join paper in db.Papers on run.PaperId equals paper.Id
                          join sitting in db.Sittings on paper.SittingId equals sitting.Id
                          orderby run.SignedAt != null || run.AbandonedAt != null, run.StartedAt descending
                          select new
                          {
                              run,
                              technician.DisplayName,
                              ExaminerName = examiner.DisplayName,
                              ShopName = shop.Name,
                              sitting.CompetencyHash,
                          }).ToListAsync();
        var lines = new List<RunLine>();
        foreach (var row in rows)
            lines.Add(new(
                row.run.Id, row.run.TechnicianId, row.DisplayName, row.ShopName, row.run.ExaminerId, row.ExaminerName,
                row.run.Competency, (await archive.Competency(row.CompetencyHash)).Title,
                row.run.Procedure, (await archive.Procedure(row.run.ProcedureHash)).Title,
                row.run.Variant, row.run.Chassis, row.run.StartedAt, row.run.State, row.run.Accepted));
        return lines;
    }
}
