using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Training.Content;
using Training.Content.Competencies;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Covering;
using Training.Records.Examining;
using Training.Records.Ledger;
using Training.Records.Publishing;
using Training.Records.Storage;
using Duration = NodaTime.Duration;
using Period = Training.Content.Competencies.Period;

namespace Training.Benchmarks;

/// <summary>A large shop's coverage, asked of a database on disk as the page asks it.</summary>
internal static class CoverageBenchmark
{
    private const int People = 200;
    private const int Competencies = 12;

    public static void Run(TextWriter output)
    {
        output.WriteLine($"## Coverage of {People} people × {Competencies} competencies, with plan (wanted: under 100 ms)");
        output.WriteLine();
        RecordsOnDisk.Use((services, _) => Look(output, services), new StandingClock()).GetAwaiter().GetResult();

        var today = new LocalDate(2026, 11, 25);
        List<HeldTerm>[] held = [.. Enumerable.Range(0, Competencies).Select(c => Enumerable.Range(0, People)
            .Select(p => today.PlusDays(((p * 37) + (c * 11)) % 700)).Select(end => new HeldTerm(end, end.PlusMonths(-3))).ToList())];
        var terms = new RenewalTerms(Of("P24M"), Of("P3M"), 14);
        var (plan, _) = Measure.Median(
            () => { foreach (var holders in held) RenewalPlan.Fewest(holders, 150, terms, today, today.PlusMonths(12)); }, 5, 51);
        output.WriteLine($"The plans alone, with 150 needed for each: {plan / 1000:0.00} ms.");
    }

    private static Period Of(string text) => Period.TryParse(text, out var period) ? period : throw new ArgumentException(text);

    private static async Task Look(TextWriter output, ServiceProvider services)
    {
        var owner = await Fill(services);
        await Parts(output, services, owner);
        var records = 0;
        var (clock, processor) = await Measure.Asked(6, 25, async () =>
        {
            await using var scope = services.CreateAsyncScope();
            var looked = (await scope.ServiceProvider.GetRequiredService<Coverage>().Look(owner)).Value;
            records = looked.Competencies.Sum(c => c.Holding.Count + c.NotHolding.Count);
        });
        if (records != People * Competencies) throw new InvalidOperationException("Not every record was counted: nothing was measured.");
        output.WriteLine($"The whole answer, {records} records read from SQLite: {clock:0.0} ms, of which the processor worked {processor:0.0} ms.");
    }

    /// <summary>Where the time goes, each part asked on its own with a context of its own.</summary>
    private static async Task Parts(TextWriter output, ServiceProvider services, Actor owner)
    {
        (string Name, Func<IServiceProvider, Task> Ask)[] parts =
        [
            ("the technicians", async at => await Technicians(at, owner).Select(person => person.Id).ToListAsync()),
            ("the records' rows", async at => await at.GetRequiredService<TrainingDbContext>().CompetencyRecords.AsNoTracking()
                .Where(record => record.ShopId == owner.Shop).Select(record => new { record.Id, record.PersonId, record.ShopId }).ToListAsync()),
            ("the log, of which nothing is new", async at => await at.GetRequiredService<LogBook>().Read(at.GetRequiredService<TrainingDbContext>())),
            ("what everybody holds, with all of these", async at => await at.GetRequiredService<RecordLines>().Held(Technicians(at, owner))),
        ];
        output.WriteLine("| part | time | of which the processor worked |");
        output.WriteLine("| --- | --- | --- |");
        foreach (var (name, ask) in parts)
        {
            var (clock, processor) = await Measure.Asked(6, 20, async () =>
            {
                await using var scope = services.CreateAsyncScope();
                await ask(scope.ServiceProvider);
            });
            output.WriteLine($"| {name} | {clock:0.0} ms | {processor:0.0} ms |");
        }

        output.WriteLine();

        static IQueryable<Person> Technicians(IServiceProvider at, Actor owner)
        {
            var db = at.GetRequiredService<TrainingDbContext>();
            return db.Users.AsNoTracking().WithinReach(owner).Technicians(db);
        }
    }

