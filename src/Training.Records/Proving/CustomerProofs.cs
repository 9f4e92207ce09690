using System.Buffers.Text;
using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Issuers;
using Training.Records.Ledger;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Proving;

/// <summary>
/// Proofs: what a customer sees by a link, of the people whom the owner chose and nobody else. Where a chosen record was
/// renewed since, the record that counts on the day is shown in its place.
/// </summary>
public sealed class CustomerProofs
{
    private const int TokenBytes = 32;
    private const int MostRecords = 200;

    private readonly TrainingDbContext db;
    private readonly RecordLines lines;
    private readonly ShownJobs jobs;
    private readonly LogBook log;
    private readonly LogAudit audit;
    private readonly IssuerKeys keys;
    private readonly TimeProvider clock;

    internal CustomerProofs(
        TrainingDbContext db, RecordLines lines, ShownJobs jobs, LogBook log, LogAudit audit, IssuerKeys keys, TimeProvider clock) =>
        (this.db, this.lines, this.jobs, this.log, this.audit, this.keys, this.clock) = (db, lines, jobs, log, audit, keys, clock);

    /// <summary>Makes a proof of chosen records of the own shop (owners).</summary>
    /// <param name="actor">The owner.</param>
    /// <param name="records">The records, at least one.</param>
    /// <param name="forWhom">The customer, in words; null for anybody.</param>
    public Task<Outcome<ProofLine, Refusal>> Make(Actor actor, IReadOnlyList<RecordId> records, string? forWhom = null) =>
        Make(actor, records, forWhom, null);

