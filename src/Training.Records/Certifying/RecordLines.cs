using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Records.Accounts;
using Training.Records.Ledger;
using Training.Records.Publishing;
using Training.Records.Storage;

namespace Training.Records.Certifying;

/// <summary>Makes lines of records, with their standing on a day.</summary>
internal sealed class RecordLines(TrainingDbContext db, Archive archive, LogBook log, TimeProvider clock)
{
    /// <summary>Today in a shop.</summary>
    public LocalDate Today(Shop shop) => clock.Instant().DayIn(shop);

    /// <summary>The lines of all records of those people, by person, competency and age, newest first.</summary>
    /// <param name="people">The people.</param>
    /// <param name="on">The day; null for today in each record's shop.</param>
    public async Task<List<RecordLine>> Of(IReadOnlyCollection<PersonId> people, LocalDate? on)
    {
        var rows = await (from record in db.CompetencyRecords.AsNoTracking()
                          where people.Contains(record.PersonId)
                          join person in db.Users on record.PersonId equals person.Id
                          join shop in db.Shops on record.ShopId equals shop.Id
                          select new { record, person.DisplayName, shop }).ToListAsync();
        var history = await log.Read(db);
        var texts = await archive.Competencies(rows.SelectMany(row => history.ChainTo(row.record.Id)).Select(known => known.Issued.Text));
        return [.. from row in rows
                   // A record that the log does not know was never issued.
                   where history.Records.ContainsKey(row.record.Id)
                   let known = history.Records[row.record.Id]
                   let day = @on ?? Today(row.shop)
                   orderby row.record.PersonId.Value, row.record.Competency.Value, known.Index descending
                   select new RecordLine(
                       row.record.Id, row.record.PersonId, row.DisplayName, row.shop.Name, row.record.Competency,
                       texts[known.Issued.Text].Title, history.StateOn(row.record.Id, day, text => texts[text]),
                       history.IsNewestOn(row.record.Id, day))
                   { NameRemovedAt = known.NameRemovedAt }];
    }

    /// <summary>What each of those people has shown, competency by competency; to be asked about any number of days.</summary>
    /// <param name="people">The people. Asked as part of each question, so that a large shop's are not carried to and fro.</param>
    public async Task<List<HeldCompetency>> Held(IQueryable<Person> people)
    {
        // Names and shops are read once, not again with each of a large shop's records; what a record says stands in the log.
        var rows = await people.Join(
            db.CompetencyRecords, person => person.Id, record => record.PersonId,
            (person, record) => new { record.Id, record.PersonId, record.ShopId }).ToListAsync();
        var named = await people.Select(person => new { person.Id, person.DisplayName, person.NameRemovedAt }).ToDictionaryAsync(person => person.Id);
        var shops = await db.Shops.AsNoTracking().ToDictionaryAsync(shop => shop.Id);
        var history = await log.Read(db);
        var issued = rows.Select(row => (row.PersonId, row.ShopId, Known: history.Records.GetValueOrDefault(row.Id)))
            // A record that the log does not know was never issued.
            .Where(row => row.Known is not null).Select(row => (row.PersonId, row.ShopId, Known: row.Known!)).ToList();
        var texts = await archive.Competencies(issued.Select(row => row.Known.Issued.Text).Distinct());
        var held = new List<HeldCompetency>();
        foreach (var of in issued.GroupBy(row => (row.PersonId, row.Known.Issued.Competency)))
        {
            var newest = of.MaxBy(row => row.Known.Index);
            var chain = history.ChainTo(newest.Known.Issued.Record);
            var (person, shop) = (named[of.Key.PersonId], shops[newest.ShopId]);
            held.Add(new(
                person.Id, person.DisplayName, shop, of.Key.Competency,
                [.. chain.Select(known => (known.Issued.Record, texts[known.Issued.Text].Title))],
                new([.. chain.Select(known => known.With(texts[known.Issued.Text]))]))
            { LeftOn = person.NameRemovedAt?.DayIn(shop) });
        }

        return held;
    }
}
