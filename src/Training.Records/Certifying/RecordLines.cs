using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Records.Publishing;
using Training.Records.Storage;

namespace Training.Records.Certifying;

/// <summary>Makes lines of records, with their standing on a day.</summary>
internal sealed class RecordLines(TrainingDbContext db, Archive archive, TimeProvider clock)
{
    /// <summary>Today in a shop.</summary>
    public LocalDate Today(Shop shop) => clock.Instant().DayIn(shop);

    /// <summary>The lines of all records of those people, by person, competency and age, newest first.</summary>
    /// <param name="people">The people.</param>
    /// <param name="on">The day; null for today in each record's shop.</param>
    public async Task<List<RecordLine>> Of(IReadOnlyCollection<PersonId> people, LocalDate? on) =>
        [.. (await Histories(people)).SelectMany(history => history.Lines(on ?? Today(history.Shop)))];

    /// <summary>What each of those people has shown, competency by competency; to be asked about any number of days.</summary>
    /// <param name="people">The people.</param>
    public async Task<List<RecordHistory>> Histories(IReadOnlyCollection<PersonId> people)
    {
        var rows = await (from record in db.CompetencyRecords.AsNoTracking().Include(record => record.Events).Include(record => record.Texts)
                          where people.Contains(record.PersonId)
                          join person in db.Users on record.PersonId equals person.Id
                          join shop in db.Shops on record.ShopId equals shop.Id
                          select new { record, person.DisplayName, shop }).ToListAsync();
        var histories = new List<RecordHistory>();
        foreach (var of in rows.GroupBy(row => (row.record.PersonId, row.record.Competency)))
        {
            var ordered = of.OrderBy(row => row.record.IssuedAt).ToList();
            var issued = new List<IssuedRecord>();
            var records = new List<(RecordId, string)>();
            foreach (var row in ordered)
            {
                issued.Add(await Issued(row.record, row.shop));
                records.Add((row.record.Id, (await archive.Competency(row.record.CompetencyHash)).Title));
            }

            histories.Add(new(of.Key.PersonId, ordered[^1].DisplayName, ordered[^1].shop, of.Key.Competency, records, new(issued)));
        }

        return histories;
    }

    private async Task<IssuedRecord> Issued(CompetencyRecord record, Shop shop)
    {
        var competency = await archive.Competency(record.CompetencyHash);
        return new(record.IssuedAt.DayIn(shop), competency.ValidFor, competency.RenewFrom)
        {
            ConfirmEvery = competency.ConfirmEvery,
            Revised = competency.OnNewRevision is RevisionRule.Renew rule && await RevisedAt(record) is { } at
                ? (at.DayIn(shop), rule.Within)
                : null,
            Events = [.. record.Events.OrderBy(entry => entry.Number).Select(entry => (entry.At.DayIn(shop), entry.Kind))],
        };
    }

    /// <summary>When a procedure that the record was judged by was first published with a higher revision; a mended spelling is none.</summary>
    private async Task<Instant?> RevisedAt(CompetencyRecord record)
    {
        Instant? first = null;
        foreach (var judged in record.Texts.Where(text => text.Path.StartsWith("procedures/", StringComparison.Ordinal)))
        {
            var revision = (await archive.Procedure(judged.Hash)).Revision;
            var later = await (from file in db.Set<PublishedFile>().AsNoTracking()
                               join publication in db.Publications on file.PublicationNumber equals publication.Number
                               where file.Path == judged.Path && file.Hash != judged.Hash && publication.At > record.IssuedAt
                               orderby publication.Number
                               select new { file.Hash, publication.At }).ToListAsync();
            foreach (var other in later.DistinctBy(other => other.Hash))
                if ((await archive.Procedure(other.Hash)).Revision > revision)
                {
                    first = first is { } known ? Instant.Min(known, other.At) : other.At;
                    break;
                }
        }

        return first;
    }
}
