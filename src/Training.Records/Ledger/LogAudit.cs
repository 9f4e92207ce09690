using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Proofs.Log;
using Training.Records.Issuers;
using Training.Records.Storage;

namespace Training.Records.Ledger;

/// <summary>What a walk through the whole log found.</summary>
/// <param name="At">When it was walked through.</param>
/// <param name="Size">How many entries it had.</param>
/// <param name="Fault">The first thing that does not fit, in a sentence; null where everything does.</param>
public sealed record LogFinding(Instant At, long Size, string? Fault);

/// <summary>Remembers the last walk, so that whoever asks often does not make the server walk often. One for the process.</summary>
internal sealed class LastWalk
{
    private static readonly Duration Pause = Duration.FromMinutes(1);
    private volatile LogFinding? finding;

    public LogFinding? Since(Instant now) => finding is { } known && known.At <= now && now - known.At < Pause ? known : null;

    public LogFinding Keep(LogFinding found) => finding = found;
}

/// <summary>Walks through the whole log as it lies in the database: each entry, each checkpoint, each signature.</summary>
internal sealed class LogAudit(TrainingDbContext db, LogBook log, IssuerKeys keys, LastWalk last, TimeProvider clock)
{
    /// <summary>What the walk finds; at most a minute old.</summary>
    public async Task<LogFinding> Look()
    {
        var now = clock.Instant();
        if (last.Since(now) is { } recent) return recent;
        return last.Keep(await Walk(now));
    }

    /// <summary>Walks now.</summary>
    public async Task<LogFinding> Walk(Instant now)
    {
        var (history, entries) = await log.ReadAnew(db);
        var rows = await db.LogCheckpoints.AsNoTracking().OrderBy(row => row.Number).ToListAsync();
        for (var i = 0; i < rows.Count; i++)
            if (rows[i].Number != i + 1 || rows[i].Read() is null)
                return new(now, history.Head.Size, $"Checkpoint {i + 1} of the log was altered.");
        var walk = LogWalk.Check(entries, rows.Select(row => row.Read()!), await keys.Ring(), now.ToDateTimeOffset());
        return new(now, history.Head.Size, walk.FirstFault?.Sentence ?? history.Fault);
    }
}
