using System.Collections.Concurrent;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Proofs.CanonicalJson;
using Training.Proofs.DataIntegrity;
using Training.Proofs.StatusLists;
using Training.Records.Certifying;
using Training.Records.Issuers;
using Training.Records.Ledger;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Proving;

/// <summary>
/// Which credentials are withdrawn or suspended, as signed lists (W3C Bitstring Status List 1.0). The bits are worked out
/// from the log and kept nowhere.
/// </summary>
public sealed class StatusLists
{
    /// <summary>How long a list may be relied on: a customer without a network has a day.</summary>
    public static readonly Duration ValidFor = Duration.FromHours(24);

    private readonly TrainingDbContext db;
    private readonly LogBook log;
    private readonly Archive archive;
    private readonly IssuerKeys keys;
    private readonly SignedLists signed;
    private readonly TimeProvider clock;

    internal StatusLists(
        TrainingDbContext db, LogBook log, Archive archive, IssuerKeys keys, SignedLists signed, TimeProvider clock) =>
        (this.db, this.log, this.archive, this.keys, this.signed, this.clock) = (db, log, archive, keys, signed, clock);

    /// <summary>A list, signed, at most a minute old. Anybody may read it.</summary>
    /// <param name="purpose">What a set bit means.</param>
    /// <param name="number">Which list, from 1.</param>
    public async Task<Outcome<byte[], Refusal>> List(StatusPurpose purpose, int number)
    {
        var present = keys.Present();
        if (!present.IsOk) return present.Fault;
        var highest = await db.CompetencyRecords.MaxAsync(record => (int?)record.StatusPlace) ?? 0;
        if (number < 1 || number > 1 + (highest / StatusBitstring.LeastEntries)) return Refused.NotFound;
        var history = await log.Read(db);
        var now = clock.Instant();
        if (signed.Find(purpose, number, history.Head.Size, present.Value.Id.Value, now) is { } recent) return recent;
        var list = new StatusList(
            Address(present.Value.Address, purpose, number), present.Value.Address.Did, purpose,
            StatusBitstring.Of(await Set(history, purpose, number, now)), now.ToDateTimeOffset(), (now + ValidFor).ToDateTimeOffset());
        var secured = EddsaJcs2022.Secure(list.Write(), present.Value.Key, present.Value.Id, now.ToDateTimeOffset()).Value;
        return signed.Keep(purpose, number, history.Head.Size, present.Value.Id.Value, now, Jcs.Canonicalize(secured).Value.Utf8.ToArray());
    }

    /// <summary>Where a record's status is looked up.</summary>
    internal static IReadOnlyList<StatusListEntry> EntriesOf(ProviderAddress address, int place)
    {
        var (number, index) = ((place / StatusBitstring.LeastEntries) + 1, place % StatusBitstring.LeastEntries);
        return
        [
            new(StatusPurpose.Revocation, Address(address, StatusPurpose.Revocation, number), index),
            new(StatusPurpose.Suspension, Address(address, StatusPurpose.Suspension, number), index),
        ];
    }

    /// <summary>The number of the list in which a place stands, from 1.</summary>
    internal static int NumberOf(int place) => (place / StatusBitstring.LeastEntries) + 1;

    private static Uri Address(ProviderAddress address, StatusPurpose purpose, int number) =>
        new($"{address.Base}/status/{(purpose == StatusPurpose.Revocation ? "withdrawn" : "suspended")}/{number}");

    private async Task<List<int>> Set(LogHistory history, StatusPurpose purpose, int number, Instant now)
    {
        var first = (number - 1) * StatusBitstring.LeastEntries;
        var places = await db.CompetencyRecords
            .Where(record => record.StatusPlace >= first && record.StatusPlace < first + StatusBitstring.LeastEntries)
            .Select(record => new { record.Id, record.StatusPlace }).ToListAsync();
        var texts = await archive.Competencies(history.Records.Values.Select(known => known.Issued.Text));
        List<int> set = [];
        foreach (var record in places)
        {
            // What nothing ever happened to and no revision overtook needs no bit.
            if (!history.Records.TryGetValue(record.Id, out var known) || (known.Events.IsEmpty && known.RevisedAt is null)) continue;
            var state = history.StateOn(record.Id, known.DayOf(now), text => texts[text])?.State;
            // A revision can end a record before the end that stands in a credential from before it: that one is void then.
            var isVoid = state == RecordState.Withdrawn || (state == RecordState.Expired && known.RevisedAt is not null);
            if (purpose == StatusPurpose.Revocation ? isVoid : state == RecordState.Suspended) set.Add(record.StatusPlace - first);
        }

        return set;
    }
}

/// <summary>Lists that were signed a moment ago, so that whoever asks often does not make the server sign often. One for the process.</summary>
internal sealed class SignedLists
{
    private static readonly Duration Pause = Duration.FromMinutes(1);
    private readonly ConcurrentDictionary<(StatusPurpose, int), (long Size, string Key, Instant At, byte[] List)> lists = new();

    public byte[]? Find(StatusPurpose purpose, int number, long size, string key, Instant now) =>
        lists.TryGetValue((purpose, number), out var known) && known.Size == size && known.Key == key && known.At <= now && now - known.At < Pause
            ? known.List
            : null;

    public byte[] Keep(StatusPurpose purpose, int number, long size, string key, Instant now, byte[] list)
    {
        lists[(purpose, number)] = (size, key, now, list);
        return list;
    }
}
