using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Records.Accounts;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Issuers;

/// <summary>The provider's keys, for the world to read and for administrators to change.</summary>
public sealed class SigningKeys
{
    private readonly TrainingDbContext db;
    private readonly IssuerKeys keys;
    private readonly IssuerKeyFile file;
    private readonly TimeProvider clock;

    internal SigningKeys(TrainingDbContext db, IssuerKeys keys, IssuerKeyFile file, TimeProvider clock) =>
        (this.db, this.keys, this.file, this.clock) = (db, keys, file, clock);

    /// <summary>The document did.json that says which keys are the provider's. Anybody may read it.</summary>
    public async Task<Outcome<byte[], Refusal>> Document()
    {
        var present = keys.Present();
        return present.IsOk ? (await keys.Documents())[0].Utf8.ToArray() : present.Fault;
    }

    /// <summary>The keys, the present one first (administrators).</summary>
    /// <param name="actor">Who asks.</param>
    public async Task<Outcome<SigningKeysView, Refusal>> Look(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Administrator)) return Refused.NotAllowed;
        var present = keys.Present();
        var rows = await db.IssuerKeys.AsNoTracking().OrderByDescending(row => row.AddedAt).ToListAsync();
        return new SigningKeysView(
            present.IsOk ? present.Value.Address.Did.DocumentUrl.ToString() : null,
            present.IsOk ? present.Value.Id.Value : null,
            present.IsOk ? null : present.Fault.Sentence,
            [.. rows.Where(row => !present.IsOk || row.Id != present.Value.Id.Value)
                .Select(row => new OldKeyView(row.Id, row.AddedAt, row.ExpiresAt, row.GivenUpAt))]);
    }

    /// <summary>
    /// Makes a new key (administrators). The old one ends now: nothing that bears a later date is good, and files that it
    /// signed are downloaded anew.
    /// </summary>
    /// <param name="actor">Who asks.</param>
    public Task<Outcome<SigningKeysView, Refusal>> Replace(Actor actor) => Change(actor, (old, now) => old.ExpiresAt = now);

    /// <summary>
    /// Gives the present key up because somebody else may hold it, and makes a new one (administrators). Nothing that the
    /// old one signed is to be believed any more, whatever date it bears: proofs must be downloaded anew.
    /// </summary>
    /// <param name="actor">Who asks.</param>
    public Task<Outcome<SigningKeysView, Refusal>> GiveUp(Actor actor) => Change(actor, (old, now) => old.GivenUpAt = now);

    private async Task<Outcome<SigningKeysView, Refusal>> Change(Actor actor, Action<IssuerKeyRow, Instant> end)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Administrator)) return Refused.NotAllowed;
        var present = keys.Present();
        if (!present.IsOk) return present.Fault;
        await using var change = await db.BeginChange();
        await keys.Keep(present.Value);
        // Under an earlier address the key had another name; it ends under every one of them.
        var secret = "#" + present.Value.Key.PublicKey.Multikey;
        var now = clock.Instant();
        foreach (var row in await db.IssuerKeys.Where(row => row.Id.EndsWith(secret)).ToListAsync()) end(row, now);
        // Keys that were replaced when a replaced key still stayed good for years end with this one at the latest.
        foreach (var row in await db.IssuerKeys.Where(row => !row.Id.EndsWith(secret)).ToListAsync())
            if (row.ExpiresAt > now) row.ExpiresAt = now;
        await db.SaveChangesAsync();
        var made = file.Replace();
        if (!made.IsOk) return made.Fault;
        await keys.Keep(keys.Present().Value);
        await change.CommitAsync();
        return await Look(actor);
    }
}

/// <summary>The provider's keys.</summary>
/// <param name="DocumentAddress">Where the world reads them; null while nothing can be signed.</param>
/// <param name="Present">The name of the key that signs now; null while nothing can be signed.</param>
/// <param name="Why">Why nothing can be signed; null where it can.</param>
/// <param name="Old">The others, newest first.</param>
public sealed record SigningKeysView(string? DocumentAddress, string? Present, string? Why, IReadOnlyList<OldKeyView> Old);

/// <summary>A key that signs no more.</summary>
/// <param name="Name">Its name.</param>
/// <param name="AddedAt">When it was first used.</param>
/// <param name="ExpiresAt">When it ended; null where that is not said.</param>
/// <param name="GivenUpAt">Since when nothing that it signed is to be believed; null where it still is.</param>
public sealed record OldKeyView(string Name, Instant AddedAt, Instant? ExpiresAt, Instant? GivenUpAt);
