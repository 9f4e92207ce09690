using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Training.Records.Accounts;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Reminding;

/// <summary>
/// The address by which an owner's own calendar fetches the shop's reminders. Whoever has it can look, so it cannot be
/// guessed, is shown once, and is good until the owner ends it, makes another, or is no owner any more.
/// </summary>
public sealed class Calendars
{
    private const int SecretBytes = 32;
    private const int DaysAhead = 366;

    private readonly TrainingDbContext db;
    private readonly People people;
    private readonly Reminders reminders;
    private readonly TimeProvider clock;

    internal Calendars(TrainingDbContext db, People people, Reminders reminders, TimeProvider clock) =>
        (this.db, this.people, this.reminders, this.clock) = (db, people, reminders, clock);

    /// <summary>Makes an address (owners); the one before it is good no more.</summary>
    /// <param name="actor">The owner.</param>
    /// <returns>The secret of the address: 256 bits in base64url. It is kept nowhere.</returns>
    public async Task<Outcome<string, Refusal>> Make(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Owner) || actor.Shop is null) return Refused.NotAllowed;
        var secret = Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(SecretBytes));
        await using var change = await db.BeginChange();
        if (await db.Set<CalendarAddress>().SingleOrDefaultAsync(known => known.PersonId == actor.Person) is { } address)
            (address.SecretHash, address.MadeAt) = (HashOf(secret), clock.Instant());
        else
            db.Add(new CalendarAddress { PersonId = actor.Person, SecretHash = HashOf(secret), MadeAt = clock.Instant() });
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return secret;
    }

    /// <summary>Ends the address (owners). Where there is none nothing changes.</summary>
    /// <param name="actor">The owner.</param>
    public async Task<Outcome<PersonId, Refusal>> End(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Owner) || actor.Shop is null) return Refused.NotAllowed;
        await db.Set<CalendarAddress>().Where(known => known.PersonId == actor.Person).ExecuteDeleteAsync();
        return actor.Person;
    }

    /// <summary>What stands in the calendar. Nobody need be signed in.</summary>
    /// <param name="secret">The secret of the address.</param>
    public async Task<Outcome<CalendarContents, Refusal>> Read(string secret)
    {
        if (secret is not { Length: > 0 and <= 100 }) return Refused.NotFound;
        var hash = HashOf(secret);
        if (await db.Set<CalendarAddress>().AsNoTracking().SingleOrDefaultAsync(known => known.SecretHash == hash) is not { } address)
            return Refused.NotFound;
        if (await people.ActorOf(address.PersonId) is not { Shop: { } shop } owner || !owner.Is(Roles.Owner)) return Refused.NotFound;
        var found = await reminders.OfShop(owner, DaysAhead);
        if (!found.IsOk) return found.Fault;
        var language = await db.Users.Where(person => person.Id == owner.Person).Select(person => person.Language).SingleAsync();
        var name = await db.Shops.Where(known => known.Id == shop).Select(known => known.Name).SingleAsync();
        return new CalendarContents(name, language, found.Value.Today, found.Value.Reminders);
    }

    private static byte[] HashOf(string secret) => SHA256.HashData(Encoding.UTF8.GetBytes(secret));
}
