using Microsoft.EntityFrameworkCore;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Signing;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Issuers;

/// <summary>Who signs now, and with which keys it was ever signed.</summary>
internal sealed class IssuerKeys(TrainingDbContext db, IssuerPlace place, IssuerKeyFile file, TimeProvider clock)
{
    /// <summary>The present key under the present address, or why nothing can be signed.</summary>
    public Outcome<Signer, Refusal> Present()
    {
        var address = place.Address();
        if (!address.IsOk) return address.Fault;
        var key = file.Present();
        return key.IsOk
            ? new Signer(place.Name, address.Value, key.Value, KeyId.For(address.Value.Did, key.Value.PublicKey))
            : key.Fault;
    }

    /// <summary>Every key that was ever signed with, and the present one.</summary>
    public async Task<KeyRing> Ring()
    {
        var kept = new KeyRing((await db.IssuerKeys.AsNoTracking().ToListAsync()).Select(row => row.Key()));
        return Present() is { IsOk: true } present && kept.Find(present.Value.Id) is null
            ? kept.With(new KeyRing([new IssuerKey(present.Value.Id, present.Value.Key.PublicKey)]))
            : kept;
    }

    /// <summary>The document with the keys, did.json, for each identifier that the provider ever had; the present one first.</summary>
    public async Task<IReadOnlyList<CanonicalText>> Documents()
    {
        var present = Present();
        var ring = await Ring();
        var added = await db.IssuerKeys.AsNoTracking().ToDictionaryAsync(row => row.Id, row => row.AddedAt);
        return
        [
            .. ring.Keys.GroupBy(key => key.Id.Controller)
                .OrderBy(keys => present.IsOk && keys.Key == present.Value.Address.Did.ToString() ? 0 : 1)
                .ThenBy(keys => keys.Key, StringComparer.Ordinal)
                .Select(keys => DidDocument.Write(
                    DidWeb.Parse(keys.Key).Value,
                    [.. keys.OrderBy(key => present.IsOk && key.Id == present.Value.Id ? 0 : 1)
                        .ThenByDescending(key => added.GetValueOrDefault(key.Id.Value))])),
        ];
    }

    /// <summary>Keeps the public half of the present key, within the change under way; again changes nothing.</summary>
    public async Task Keep(Signer signer)
    {
        if (await db.IssuerKeys.AnyAsync(row => row.Id == signer.Id.Value)) return;
        db.Add(new IssuerKeyRow { Id = signer.Id.Value, AddedAt = clock.Instant() });
        await db.SaveChangesAsync();
    }
}

/// <summary>Somebody who signs: the provider, at an address, with a key.</summary>
internal sealed record Signer(string Name, ProviderAddress Address, SigningKey Key, KeyId Id);
