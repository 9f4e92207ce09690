using Training.Proofs.Signing;

namespace Training.Proofs.Log;

/// <summary>An entry as the store gives it back.</summary>
/// <param name="Index">Its place, from 0.</param>
/// <param name="Text">Its bytes.</param>
/// <param name="LeafHash">The hash that was stored beside it when it was written.</param>
public sealed record StoredEntry(long Index, ReadOnlyMemory<byte> Text, Sha256Digest LeafHash);

/// <summary>Why a log does not fit.</summary>
public enum LogFaultKind
{
    /// <summary>An index is left out, comes twice or comes too early.</summary>
    IndexOutOfTurn,

    /// <summary>The bytes of an entry are not canonical JSON.</summary>
    EntryUnreadable,

    /// <summary>An entry does not have the hash that was stored beside it.</summary>
    EntryAltered,

    /// <summary>A checkpoint was signed by no known key, or its signature does not fit.</summary>
    CheckpointNotSigned,

    /// <summary>A checkpoint speaks of another log than the one before it.</summary>
    CheckpointOfAnotherLog,

    /// <summary>A checkpoint of a larger log bears an earlier time.</summary>
    CheckpointOutOfTime,

    /// <summary>The entries have another root than the checkpoint says: entries and stored hashes were altered together.</summary>
    RootDiffers,

    /// <summary>The log ends before the size that a checkpoint says.</summary>
    EntriesMissing,
}

/// <summary>The first thing in a log that does not fit.</summary>
/// <param name="Kind">What does not fit.</param>
/// <param name="FirstIndex">The first entry that may be meant.</param>
/// <param name="LastIndex">The last one; the same where the entry is known exactly.</param>
/// <param name="Sentence">One plain sentence.</param>
public sealed record LogFault(LogFaultKind Kind, long FirstIndex, long LastIndex, string Sentence);

/// <summary>What a walk through a log found.</summary>
/// <param name="Head">The head after the last entry that was walked.</param>
/// <param name="FirstFault">What does not fit first, or null where everything does.</param>
/// <param name="CoveredBy">
/// The largest checkpoint that fits and whose key is in good standing; entries after it are vouched for by their
/// stored hashes alone.
/// </param>
public sealed record LogWalkReport(TreeHead Head, LogFault? FirstFault, Checkpoint? CoveredBy)
{
    /// <summary>Whether everything fits.</summary>
    public bool IsWhole => FirstFault is null;
}

/// <summary>
/// Walks through a whole log from its first entry: each entry against the hash stored beside it, all of them against
/// each signed checkpoint. Reads each entry once and keeps none.
/// </summary>
public static class LogWalk
{
    /// <summary>Checks a log.</summary>
    /// <param name="entries">All entries, in the order of their index.</param>
    /// <param name="checkpoints">All checkpoints that were kept, in any order; they should come from elsewhere too.</param>
    /// <param name="keys">All keys that the log's keeper ever signed with; an expired key still says what it said.</param>
    /// <param name="now">The instant of checking.</param>
    public static LogWalkReport Check(
        IEnumerable<StoredEntry> entries, IEnumerable<SignedCheckpoint> checkpoints, KeyRing keys, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(entries);
        ArgumentNullException.ThrowIfNull(checkpoints);
        ArgumentNullException.ThrowIfNull(keys);
        Walk walk = new(checkpoints, keys, now);
        if (walk.PassCheckpoints() is { } early)
            return walk.Report(early);
        foreach (StoredEntry entry in entries)
        {
            if (walk.Pass(entry) is { } fault)
                return walk.Report(fault);
        }
        return walk.Report(walk.End());
    }

    private sealed class Walk(IEnumerable<SignedCheckpoint> checkpoints, KeyRing keys, DateTimeOffset now)
    {
        private readonly Queue<SignedCheckpoint> ahead = new(
            checkpoints.OrderBy(c => c.Checkpoint.Size).ThenBy(c => c.Checkpoint.Time));

        private TreeHead head = TreeHead.Empty;
        private Checkpoint? last;
        private Checkpoint? covered;

        public LogWalkReport Report(LogFault? fault) => new(head, fault, covered);

        public LogFault? Pass(StoredEntry entry)
        {
            long index = head.Size;
            if (entry.Index != index)
                return At(LogFaultKind.IndexOutOfTurn, index, $"Entry {index} should come next, but entry {entry.Index} does.");
            Outcome<LogEntry> read = LogEntry.Read(entry.Text.Span);
            if (!read.IsOk)
                return At(LogFaultKind.EntryUnreadable, index, $"Entry {index} cannot be read: {read.Sentence}");
            if (read.Value.LeafHash != entry.LeafHash)
                return At(LogFaultKind.EntryAltered, index, $"Entry {index} does not have the hash that was stored with it.");
            head = head.Append(entry.LeafHash);
            return PassCheckpoints();
        }

        public LogFault? PassCheckpoints()
        {
            while (ahead.TryPeek(out SignedCheckpoint? next) && next.Checkpoint.Size == head.Size)
            {
                if (Pass(ahead.Dequeue()) is { } fault)
                    return fault;
            }
            return null;
        }

        public LogFault? End() =>
            ahead.TryPeek(out SignedCheckpoint? next)
                ? SignatureFault(next) ?? new LogFault(
                    LogFaultKind.EntriesMissing, head.Size, next.Checkpoint.Size - 1,
                    $"The log ends after {head.Size} entries, but a checkpoint says that it had {next.Checkpoint.Size}.")
                : null;

        private LogFault? Pass(SignedCheckpoint signed)
        {
            if (SignatureFault(signed) is { } unsigned)
                return unsigned;
            Checkpoint checkpoint = signed.Checkpoint;
            if (last is not null && last.Origin != checkpoint.Origin)
                return Range(LogFaultKind.CheckpointOfAnotherLog, $"The checkpoint at size {checkpoint.Size} is of the log {checkpoint.Origin}, the one before it of {last.Origin}.");
            if (last is not null && last.Time > checkpoint.Time)
                return Range(LogFaultKind.CheckpointOutOfTime, $"The checkpoint at size {checkpoint.Size} bears an earlier time than the one at size {last.Size}.");
            if (checkpoint.RootHash != head.Root)
                return Range(LogFaultKind.RootDiffers, $"The entries up to {head.Size} do not lead to the root of the checkpoint at that size: one of the entries from {FirstUncovered} to {head.Size - 1} was altered together with its stored hash.");
            last = checkpoint;
            if (keys.Find(signed.Key)!.StandingAt(now) == KeyStanding.Good)
                covered = checkpoint;
            return null;
        }

        private LogFault? SignatureFault(SignedCheckpoint signed) =>
            keys.Find(signed.Key) is { } key && signed.Fits(key.PublicKey)
                ? null
                : Range(LogFaultKind.CheckpointNotSigned, $"The checkpoint at size {signed.Checkpoint.Size} is not signed by a known key.");

        private long FirstUncovered => last?.Size ?? 0;

        private static LogFault At(LogFaultKind kind, long index, string sentence) => new(kind, index, index, sentence);

        private LogFault Range(LogFaultKind kind, string sentence) =>
            new(kind, FirstUncovered, Math.Max(FirstUncovered, head.Size - 1), sentence);
    }
}
