using Microsoft.EntityFrameworkCore;
using Training.Records.Publishing;
using Training.Records.Storage;

namespace Training.Records.Examining;

/// <summary>Makes lines of papers: with names and the title of what is examined.</summary>
internal sealed class PaperLines(TrainingDbContext db, Archive archive)
{
    /// <summary>The lines of those papers, newest first.</summary>
    public async Task<List<PaperLine>> Of(IQueryable<Paper> papers)
    {
        var rows = await (from paper in papers.AsNoTracking()
                          join sitting in db.Sittings on paper.SittingId equals sitting.Id
                          join person in db.Users on paper.PersonId equals person.Id
                          join shop in db.Shops on paper.ShopId equals shop.Id
                          orderby paper.AdmittedAt descending
                          select new { paper, sitting.CompetencyHash, person.DisplayName, ShopName = shop.Name }).ToListAsync();
        var lines = new List<PaperLine>();
        foreach (var row in rows)
        {
            var competency = await archive.Competency(row.CompetencyHash);
            lines.Add(new(
                row.paper.Id, row.paper.SittingId, row.paper.Competency, competency.Title, row.paper.PersonId, row.DisplayName,
                row.ShopName, row.paper.State, row.paper.AdmittedAt, row.paper.BegunAt, row.paper.EndsAt,
                ResultOf(row.paper, competency.Paper.PassMark)));
        }

        return lines;
    }

    /// <summary>The result of a graded paper; null for any other.</summary>
    public static PaperResult? ResultOf(Paper paper, int passMark) => paper.HandedInAt is { } at
        ? new(paper.Score!.Value, paper.Safe!.Value, paper.Passed!.Value, passMark, at, paper.End!.Value)
        : null;
}
