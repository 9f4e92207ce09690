using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Caching.Memory;
using Microsoft.Extensions.Options;
using Training.Records.Accounts;

namespace Training.Web.Startup;

/// <summary>
/// Slows down whoever tries passwords, by the name and the address that they come from, whether somebody has that name or
/// not: so nobody finds out who is known, and nobody locks another out from elsewhere. The bound for one account from all
/// addresses together is Identity's lockout. One for the process; what it knows is gone with it.
/// </summary>
public sealed class WrongPasswords : IDisposable
{
    /// <summary>How many tries there are without a right one.</summary>
    public const int Tries = 10;

    /// <summary>How long to wait afterwards.</summary>
    public static readonly TimeSpan Wait = TimeSpan.FromMinutes(5);

    private readonly MemoryCache tried = new(new MemoryCacheOptions { SizeLimit = 100_000 });
    private readonly Lock door = new();
    private readonly TimeProvider clock;
    private readonly Lazy<(Person Nobody, string Hash)> nobodys;

    /// <summary>Made by the host's services.</summary>
    public WrongPasswords(TimeProvider clock, IOptions<PasswordHasherOptions> hashing)
    {
        this.clock = clock;
        nobodys = new(() =>
        {
            var nobody = new Person { DisplayName = "", Language = "en", AddedAt = default };
            return (nobody, new PasswordHasher<Person>(hashing).HashPassword(nobody, Guid.NewGuid().ToString()));
        });
    }

    /// <summary>Takes one of the tries for a name from an address; false where there is none left for now.</summary>
    /// <param name="name">The name for signing in, whether there is one or not.</param>
    /// <param name="from">The address.</param>
    public bool Try(string name, IPAddress? from)
    {
        // Made before the first try is judged, so that no try takes longer for it than another.
        _ = nobodys.Value;
        lock (door)
        {
            var now = clock.GetUtcNow();
            var counted = tried.Get<Counted>(KeyOf(name, from));
            var count = counted is not null && now < counted.Until ? counted.Count : 0;
            if (count >= Tries) return false;
            // A try counts before its password is looked at, so that many at once are no more than the same one by one.
            tried.Set(KeyOf(name, from), new Counted(count + 1, now + Wait), new MemoryCacheEntryOptions { Size = 1, AbsoluteExpirationRelativeToNow = Wait });
            return true;
        }
    }

    /// <summary>Forgets the tries: the password was right.</summary>
    /// <param name="name">The name for signing in.</param>
    /// <param name="from">The address.</param>
    public void Forget(string name, IPAddress? from)
    {
        lock (door) tried.Remove(KeyOf(name, from));
    }

    /// <summary>Takes as long as looking at somebody's password does, where there is none to look at.</summary>
    /// <param name="hasher">What looks at passwords.</param>
    /// <param name="password">What was typed.</param>
    public void LookAtNobodys(IPasswordHasher<Person> hasher, string password)
    {
        ArgumentNullException.ThrowIfNull(hasher);
        hasher.VerifyHashedPassword(nobodys.Value.Nobody, nobodys.Value.Hash, password);
    }

    /// <inheritdoc/>
    public void Dispose() => tried.Dispose();

    // One household or hall has 64 bits of IPv6 addresses to choose from.
    private static (string, string) KeyOf(string name, IPAddress? from) => (
        name.Trim().ToUpperInvariant() is var called && called.Length > 64 ? called[..64] : called,
        from is { AddressFamily: AddressFamily.InterNetworkV6, IsIPv4MappedToIPv6: false } ? Convert.ToHexString(from.GetAddressBytes()[..8]) : from?.MapToIPv4().ToString() ?? "");

    private sealed record Counted(int Count, DateTimeOffset Until);
}
