using Microsoft.EntityFrameworkCore;
using Training.Proofs.Log;
using Training.Records.Issuers;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Ledger;

/// <summary>Signs what the log is, from time to time, so that others can hold us to it.</summary>
public sealed class Checkpoints
{
    private readonly TrainingDbContext db;
    private readonly LogBook log;
    private readonly IssuerKeys keys;
    private readonly TimeProvider clock;

    internal Checkpoints(TrainingDbContext db, LogBook log, IssuerKeys keys, TimeProvider clock) =>
        (this.db, this.log, this.keys, this.clock) = (db, log, keys, clock);

    /// <summary>
    /// Signs a checkpoint if there is something new since the last, or another key. A log that does not fit, or no longer
    /// begins with what was signed before, is not signed.
    /// </summary>
    /// <returns>Whether one was signed, or why none can be.</returns>
    public async Task<Outcome<bool, Refusal>> SignWhatIsNew()
    {
        var present = keys.Present();
        if (!present.IsOk) return present.Fault;
        await using var change = await db.BeginChange();
        await keys.Keep(present.Value);
        var history = await log.Read(db);
        var last = await db.LogCheckpoints.AsNoTracking().OrderByDescending(row => row.Number).FirstOrDefaultAsync();
        var before = last?.Read()?.Checkpoint;
        if (history.Fault is { } fault) return new Refusal($"No checkpoint is signed: {fault}");
        if (last is not null && (before is null || !Continues(history, before)))
            return new Refusal("No checkpoint is signed: the log is not the one that was signed before with entries added.");
        var isNew = history.Log is not null && (before is null || before.Size < history.Head.Size || last!.Read()!.Key != present.Value.Id);
        if (isNew)
        {
            var now = clock.GetUtcNow();
            var signed = SignedCheckpoint.Sign(
                new(history.Log!, history.Head.Size, history.Head.Root, before?.Time > now ? before.Time : now),
                present.Value.Key,
                present.Value.Id);
            db.Add(new CheckpointRow { Number = (last?.Number ?? 0) + 1, Text = signed.Write().Utf8.ToArray() });
            await db.SaveChangesAsync();
        }

        await change.CommitAsync();
        return isNew;
    }

    private static bool Continues(LogHistory history, Checkpoint before) =>
        before.Size <= history.Head.Size && before.Origin == history.Log
        && TreeHead.Of(history.LeafHashes.Take((int)before.Size)).Root == before.RootHash;
}
