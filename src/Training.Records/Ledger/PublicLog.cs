using Microsoft.EntityFrameworkCore;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Credentials;
using Training.Proofs.Log;
using Training.Records.Issuers;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Ledger;

/// <summary>The log for whoever asks, without an account: it holds nobody's name. Everything is canonical JSON in UTF-8.</summary>
public sealed class PublicLog
{
    private readonly TrainingDbContext db;
    private readonly LogBook log;
    private readonly IssuerKeys keys;

    internal PublicLog(TrainingDbContext db, LogBook log, IssuerKeys keys) => (this.db, this.log, this.keys) = (db, log, keys);

    /// <summary>The newest signed checkpoint.</summary>
    public async Task<Outcome<byte[], Refusal>> NewestCheckpoint() =>
        await Newest() is { } newest ? newest.Write().Utf8.ToArray() : NoCheckpoint;

    /// <summary>An entry, and that it stands in the log of a size.</summary>
    /// <param name="index">Its place, from 0.</param>
    /// <param name="size">The size; null for that of the newest checkpoint.</param>
    public async Task<Outcome<byte[], Refusal>> Entry(long index, long? size = null)
    {
        var history = await log.Read(db);
        var of = size ?? (await Newest())?.Checkpoint.Size;
        if (of is null) return NoCheckpoint;
        if (of < 1 || of > history.Head.Size) return NoSuchSize(history);
        if (size is null && index >= of && index < history.Head.Size)
            return new Refusal($"Entry {index} is in the log. It is shown once a signed checkpoint holds it, which takes a minute at most; load this page again then.");
        if (index < 0 || index >= of) return new Refusal($"Among the first {of} entries there is no entry {index}; they count from 0.");
        var row = await db.LogEntries.AsNoTracking().SingleAsync(entry => entry.Index == index);
        var read = LogEntry.Read(row.Text);
        if (!read.IsOk) return new Refusal($"Entry {index} of the log was altered.");
        return new LogInclusion(history.Log!, read.Value, InclusionProof.Of(history.LeafHashes, (int)index, (int)of)).Write().Utf8.ToArray();
    }

    /// <summary>That the log of one size is the beginning of the log of a later one.</summary>
    /// <param name="from">The earlier size, from 1.</param>
    /// <param name="to">The later size; null for that of the newest checkpoint.</param>
    public async Task<Outcome<byte[], Refusal>> Extension(long from, long? to = null)
    {
        var history = await log.Read(db);
        var end = to ?? (await Newest())?.Checkpoint.Size;
        if (end is null) return NoCheckpoint;
        if (end < 1 || end > history.Head.Size || from < 1 || from > end) return NoSuchSize(history);
        return ConsistencyProof.Of(history.LeafHashes, (int)from, (int)end).Write().Utf8.ToArray();
    }

    /// <summary>The whole log, a line at a time; see <see cref="LogExport"/>.</summary>
    public async Task<IReadOnlyList<byte[]>> Export()
    {
        var (_, entries) = await log.ReadAnew(db);
        var checkpoints = (await db.LogCheckpoints.AsNoTracking().OrderBy(row => row.Number).ToListAsync()).Select(row => row.Read()).OfType<SignedCheckpoint>();
        var issuers = (await keys.Documents()).Select(document => StrictJson.ReadObject(document.Utf8).Value);
        return [.. LogExport.Write(issuers, entries, checkpoints).Select(line => line.Utf8.ToArray())];
    }

    /// <summary>The newest signed checkpoint that can be read.</summary>
    internal async Task<SignedCheckpoint?> Newest() =>
        (await db.LogCheckpoints.AsNoTracking().OrderByDescending(row => row.Number).FirstOrDefaultAsync())?.Read();

    private static Refusal NoCheckpoint { get; } = new("No checkpoint of the log was signed yet.");

    private static Refusal NoSuchSize(LogHistory history) => new($"The log has {history.Head.Size} entries; ask for sizes from 1 to that.");
}
