using Microsoft.EntityFrameworkCore;
using Training.Proofs;
using Training.Proofs.Log;
using Training.Records.Storage;

namespace Training.Records.Ledger;

/// <summary>
/// The log, read. One for the process: each reading takes in only what was added since the last. What a change has
/// added and not committed yet is seen by that change alone.
/// </summary>
internal sealed class LogBook
{
    private volatile LogHistory known = LogHistory.Empty;

    /// <summary>What the log says now.</summary>
    public async Task<LogHistory> Read(TrainingDbContext db)
    {
        var history = known;
        var size = history.LeafHashes.Count;
        // The last entry that was read is read again: where it differs, another file was put in the database's place.
        var rows = await Rows(db, Math.Max(0, size - 1));
        if (size > 0)
        {
            if (rows is [var last, ..] && last.Index == size - 1 && last.LeafHash == history.LeafHashes[^1]) rows.RemoveAt(0);
            else (history, rows) = (LogHistory.Empty, await Rows(db, 0));
        }

        return Keep(db, rows.Aggregate(history, (grown, row) => grown.With(row)));
    }

    /// <summary>The same, with every entry read anew.</summary>
    public async Task<(LogHistory History, IReadOnlyList<StoredEntry> Entries)> ReadAnew(TrainingDbContext db)
    {
        var rows = await Rows(db, 0);
        return (Keep(db, rows.Aggregate(LogHistory.Empty, (grown, row) => grown.With(row))), rows);
    }

    /// <summary>What a row says; null where it was altered so that it says nothing.</summary>
    public static LogEvent? Said(LogRow row) =>
        LogEntry.Read(row.Text) is { IsOk: true } entry && entry.Value.LeafHash == Stored(row).LeafHash
        && LogEventJson.Read(entry.Value) is { IsOk: true } read ? read.Value.Happening : null;

    private LogHistory Keep(TrainingDbContext db, LogHistory history)
    {
        if (db.Database.CurrentTransaction is null) known = history;
        return history;
    }

    private static async Task<List<StoredEntry>> Rows(TrainingDbContext db, long from) =>
        [.. (await db.LogEntries.AsNoTracking().Where(entry => entry.Index >= from).OrderBy(entry => entry.Index).ToListAsync())
            .Select(Stored)];

    // A hash of another length fits no entry, which the reading then says.
    private static StoredEntry Stored(LogRow row) => new(
        row.Index, row.Text, row.LeafHash.Length == Sha256Digest.Length ? Sha256Digest.FromBytes(row.LeafHash) : Sha256Digest.Of(row.LeafHash));
}