    /// <summary>Rows as the services would leave them after two years of work, written in one go.</summary>
    private static async Task<Actor> Fill(ServiceProvider services)
    {
        var shipped = ContentFolder.Read(Path.Combine(AppContext.BaseDirectory, "Data", "content"));
        // Translations stand beside the competencies, by names with one more dot.
        var one = shipped.First(file => file.Path.StartsWith("competencies/", StringComparison.Ordinal) && file.Path.Count(letter => letter == '.') == 1);
        var id = Path.GetFileNameWithoutExtension(one.Path);
        List<ContentFile> files = [.. shipped, .. Enumerable.Range(2, Competencies - 1).Select(number =>
            new ContentFile($"competencies/copy-{number}.yaml", one.Text.Replace($"id: {id}", $"id: copy-{number}", StringComparison.Ordinal)))];
        var now = Instant.FromDateTimeOffset(DateTimeOffset.UtcNow);
        // The log takes nothing that is dated back, so the texts were published before anybody earned anything.
        var clock = (StandingClock)services.GetRequiredService<TimeProvider>();
        clock.At = now - Duration.FromDays(1000);
        var published = await services.GetRequiredService<Publisher>().Publish(files);
        if (published.IsHeldBack)
            throw new InvalidOperationException($"The content of the measurement cannot be published: {published.Problems.First(problem => problem.HoldsBack)}");
        clock.At = now;
        var content = services.GetRequiredService<Library>().Current.Content;
        await using var scope = services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<TrainingDbContext>();
        var shop = new Shop { Id = ShopId.New(now), Name = "Quillmoor Coachworks", TimeZone = "Europe/London", AddedAt = now };
        db.Add(shop);
        var role = await db.Roles.SingleAsync(known => known.Name == Roles.Technician);
        var examiner = Somebody(db, "renske", null, now);
        var owner = Somebody(db, "hollis", shop.Id, now);
        var competencies = content.Competencies.Take(Competencies).ToList();
        var earned = new List<(Instant At, PersonId Person, Competency Competency)>();
        foreach (var p in Enumerable.Range(0, People))
        {
            var person = Somebody(db, $"technician-{p}", shop.Id, now);
            db.UserRoles.Add(new IdentityUserRole<PersonId> { UserId = person, RoleId = role.Id });
            earned.AddRange(competencies.Select((competency, c) => (now - Duration.FromDays(((p * 37) + (c * 11)) % 720), person, competency)));
        }

        // The log wants its entries in the order of their times.
        var first = await db.LogEntries.CountAsync();
        foreach (var (index, (at, person, competency)) in earned.OrderBy(one => one.At).Index())
        {
            var sitting = new Sitting
            {
                Id = SittingId.New(at),
                ExaminerId = examiner,
                Competency = competency.Id,
                CompetencyHash = competency.File.Hash,
                PublicationNumber = 1,
                Place = "Hall 2",
                OpenedAt = at,
                ShopId = null,
            };
            var paper = new Paper
            {
                Id = PaperId.New(at),
                SittingId = sitting.Id,
                PersonId = person,
                ShopId = shop.Id,
                Competency = competency.Id,
                AdmittedAt = at,
                HandedInAt = at,
            };
            var salt = Salted.NewSalt();
            var record = new CompetencyRecord
            {
                Id = RecordId.New(at),
                PersonId = person,
                ShopId = shop.Id,
                Competency = competency.Id,
                PaperId = paper.Id,
                Salt = salt,
                StatusPlace = index,
            };
            db.AddRange(sitting, paper, record);
            db.Add(LogRow.Of(first + index, LogEventJson.Write(
                new LogEvent.Issued(record.Id, competency.Id, competency.File.Hash, shop.TimeZone, Salted.Name("Somebody", salt), Salted.Shop(shop.Id, salt),
                    null, paper.Id, [], [new JudgedText(competency.File.Path, competency.File.Hash, null),
                        .. content.Procedures.Take(3).Select(procedure => new JudgedText(procedure.File.Path, procedure.File.Hash, procedure.Procedure.Revision))]), at)));
        }

        await db.SaveChangesAsync();
        var actor = new Actor(owner, shop.Id, new HashSet<string> { Roles.Owner });
        await scope.ServiceProvider.GetRequiredService<Coverage>().SetNeeds(actor, competencies.ToDictionary(competency => competency.Id, _ => 150));
        return actor;
    }

    private static PersonId Somebody(TrainingDbContext db, string name, ShopId? shop, Instant now)
    {
        var id = PersonId.New(now);
        db.Add(new Person { Id = id, DisplayName = name, UserName = name, NormalizedUserName = name.ToUpperInvariant(), ShopId = shop, Language = "en", AddedAt = now });
        return id;
    }

    private sealed class StandingClock : TimeProvider
    {
        public Instant At { get; set; }

        public override DateTimeOffset GetUtcNow() => At.ToDateTimeOffset();
    }
}
