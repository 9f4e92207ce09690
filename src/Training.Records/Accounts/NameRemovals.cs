using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Records.Ledger;
using Training.Records.Storage;
using Training.Records.Writing;
using Training.Sequencing;

namespace Training.Records.Accounts;

/// <summary>
/// Takes the name of somebody who leaves the trade out of everything that is kept. The log stays as it is and still holds:
/// it never had the name, and without the salts nothing leads from its hashes to anybody.
/// </summary>
public sealed class NameRemovals
{
    /// <summary>What stands where the name stood.</summary>
    public const string InItsPlace = "Name removed";

    private readonly TrainingDbContext db;
    private readonly LogWriter writer;
    private readonly TimeProvider clock;

    internal NameRemovals(TrainingDbContext db, LogWriter writer, TimeProvider clock) => (this.db, this.writer, this.clock) = (db, writer, clock);

    /// <summary>
    /// Removes a person's name, name for signing in, password and roles for good, and the name from what people wrote
    /// (administrators; never one's own). Records, papers and runs stay, nobody's from now on.
    /// </summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="person">Whose name.</param>
    public async Task<Outcome<PersonId, Refusal>> Remove(Actor actor, PersonId person)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Administrator)) return Refused.NotAllowed;
        if (person == actor.Person) return new Refusal("Nobody removes their own name; ask another administrator.");
        await using (var change = await db.BeginChange())
        {
            var found = await db.Users.SingleOrDefaultAsync(user => user.Id == person);
            if (found is null) return Refused.NotFound;
            if (found.NameRemovedAt is not null) return new Refusal("The name is removed already.");
            var records = await db.CompetencyRecords.Where(record => record.PersonId == person).ToListAsync();
            foreach (var record in records)
            {
                record.Salt = null;
                await writer.Add(new LogEvent.NameRemoved(record.Id));
            }

            await db.Set<DeskEntry>().Where(entry => entry.WrittenById == person).ExecuteUpdateAsync(set => set.SetProperty(entry => entry.WriterSalt, (byte[]?)null));
            await db.Set<DeskEntry>().Where(entry => entry.ApprovedById == person).ExecuteUpdateAsync(set => set.SetProperty(entry => entry.ApproverSalt, (byte[]?)null));
            await CleanTexts(found, [.. records.Select(record => record.Id)]);
            await RemoveSignIn(found, clock.Instant());
            await db.SaveChangesAsync();
            await change.CommitAsync();
        }

        // What was deleted is overwritten in the file (secure_delete); the write-ahead log beside it is emptied, too.
        await db.Database.ExecuteSqlRawAsync("PRAGMA wal_checkpoint(TRUNCATE)");
        return person;
    }

    private async Task RemoveSignIn(Person person, Instant now)
    {
        (person.DisplayName, person.NameRemovedAt, person.HasOneTimePassword) = (InItsPlace, now, false);
        person.UserName = $"removed-{person.Id.Value:N}";
        person.NormalizedUserName = person.UserName.ToUpperInvariant();
        (person.Email, person.NormalizedEmail, person.PhoneNumber, person.PasswordHash) = (null, null, null, null);
        (person.LockoutEnabled, person.LockoutEnd) = (true, DateTimeOffset.MaxValue);
        // Whoever is signed in by the old name is put out at the next look at this.
        (person.SecurityStamp, person.ConcurrencyStamp) = (Guid.NewGuid().ToString(), Guid.NewGuid().ToString());
        await db.UserRoles.Where(held => held.UserId == person.Id).ExecuteDeleteAsync();
        await db.UserClaims.Where(claim => claim.UserId == person.Id).ExecuteDeleteAsync();
        await db.UserLogins.Where(login => login.UserId == person.Id).ExecuteDeleteAsync();
        await db.UserTokens.Where(token => token.UserId == person.Id).ExecuteDeleteAsync();
    }

    private async Task CleanTexts(Person person, List<RecordId> records)
    {
        var (whole, part) = Names(person.DisplayName);
        foreach (var note in await db.LogNotes.Where(note => note.Reason != "").ToListAsync())
        {
            // Texts about the person may call them by a part of the name; elsewhere that part is somebody else's.
            var cleaned = (records.Contains(note.RecordId) ? part : whole).Replace(note.Reason, InItsPlace);
            if (cleaned != note.Reason) (note.Reason, note.Salt) = (cleaned, null);
        }

        foreach (var run in await db.Runs.ToListAsync())
        {
            var name = run.TechnicianId == person.Id ? part : whole;
            Clean(run, nameof(run.Note), run.Note, name);
            Clean(run, nameof(run.Reason), run.Reason, name);
            Clean(run, nameof(run.Chassis), run.Chassis, name);
        }

        foreach (var sitting in await db.Sittings.ToListAsync()) Clean(sitting, nameof(sitting.Place), sitting.Place, whole);
        foreach (var proof in await db.Proofs.ToListAsync()) Clean(proof, nameof(proof.ForWhom), proof.ForWhom, whole);
    }

    private void Clean(object row, string property, string? text, Regex name)
    {
        if (text is null) return;
        var cleaned = name.Replace(text, InItsPlace);
        if (cleaned != text) db.Entry(row).Property(property).CurrentValue = cleaned;
    }

    /// <summary>The whole name, and the whole name or any part of it, as words of their own, in either case.</summary>
    private static (Regex Whole, Regex Part) Names(string name)
    {
        var parts = name.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var whole = string.Join(@"\s+", parts.Select(Regex.Escape));
        var any = parts.Where(part => part.Length > 1).OrderByDescending(part => part.Length).Select(Regex.Escape).Prepend(whole);
        return (Of(whole), Of(string.Join('|', any)));

        static Regex Of(string pattern) => new(
            $@"(?<![\p{{L}}\p{{M}}])(?:{pattern})(?![\p{{L}}\p{{M}}])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant,
            TimeSpan.FromSeconds(1));
    }
}
