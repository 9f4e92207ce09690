using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using Training.Content.Competencies;
using Training.Proofs;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Credentials;
using Training.Proofs.DataIntegrity;
using Training.Proofs.Log;
using Training.Proofs.StatusLists;
using Training.Records.Certifying;
using Training.Records.Issuers;
using Training.Records.Ledger;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Proving;

/// <summary>
/// What a customer can take away and check without us: for each record of a proof a signed credential of Open Badges 3.0,
/// and all of them in one file with what it takes to check them without a network.
/// </summary>
public sealed class ProofFiles
{
    private readonly TrainingDbContext db;
    private readonly CustomerProofs proofs;
    private readonly LogBook log;
    private readonly Checkpoints checkpoints;
    private readonly PublicLog published;
    private readonly StatusLists statusLists;
    private readonly IssuerKeys keys;
    private readonly Archive archive;
    private readonly TimeProvider clock;

    internal ProofFiles(
        TrainingDbContext db, CustomerProofs proofs, LogBook log, Checkpoints checkpoints, PublicLog published, StatusLists statusLists,
        IssuerKeys keys, Archive archive, TimeProvider clock) =>
        (this.db, this.proofs, this.log, this.checkpoints, this.published, this.statusLists, this.keys, this.archive, this.clock) =
        (db, proofs, log, checkpoints, published, statusLists, keys, archive, clock);

    /// <summary>The credential of one record of a proof, for the holder of the link.</summary>
    /// <param name="token">The token from the link.</param>
    /// <param name="record">The record.</param>
    public async Task<Outcome<byte[], Refusal>> Credential(string token, RecordId record)
    {
        var signing = await Begin(token);
        if (!signing.IsOk) return signing.Fault;
        if (signing.Value.Records.All(shown => shown.Record != record)) return Refused.NotFound;
        var credential = await Sign(signing.Value, record);
        return credential.IsOk ? Jcs.Canonicalize(credential.Value).Value.Utf8.ToArray() : credential.Fault;
    }

    /// <summary>All credentials of a proof in one file, for the holder of the link.</summary>
    /// <param name="token">The token from the link.</param>
    public async Task<Outcome<byte[], Refusal>> Pack(string token)
    {
        var signing = await Begin(token);
        if (!signing.IsOk) return signing.Fault;
        List<JsonObject> credentials = [];
        foreach (var shown in signing.Value.Records)
        {
            var credential = await Sign(signing.Value, shown.Record);
            if (!credential.IsOk) return credential.Fault;
            credentials.Add(credential.Value);
        }

        var ids = signing.Value.Records.Select(shown => shown.Record).ToList();
        var numbers = (await db.CompetencyRecords.Where(record => ids.Contains(record.Id)).Select(record => record.StatusPlace).ToListAsync())
            .Select(StatusLists.NumberOf).Distinct().Order();
        List<JsonObject> lists = [];
        foreach (var number in numbers)
            foreach (var purpose in new[] { StatusPurpose.Revocation, StatusPurpose.Suspension })
            {
                var list = await statusLists.List(purpose, number);
                if (!list.IsOk) return list.Fault;
                lists.Add(StrictJson.ReadObject(list.Value).Value);
            }

        var document = StrictJson.ReadObject((await keys.Documents())[0].Utf8).Value;
        var pack = new ProofPack(credentials, lists, signing.Value.Checkpoint, document) { Job = Sign(signing.Value), Histories = await Histories(signing.Value) };
        return pack.Sign(signing.Value.Signer.Key, signing.Value.Signer.Id, clock.WholeSecond().ToDateTimeOffset()).Utf8.ToArray();
    }

    private async Task<Outcome<Signing, Refusal>> Begin(string token)
    {
        var shown = await proofs.ShowToday(token);
        if (!shown.IsOk) return shown.Fault;
        if (shown.Value is not ShownProof.Shown proof) return new Refusal("The shop ended this proof.");
        var present = keys.Present();
        if (!present.IsOk) return present.Fault;
        if (proof.Log?.Fault is { } fault) return new Refusal($"Nothing is signed, because the log does not fit: {fault}");
        if (proof.Records.FirstOrDefault(record => record.Doubt is not null) is { } doubtful)
            return new Refusal($"Nothing is signed, because the record of {doubtful.Name} is not as it was issued.");
        if (proof.Records.Count == 0) return new Refusal("Nobody is left in this proof to sign for.");
        var signed = await checkpoints.SignWhatIsNew();
        if (!signed.IsOk) return signed.Fault;
        return new Signing(present.Value, proof.Shop, proof.Records, proof.Job, await log.Read(db), (await published.Newest())!);
    }

    /// <summary>Of each record every entry of the log since it was issued, so that the file answers for days before its status lists.</summary>
    private async Task<Dictionary<string, IReadOnlyList<LogInclusion>>> Histories(Signing signing)
    {
        var size = signing.Checkpoint.Checkpoint.Size;
        var entries = signing.Records.ToDictionary(
            shown => shown.Record, shown => signing.History.Records[shown.Record].Events.Select(entry => entry.Index).Where(index => index < size).ToList());
        var indices = entries.Values.SelectMany(of => of).ToList();
        var rows = await db.LogEntries.AsNoTracking().Where(entry => indices.Contains(entry.Index)).ToDictionaryAsync(entry => entry.Index);
        return entries.ToDictionary(
            of => LogEventJson.Name(of.Key),
            IReadOnlyList<LogInclusion> (of) => [.. of.Value.Select(index => Inclusion(signing, rows[index]))]);
    }

