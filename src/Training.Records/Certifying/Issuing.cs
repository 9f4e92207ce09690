using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Content;
using Training.Content.Competencies;
using Training.Proofs.StatusLists;
using Training.Records.Examining;
using Training.Records.Ledger;
using Training.Records.Observing;
using Training.Records.Publishing;
using Training.Records.Storage;

namespace Training.Records.Certifying;

/// <summary>Issues competency records, within the change that brought the last piece of evidence.</summary>
internal sealed class Issuing(TrainingDbContext db, Archive archive, LogBook log, LogWriter writer)
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
        var shop = await db.Shops.SingleAsync(known => known.Id == paper.ShopId);
        if (competency.Observed is { } observed)
        {
            if (now.DayIn(shop) > PassedPapers.LastDay(paper, observed, shop)) return null;
            var passed = await db.Runs.Where(run => run.PaperId == paper.Id && run.SignedAt != null && run.Accepted == true)
                .OrderBy(run => run.Id).ToListAsync();
            foreach (var procedure in observed.Procedures)
                if (passed.Find(run => run.Procedure == procedure) is { } run) runs.Add(run);
                else return null;
        }

        var id = RecordId.New(now);
        var salt = Salted.NewSalt();
        var person = await db.Users.SingleAsync(known => known.Id == paper.PersonId);
        var issued = new LogEvent.Issued(
            id, paper.Competency, sitting.CompetencyHash, shop.TimeZone, Salted.Name(person.DisplayName, salt), Salted.Shop(shop.Id, salt),
            await Before(paper), paper.Id, [.. runs.Select(run => run.Id)], await Judged(competency, library, paper, runs));
        db.Add(new CompetencyRecord
        {
            Id = id,
            PersonId = paper.PersonId,
            ShopId = paper.ShopId,
            Competency = paper.Competency,
            PaperId = paper.Id,
            Salt = salt,
            StatusPlace = await StatusPlace(),
            Runs = [.. runs.Select(run => new RecordRun { RunId = run.Id })],
        });
        await db.SaveChangesAsync();
        var (index, _) = await writer.Add(issued);
        await writer.Note(index, id, by, "", null);
        return id;
    }

    /// <summary>The record that this one renews: the person's last for the competency, whatever became of it.</summary>
    private async Task<RecordId?> Before(Paper paper)
    {
        var earlier = await db.CompetencyRecords.Where(record => record.PersonId == paper.PersonId && record.Competency == paper.Competency)
            .Select(record => record.Id).ToListAsync();
        var history = await log.Read(db);
        return earlier.Where(history.Records.ContainsKey).Select(record => history.Records[record])
            .Where(known => known.RenewedBy is null).MaxBy(known => known.Index)?.Issued.Record;
    }

    private async Task<IReadOnlyList<JudgedText>> Judged(
        Competency competency, PublishedLibrary library, Paper paper, IReadOnlyList<Run> runs)
    {
        var texts = new HashSet<JudgedText> { new(competency.File.Path, competency.File.Hash, null) };
        foreach (var question in paper.Questions)
        {
            texts.Add(new(library.Content.FindScenario(question.Scenario)!.Text.File.Path, question.ScenarioHash, null));
            if (question is { Procedure: { } procedure, ProcedureHash: { } hash })
                texts.Add(await Procedure(library.Content.FindProcedure(procedure)!.File.Path, hash));
        }

        foreach (var run in runs)
            texts.Add(await Procedure((await archive.Of(run.PublicationNumber)).Content.FindProcedure(run.Procedure)!.File.Path, run.ProcedureHash));
        return [.. texts.OrderBy(text => text.Path, StringComparer.Ordinal).ThenBy(text => text.Text.Hex, StringComparer.Ordinal)];

        async Task<JudgedText> Procedure(string path, ContentHash hash) => new(path, hash, (await archive.Procedure(hash)).Revision);
    }

    /// <summary>A place that no record has yet; a further list is begun before the last one is half full, so that guessing stays hard.</summary>
    private async Task<int> StatusPlace()
    {
        var lists = 1 + ((await db.CompetencyRecords.CountAsync()) / (StatusBitstring.LeastEntries / 2));
        while (true)
        {
            var place = RandomNumberGenerator.GetInt32(lists * StatusBitstring.LeastEntries);
            if (!await db.CompetencyRecords.AnyAsync(record => record.StatusPlace == place)) return place;
        }
    }
}