    /// <summary>The same, of records that are in the crew of a job: the proof answers for the job's days, too.</summary>
    internal async Task<Outcome<ProofLine, Refusal>> Make(Actor actor, IReadOnlyList<RecordId> records, string? forWhom, JobId? job)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(records);
        if (OwnShop(actor) is not { } shop) return Refused.NotAllowed;
        var chosen = records.Distinct().ToList();
        if (chosen.Count is 0 or > MostRecords) return new Refusal($"Choose at least one record and at most {MostRecords}.") { About = "Records" };
        var customer = string.IsNullOrWhiteSpace(forWhom) ? null : forWhom.Trim();
        if (customer is { Length: > 200 }) return new Refusal("Name the customer in up to 200 characters.") { About = "ForWhom" };
        await using var change = await db.BeginChange();
        if (await db.CompetencyRecords.CountAsync(record => chosen.Contains(record.Id) && record.ShopId == shop) != chosen.Count)
            return Refused.NotFound;
        var now = clock.Instant();
        var proof = new Proof
        {
            Id = ProofId.New(now),
            Token = Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(TokenBytes)),
            ShopId = shop,
            MadeById = actor.Person,
            MadeAt = now,
            ForWhom = customer,
            Records = [.. chosen.Select(record => new ProofRecord { RecordId = record })],
        };
        db.Add(proof);
        if (job is { } spoken) db.Add(new JobProof { ProofId = proof.Id, JobId = spoken });
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return (await Views([proof]))[0];
    }

    /// <summary>The own shop's proofs, newest first (owners).</summary>
    /// <param name="actor">The owner.</param>
    public async Task<Outcome<IReadOnlyList<ProofLine>, Refusal>> List(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (OwnShop(actor) is not { } shop) return Refused.NotAllowed;
        return await Views(await db.Proofs.AsNoTracking().Include(proof => proof.Records).Where(proof => proof.ShopId == shop)
            .OrderByDescending(proof => proof.MadeAt).ToListAsync());
    }

    /// <summary>One of the own shop's proofs (owners).</summary>
    /// <param name="actor">The owner.</param>
    /// <param name="proof">The proof.</param>
    public async Task<Outcome<ProofLine, Refusal>> Look(Actor actor, ProofId proof)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (OwnShop(actor) is not { } shop) return Refused.NotAllowed;
        var found = await db.Proofs.AsNoTracking().Include(known => known.Records)
            .SingleOrDefaultAsync(known => known.Id == proof && known.ShopId == shop);
        return found is null ? Refused.NotFound : (await Views([found]))[0];
    }

    /// <summary>Ends a proof (owners): its link says so from now on and shows nothing else. Again changes nothing.</summary>
    /// <param name="actor">The owner.</param>
    /// <param name="proof">The proof.</param>
    public async Task<Outcome<ProofLine, Refusal>> End(Actor actor, ProofId proof)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (OwnShop(actor) is not { } shop) return Refused.NotAllowed;
        await using var change = await db.BeginChange();
        var found = await db.Proofs.Include(known => known.Records)
            .SingleOrDefaultAsync(known => known.Id == proof && known.ShopId == shop);
        if (found is null) return Refused.NotFound;
        if (found.EndedAt is null)
        {
            found.EndedAt = clock.Instant();
            await db.SaveChangesAsync();
            await change.CommitAsync();
        }

        return (await Views([found]))[0];
    }

    /// <summary>What the holder of a link sees. Nobody need be signed in.</summary>
    /// <param name="token">The token from the link.</param>
    /// <param name="on">The day that is asked for, not after today; null for today in the shop's time zone, or for the last day of the proof's job where that is over.</param>
    public Task<Outcome<ShownProof, Refusal>> Show(string token, LocalDate? on = null) => Show(token, on, ofJob: true);

    /// <summary>The same as of today, also where the proof's job is over.</summary>
    internal Task<Outcome<ShownProof, Refusal>> ShowToday(string token) => Show(token, null, ofJob: false);

    private async Task<Outcome<ShownProof, Refusal>> Show(string token, LocalDate? on, bool ofJob)
    {
        if (token is not { Length: > 0 and <= 100 }) return Unknown;
        var proof = await db.Proofs.AsNoTracking().Include(known => known.Records).SingleOrDefaultAsync(known => known.Token == token);
        if (proof is null) return Unknown;
        if (proof.EndedAt is { } ended) return new ShownProof.Ended(ended);
        var shop = await db.Shops.AsNoTracking().SingleAsync(known => known.Id == proof.ShopId);
        var today = lines.Today(shop);
        if (on > today) return new Refusal("A proof speaks of today or of a day before.");
        var last = ofJob && await jobs.JobOf(proof.Id) is { } job && job.LastDay < today ? job.LastDay : today;
        var day = on ?? last;
        var finding = await audit.Look();
        var all = (await LinesOf([proof], day))[proof.Id];
        // Nobody can be recognised in a record whose name was removed: it is told that there is one, and it proves nothing.
        var chosen = all.Where(line => line.NameRemovedAt is null).ToList();
        var shown = await Shown(chosen, finding.Fault is not null);
        // A record that is missing from the log is missing here, too, and must not make the answer better.
        var holds = finding.Fault is null && shown.Count > 0 && shown.All(record => record.Holds);
        return new ShownProof.Shown(shop.Name, proof.ForWhom, proof.MadeAt, day, holds, shown)
        {
            Log = finding,
            NamesRemoved = [.. all.Select(line => line.NameRemovedAt).OfType<Instant>().Order()],
            Issuer = Issuer(),
            Job = finding.Fault is null
                ? await jobs.Of(proof.Id, today, chosen, shown.Where(record => record.Doubt is not null).Select(record => record.Record).ToHashSet())
                : null,
            Language = await db.Users.Where(person => person.Id == proof.MadeById).Select(person => person.Language).SingleAsync(),
        };
    }

    private ShownIssuer? Issuer()
    {
        var present = keys.Present();
        if (!present.IsOk) return null;
        var (name, address, _, id) = present.Value;
        return new(name, address.Did.ToString(), address.Did.DocumentUrl.ToString(), id.Value);
    }

    /// <summary>The records as a customer sees them, each held against the log.</summary>
    private async Task<List<ShownRecord>> Shown(List<RecordLine> chosen, bool isLogBroken)
    {
        var ids = chosen.Select(line => line.Id).ToList();
        var rows = await (from record in db.CompetencyRecords.AsNoTracking()
                          where ids.Contains(record.Id)
                          join person in db.Users on record.PersonId equals person.Id
                          select new { record, person }).ToDictionaryAsync(row => row.record.Id);
        var history = await log.Read(db);
        return [.. chosen.Select(line => new ShownRecord(line.Name, line.CompetencyTitle, line.Standing)
        {
            Record = line.Id,
            Doubt = isLogBroken ? RecordDoubt.BrokenLog : RecordBinding.Doubt(rows[line.Id].record, rows[line.Id].person, history.Records[line.Id]),
        })];
    }

    private static Refusal Unknown { get; } = new("There is no proof under this link; ask the shop for a new one.");

    private static ShopId? OwnShop(Actor actor) => actor.Is(Roles.Owner) ? actor.Shop : null;

    private async Task<List<ProofLine>> Views(IReadOnlyList<Proof> proofs)
    {
        var records = await LinesOf(proofs, null);
        var names = await db.NamesOf(proofs.Select(proof => proof.MadeById));
        return [.. proofs.Select(proof => new ProofLine(
            proof.Id, proof.Token, proof.ForWhom, proof.MadeAt, names[proof.MadeById], proof.EndedAt, records[proof.Id]))];
    }

    private async Task<Dictionary<ProofId, List<RecordLine>>> LinesOf(IReadOnlyList<Proof> proofs, LocalDate? on)
    {
        var ids = proofs.SelectMany(proof => proof.Records).Select(record => record.RecordId).Distinct().ToList();
        var people = await db.CompetencyRecords.Where(record => ids.Contains(record.Id)).Select(record => record.PersonId).Distinct()
            .ToListAsync();
        var all = await lines.Of(people, on);
        var known = all.ToDictionary(line => line.Id);
        // By their chain in the log, not by person and competency: whoever can write to the database can give one person two chains.
        var history = await log.Read(db);
        var counting = all.Where(line => line.IsNewest).ToDictionary(Chain);
        return proofs.ToDictionary(proof => proof.Id, proof => proof.Records.Where(record => known.ContainsKey(record.RecordId)).Select(record => known[record.RecordId])
            .Select(chosen => counting.GetValueOrDefault(Chain(chosen), chosen)).DistinctBy(line => line.Id)
            .OrderBy(line => line.Name, StringComparer.Ordinal).ThenBy(line => line.CompetencyTitle, StringComparer.Ordinal).ToList());

        RecordId Chain(RecordLine line) => history.ChainTo(line.Id)[0].Issued.Record;
    }
}
