using Microsoft.EntityFrameworkCore;
using Training.Records.Storage;

namespace Training.Records.Accounts;

/// <summary>Whom an actor sees.</summary>
internal static class Sight
{
    /// <summary>The people of the actor's reach, whatever their roles.</summary>
    public static IQueryable<Person> WithinReach(this IQueryable<Person> people, Actor actor)
    {
        if (actor.Shop is not { } shop) return people;
        return people.Where(person => person.ShopId == shop);
    }

    /// <summary>The technicians among people.</summary>
    public static IQueryable<Person> Technicians(this IQueryable<Person> people, TrainingDbContext db) =>
        people.Where(person => (from held in db.UserRoles
                                join role in db.Roles on held.RoleId equals role.Id
                                where held.UserId == person.Id && role.Name == Roles.Technician
                                select held).Any());

    /// <summary>Somebody whose learning and records the actor may see: oneself, or one whom the actor answers for; null where there is none.</summary>
    public static async Task<Person?> PersonInSight(this TrainingDbContext db, Actor actor, PersonId id)
    {
        if (actor.Person != id && !actor.AnswersForOthers) return null;
        var people = db.Users.AsNoTracking().Where(person => person.Id == id);
        return await (actor.Person == id ? people : people.WithinReach(actor)).SingleOrDefaultAsync();
    }

    /// <summary>What people are called. Whether the actor may know it is for the caller to see to.</summary>
    public static Task<Dictionary<PersonId, string>> NamesOf(this TrainingDbContext db, IEnumerable<PersonId> people)
    {
        PersonId[] wanted = [.. people.Distinct()];
        return db.Users.Where(person => wanted.Contains(person.Id)).Select(person => new { person.Id, person.DisplayName })
            .ToDictionaryAsync(person => person.Id, person => person.DisplayName);
    }
}
