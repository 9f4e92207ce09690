using Microsoft.Extensions.Caching.Memory;
using Training.Content.Packing;
using Training.Records;

namespace Training.Web.Startup;

/// <summary>
/// Packs that somebody has looked at and may go on with: a browser cannot send a file a second time by itself. Kept for an
/// hour and for few people; nobody was told that anything is saved.
/// </summary>
public sealed class LookedAtPacks : IDisposable
{
    private const int MostPacks = 8;
    private static readonly TimeSpan Kept = TimeSpan.FromHours(1);
    private readonly MemoryCache packs = new(new MemoryCacheOptions { SizeLimit = MostPacks });

    /// <summary>Keeps a pack; of one person the last one alone.</summary>
    /// <param name="person">Who looked.</param>
    /// <param name="pack">The pack.</param>
    public void Keep(PersonId person, Pack pack) =>
        packs.Set(person, pack, new MemoryCacheEntryOptions { Size = 1, AbsoluteExpirationRelativeToNow = Kept });

    /// <summary>The pack that somebody looked at last, or null.</summary>
    /// <param name="person">Who looked.</param>
    public Pack? Of(PersonId person) => packs.Get<Pack>(person);

    /// <inheritdoc/>
    public void Dispose() => packs.Dispose();
}
