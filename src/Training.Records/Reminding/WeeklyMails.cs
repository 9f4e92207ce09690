using System.Net.Mail;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Records.Accounts;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Reminding;

/// <summary>
/// The weekly mails to owners: at most one a week for each, none where there is nothing to say. Who sends them asks
/// <see cref="Due"/>, sends, and says so by <see cref="Sent"/>; a mail that was sent and not said to be is sent again under
/// the name that was kept for it beforehand, so that a mail program can tell that it is the same.
/// </summary>
public sealed class WeeklyMails
{
    private const int MostLetters = 200;
    private const int FirstHour = 6;

    private readonly TrainingDbContext db;
    private readonly People people;
    private readonly Reminders reminders;
    private readonly TimeProvider clock;

    internal WeeklyMails(TrainingDbContext db, People people, Reminders reminders, TimeProvider clock) =>
        (this.db, this.people, this.reminders, this.clock) = (db, people, reminders, clock);

    /// <summary>Says where one's weekly mail goes (owners).</summary>
    /// <param name="actor">The owner.</param>
    /// <param name="address">The address; empty for no mail.</param>
    public async Task<Outcome<PersonId, Refusal>> SendTo(Actor actor, string? address)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Owner) || actor.Shop is null) return Refused.NotAllowed;
        var wished = address?.Trim() ?? "";
        if (wished.Length > 0 && !IsAddress(wished)) return new Refusal($"“{wished}” is no mail address; write one such as name@example.org.") { About = "Address" };
        await using var change = await db.BeginChange();
        var owner = await db.Users.SingleAsync(person => person.Id == actor.Person);
        (owner.Email, owner.NormalizedEmail) = wished.Length == 0 ? (null, null) : (wished, wished.ToUpperInvariant());
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return actor.Person;
    }

    /// <summary>The mails that are to be sent now, from six in the morning by the shop's clock; each is named before it is given out.</summary>
    /// <param name="host">What stands behind the @ of their names: the provider's host.</param>
    public async Task<IReadOnlyList<WeeklyMail>> Due(string host)
    {
        var now = clock.Instant();
        var wishing = await (from person in db.Users.AsNoTracking()
                             where person.Email != null && person.NameRemovedAt == null
                             join shop in db.Shops on person.ShopId equals shop.Id
                             select new { person, shop }).ToListAsync();
        var due = new List<WeeklyMail>();
        foreach (var (person, shop) in wishing.Select(row => (row.person, row.shop)))
        {
            var local = now.InZone(DateTimeZoneProviders.Tzdb[shop.TimeZone]);
            if (local.Hour < FirstHour) continue;
            var week = local.Date.PlusDays(1 - (int)local.DayOfWeek);
            var begun = await db.Set<ReminderMail>().AsNoTracking().SingleOrDefaultAsync(mail => mail.PersonId == person.Id && mail.Week == week);
            if (begun is { SentAt: not null }) continue;
            if (await people.ActorOf(person.Id) is not { } owner || !owner.Is(Roles.Owner)) continue;
            var found = await reminders.OfShop(owner, Reminders.DaysAhead);
            if (!found.IsOk || found.Value.Reminders.Count == 0) continue;
            due.Add(new(
                person.Id, person.DisplayName, person.Email!, person.Language, shop.Name, week,
                begun?.MessageId ?? await Begin(person.Id, week, host, now), found.Value.Reminders));
        }

        return due;
    }

    /// <summary>Keeps that a mail was taken by the mail server.</summary>
    /// <param name="mail">The mail.</param>
    public async Task Sent(WeeklyMail mail)
    {
        ArgumentNullException.ThrowIfNull(mail);
        var now = clock.Instant();
        await db.Set<ReminderMail>().Where(known => known.PersonId == mail.Owner && known.Week == mail.Week && known.SentAt == null)
            .ExecuteUpdateAsync(set => set.SetProperty(known => known.SentAt, now));
    }

    private async Task<string> Begin(PersonId person, LocalDate week, string host, Instant now)
    {
        var id = $"{Guid.CreateVersion7(now.ToDateTimeOffset())}@{host}";
        await using var change = await db.BeginChange();
        db.Add(new ReminderMail { PersonId = person, Week = week, MessageId = id, BegunAt = now });
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return id;
    }

    // A bare address alone, without a name before it: what is typed here must not steer the head of a mail.
    private static bool IsAddress(string text) =>
        text.Length <= MostLetters && !text.Any(char.IsControl) && MailAddress.TryCreate(text, out var address) && address.Address == text
        && address.Host.Contains('.', StringComparison.Ordinal);
}
