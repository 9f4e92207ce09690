using System.Collections.Immutable;
using NodaTime;
using Training.Content;
using Training.Content.Competencies;
using Training.Proofs;
using Training.Proofs.Log;
using Training.Records.Certifying;

namespace Training.Records.Ledger;

/// <summary>
/// What the log says as a whole, taken in entry by entry. Never changed: one more entry makes another history. What a
/// record is worth on a day follows from this and the text of its competency, and from nothing else.
/// </summary>
internal sealed record LogHistory
{
    /// <summary>A log without entries.</summary>
    public static LogHistory Empty { get; } = new();

    /// <summary>The log's own name; null before its first entry.</summary>
    public string? Log { get; private init; }

    /// <summary>The hashes of its entries, in order.</summary>
    public ImmutableList<Sha256Digest> LeafHashes { get; private init; } = [];

    /// <summary>Its head.</summary>
    public TreeHead Head { get; private init; } = TreeHead.Empty;

    /// <summary>The time of its last entry.</summary>
    public Instant LastAt { get; private init; } = Instant.MinValue;

    /// <summary>Its records.</summary>
    public ImmutableDictionary<RecordId, RecordHistory> Records { get; private init; } = ImmutableDictionary<RecordId, RecordHistory>.Empty;

    /// <summary>The first entry that does not fit, in a sentence; null where all do.</summary>
    public string? Fault { get; private init; }

    private ImmutableDictionary<string, int> Served { get; init; } = ImmutableDictionary<string, int>.Empty;

    /// <summary>The history with one more stored entry. One that does not fit is counted and otherwise passed over.</summary>
    public LogHistory With(StoredEntry stored)
    {
        var index = LeafHashes.Count;
        var grown = this with { LeafHashes = LeafHashes.Add(stored.LeafHash), Head = Head.Append(stored.LeafHash) };
        if (stored.Index != index) return grown.Broken($"Entry {index} of the log is missing.");
        var entry = LogEntry.Read(stored.Text.Span);
        if (!entry.IsOk || entry.Value.LeafHash != stored.LeafHash)
            return grown.Broken($"Entry {index} of the log was altered.");
        var read = LogEventJson.Read(entry.Value);
        if (!read.IsOk) return grown.Broken($"Entry {index} of the log cannot be read: {read.Sentence}");
        var (at, happening) = read.Value;
        if (at < LastAt) return grown.Broken($"Entry {index} of the log bears an earlier time than the one before it.");
        return (grown with { LastAt = at }).Take(index, at, happening);
    }

    /// <summary>The records of the chain that a record belongs to, up to itself, the oldest first.</summary>
    public IReadOnlyList<RecordHistory> ChainTo(RecordId record)
    {
        List<RecordHistory> chain = [];
        // A record names only one that was there before it, so the way back has an end.
        for (RecordId? next = record; next is { } id && Records.TryGetValue(id, out var known); next = known.Issued.Before) chain.Add(known);
        chain.Reverse();
        return chain;
    }

    /// <summary>How a record stands on a day; null before it was issued. Pure: the log and the competencies' texts decide.</summary>
    /// <param name="record">A record of the log.</param>
    /// <param name="day">The day, by the calendar of the record's shop.</param>
    /// <param name="text">The competency as a text of that hash says it.</param>
    public RecordStanding? StateOn(RecordId record, LocalDate day, Func<ContentHash, Competency> text)
    {
        var chain = ChainTo(record);
        return chain.Count == 0
            ? null
            : new RecordChain([.. chain.Select(known => known.With(text(known.Issued.Text)))]).StateOn(chain.Count - 1, day);
    }

    /// <summary>Whether a record is the newest of its chain on a day: the one that counts.</summary>
    public bool IsNewestOn(RecordId record, LocalDate day) =>
        Records.TryGetValue(record, out var known) && known.IssuedOn <= day
        && !(known.RenewedBy is { } renewal && Records[renewal].IssuedOn <= day);

    private LogHistory Take(long index, Instant at, LogEvent happening)
    {
        switch (happening)
        {
            case LogEvent.Begun begun:
                return Log is null && index == 0
                    ? this with { Log = begun.Log }
                    : Broken($"Entry {index} begins the log again.");
            case LogEvent.Published published: return Take(at, published);
            case LogEvent.Issued issued: return Take(index, at, issued);
            case LogEvent.Happened happened when Records.TryGetValue(happened.Record, out var known):
                return Put(known with { Events = known.Events.Add((index, at, happened.Kind)) });
            case LogEvent.NameRemoved removed when Records.TryGetValue(removed.Record, out var known):
                return Put(known with { NameRemovedAt = at });
            case LogEvent.Happened or LogEvent.NameRemoved: return Broken($"Entry {index} speaks of a record that was never issued.");
            default: return this;
        }
    }

    private LogHistory Take(Instant at, LogEvent.Published published)
    {
        var outdated = Records.Values.Where(known => known.RevisedAt is null && known.Issued.Judged.Any(judged =>
            judged.Path == published.Path && judged.Revision < published.Revision));
        return this with
        {
            Served = Served.SetItem(published.Path, published.Revision),
            Records = Records.SetItems(outdated.Select(known => KeyValuePair.Create(known.Issued.Record, known with { RevisedAt = at }))),
        };
    }

    private LogHistory Take(long index, Instant at, LogEvent.Issued issued)
    {
        if (Records.ContainsKey(issued.Record)) return Broken($"Entry {index} issues a record a second time.");
        RecordHistory? before = null;
        if (issued.Before is { } named && !(Records.TryGetValue(named, out before) && before.RenewedBy is null))
            return Broken($"Entry {index} renews a record that is not there or was renewed already.");
        var isOutdated = issued.Judged.Any(judged =>
            Served.TryGetValue(judged.Path, out var revision) && judged.Revision < revision);
        var grown = Put(new(index, at, issued) { RevisedAt = isOutdated ? at : null });
        return before is null ? grown : grown.Put(before with { RenewedBy = issued.Record });
    }

    private LogHistory Put(RecordHistory record) => this with { Records = Records.SetItem(record.Issued.Record, record) };

    private LogHistory Broken(string sentence) => Fault is null ? this with { Fault = sentence } : this;
}
