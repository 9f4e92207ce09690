using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Records.Examining;
using Training.Records.Observing;
using Training.Records.Publishing;
using Training.Records.Storage;

namespace Training.Records.Certifying;

/// <summary>Issues competency records, within the change that brought the last piece of evidence.</summary>
internal sealed class Issuing(TrainingDbContext db, Archive archive)
{
    /// <summary>
    /// Issues the record that a passed paper leads to, once every run that the competency asks for was passed and signed in time.
    /// A paper leads to one record at most.
    /// </summary>
    public async Task<RecordId?> IssueIfComplete(Paper paper, Sitting sitting, PersonId by, Instant now)
    {
        if (paper.Passed != true || await db.CompetencyRecords.AnyAsync(record => record.PaperId == paper.Id)) return null;
        var library = await archive.Of(sitting.PublicationNumber);
        var competency = library.Content.FindCompetency(sitting.Competency)!;
        var runs = new List<Run>();
        if (competency.Observed is { } observed)
        {
            var shop = await db.Shops.SingleAsync(known => known.Id == paper.ShopId);
            if (now.DayIn(shop) > PassedPapers.LastDay(paper, observed, shop)) return null;
            var passed = await db.Runs.Where(run => run.PaperId == paper.Id && run.SignedAt != null && run.Accepted == true)
                .OrderBy(run => run.Id).ToListAsync();
            foreach (var procedure in observed.Procedures)
                if (passed.Find(run => run.Procedure == procedure) is { } run) runs.Add(run);
                else return null;
        }

        var id = RecordId.New(now);
        var texts = new HashSet<(string Path, Content.ContentHash Hash)> { (competency.File.Path, competency.File.Hash) };
        foreach (var question in paper.Questions)
        {
            texts.Add((library.Content.FindScenario(question.Scenario)!.Text.File.Path, question.ScenarioHash));
            if (question is { Procedure: { } procedure, ProcedureHash: { } hash })
                texts.Add((library.Content.FindProcedure(procedure)!.File.Path, hash));
        }

        foreach (var run in runs)
            texts.Add(((await archive.Of(run.PublicationNumber)).Content.FindProcedure(run.Procedure)!.File.Path, run.ProcedureHash));
        db.Add(new CompetencyRecord
        {
            Id = id,
            PersonId = paper.PersonId,
            ShopId = paper.ShopId,
            Competency = paper.Competency,
            CompetencyHash = sitting.CompetencyHash,
            PaperId = paper.Id,
            IssuedAt = now,
            Runs = [.. runs.Select(run => new RecordRun { RunId = run.Id })],
            Texts = [.. texts.Select(text => new RecordText { Path = text.Path, Hash = text.Hash })],
            Events = [new RecordEvent { Number = 1, Kind = RecordEventKind.Issued, At = now, ById = by, Reason = "" }],
        });
        await db.SaveChangesAsync();
        return id;
    }
}