    private static LogInclusion Inclusion(Signing signing, LogRow row) => new(
        signing.History.Log!, LogEntry.Read(row.Text).Value,
        InclusionProof.Of(signing.History.LeafHashes, (int)row.Index, (int)signing.Checkpoint.Checkpoint.Size));

    /// <summary>What is said of the days of the job; null where the proof speaks of none.</summary>
    private JsonObject? Sign(Signing signing)
    {
        if (signing.Job is not { } job) return null;
        var days = new JobDays(
            signing.Signer.Address.Did.ToString(), signing.Shop, job.Customer, job.Chassis, job.FirstDay.ToDateOnly(), job.LastDay.ToDateOnly(), job.Today.ToDateOnly(),
            [.. job.People.Select(person => new JobPerson(LogEventJson.Name(person.Record), person.Name, person.CompetencyTitle,
                [.. person.Days.Select(span => new JobSpan(span.From.ToDateOnly(), span.To.ToDateOnly(), span.Holds, StateOf(span)))]))]);
        return EddsaJcs2022.Secure(days.Write(), signing.Signer.Key, signing.Signer.Id, clock.WholeSecond().ToDateTimeOffset()).Value;
    }

    private static string StateOf(ShownJobSpan span) => span switch
    {
        { Holds: true } => "holds",
        { State: null } => "none",
        { State: RecordState.Current or RecordState.Due } => "doubtful",
        _ => span.State.Value.ToString().ToLowerInvariant(),
    };

    private async Task<Outcome<JsonObject, Refusal>> Sign(Signing signing, RecordId id)
    {
        var (signer, history) = (signing.Signer, signing.History);
        var known = history.Records[id];
        var record = await db.CompetencyRecords.AsNoTracking().SingleAsync(found => found.Id == id);
        var texts = await archive.Competencies(history.ChainTo(id).Select(link => link.Issued.Text));
        var competency = texts[known.Issued.Text];
        var now = clock.WholeSecond();
        if (history.StateOn(id, known.DayOf(now), text => texts[text]) is not { } standing) return Refused.NotFound;
        var row = await db.LogEntries.AsNoTracking().SingleAsync(entry => entry.Index == known.Index);
        var inclusion = Inclusion(signing, row) with { Checkpoint = signing.Checkpoint };
        var written = AchievementCredential.Write(new CompetencyCredential
        {
            Id = new Uri(LogEventJson.Name(id)),
            Title = competency.Title,
            Issuer = new IssuerProfile(signer.Address.Did, signer.Name, new Uri(signer.Address.Base)),
            Recipient = new NamedRecipient(signing.Records.First(shown => shown.Record == id).Name),
            Shop = signing.Shop,
            Competency = await Definition(competency, signer.Address),
            ValidFrom = known.IssuedAt.ToDateTimeOffset(),
            ValidUntil = known.LastSecondOf(standing.Until).ToDateTimeOffset(),
            Status = StatusLists.EntriesOf(signer.Address, record.StatusPlace),
            Judged = [.. known.Issued.Judged.Select(Matter)],
            Log = inclusion,
        });
        if (!written.IsOk) throw new InvalidOperationException($"A record makes no credential: {written.Sentence}");
        return EddsaJcs2022.Secure(written.Value, signer.Key, signer.Id, now.ToDateTimeOffset()).Value;
    }

    private async Task<CompetencyDefinition> Definition(Competency competency, ProviderAddress address)
    {
        var content = (await archive.Holding(competency.File.Hash)).Content;
        var criteria = $"A paper with at least {competency.Paper.PassMark} of 100 points and no unsafe answer.";
        if (competency.Observed is { } observed)
        {
            var jobs = observed.Procedures.Select(procedure => content.FindProcedure(procedure)?.Procedure.Title ?? procedure.Value);
            criteria += $" Then, observed at a vehicle and without a finding: {string.Join("; ", jobs)}.";
        }

        // The revision is the hash of the competency's text: what was shown cannot be made to mean something else later.
        var page = new Uri($"{address.Base}/competencies/{competency.Id}");
        return new(
            page, competency.Title, $"Whoever holds this has shown the competency “{competency.Title}”.", criteria,
            CriteriaPage: page, Revision: competency.File.Hash.Hex);
    }

    private static JudgedMatter Matter(JudgedText judged) => new(
        judged.Path.Split('/')[0] switch { "procedures" => "procedure", "scenarios" => "scenario", "competencies" => "competency", _ => "text" },
        judged.Revision is { } revision ? $"{judged.Path}, revision {revision}" : judged.Path,
        Sha256Digest.Parse(judged.Text.Hex).Value);

    private sealed record Signing(
        Signer Signer, string Shop, IReadOnlyList<ShownRecord> Records, ShownJob? Job, LogHistory History, SignedCheckpoint Checkpoint);
}
