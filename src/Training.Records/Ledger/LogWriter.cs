using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Proofs.Log;
using Training.Records.Certifying;
using Training.Records.Storage;

namespace Training.Records.Ledger;

/// <summary>
/// Adds to the log, within the change that does what the entry speaks of: both are kept or neither is. The time of an
/// entry is that of its writing, so that nothing can be dated back; what was wrong is put right by another entry.
/// </summary>
internal sealed class LogWriter(TrainingDbContext db, TimeProvider clock)
{
    /// <summary>Adds an entry.</summary>
    /// <returns>Its place and its time.</returns>
    /// <exception cref="InvalidOperationException">No change is under way.</exception>
    public async Task<(long Index, Instant At)> Add(LogEvent happening)
    {
        if (db.Database.CurrentTransaction is null) throw new InvalidOperationException("An entry of the log belongs to a change.");
        var at = clock.Instant();
        var last = await db.LogEntries.AsNoTracking().OrderByDescending(entry => entry.Index).FirstOrDefaultAsync();
        if (last is null)
        {
            db.Add(LogRow.Of(0, LogEventJson.Write(new LogEvent.Begun($"urn:uuid:{Guid.NewGuid()}"), at)));
        }
        else if (LogEntry.Read(last.Text) is { IsOk: true } entry && LogEventJson.Read(entry.Value) is { IsOk: true } read)
        {
            // A clock that was put back must not make the log look dated back.
            at = Instant.Max(at, read.Value.At);
        }

        var index = (last?.Index ?? 0) + 1;
        db.Add(LogRow.Of(index, LogEventJson.Write(happening, at)));
        await db.SaveChangesAsync();
        return (index, at);
    }

    /// <summary>Adds that something happened to a record, and beside the log who did it and why.</summary>
    public async Task Add(RecordId record, RecordEventKind kind, PersonId by, string reason)
    {
        var salt = Salted.NewSalt();
        var (index, _) = await Add(new LogEvent.Happened(record, kind, Salted.Said(by, reason, salt)));
        await Note(index, record, by, reason, salt);
    }

    /// <summary>Keeps beside an entry who did what it speaks of, and why.</summary>
    public async Task Note(long index, RecordId record, PersonId by, string reason, byte[]? salt)
    {
        db.Add(new LogNote { EntryIndex = index, RecordId = record, ById = by, Reason = reason, Salt = salt });
        await db.SaveChangesAsync();
    }
}
