using System.Security.Cryptography;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Accounts;

/// <summary>Shops and the people in them.</summary>
public sealed partial class People
{
    // Without letters and digits that look like others on paper: 31^20 passwords, some 99 bits.
    private const string PasswordLetters = "abcdefghjkmnpqrstuvwxyz23456789";

    private readonly TrainingDbContext db;
    private readonly UserManager<Person> users;
    private readonly TimeProvider clock;

    /// <summary>Made by the host's services.</summary>
    public People(TrainingDbContext db, UserManager<Person> users, TimeProvider clock) =>
        (this.db, this.users, this.clock) = (db, users, clock);

    /// <summary>Who a signed-in person is to the services; null where there is no such person (any more).</summary>
    /// <param name="person">The person.</param>
    public async Task<Actor?> ActorOf(PersonId person)
    {
        var found = await db.Users.AsNoTracking().SingleOrDefaultAsync(user => user.Id == person);
        return found is null ? null : new(person, found.ShopId, (await RolesOf([person]))[person].ToHashSet());
    }

    /// <summary>
    /// What changes whenever somebody's earlier sign-ins must end: with a new password, a one-time password and the removal of
    /// their name. Null where there is no such person.
    /// </summary>
    /// <param name="person">The person.</param>
    public Task<string?> StampOf(PersonId person) =>
        db.Users.AsNoTracking().Where(user => user.Id == person).Select(user => user.SecurityStamp).SingleOrDefaultAsync();

    /// <summary>Whether nobody is administrator yet, so that <see cref="AddFirstAdministrator"/> is open.</summary>
    public async Task<bool> AwaitsFirstAdministrator() =>
        !await (from held in db.UserRoles
                join role in db.Roles on held.RoleId equals role.Id
                where role.Name == Roles.Administrator
                select held).AnyAsync();

    /// <summary>Adds the first administrator, with a password that they chose; refused once there is one.</summary>
    /// <param name="displayName">The name that is shown.</param>
    /// <param name="userName">The name for signing in.</param>
    /// <param name="password">The password.</param>
    public async Task<Outcome<PersonId, Refusal>> AddFirstAdministrator(string displayName, string userName, string password)
    {
        var first = new NewPerson(displayName, userName, null, [Roles.Administrator]);
        if (WhyNot(first) is { } wrong) return wrong;
        await using var change = await db.BeginChange();
        if (!await AwaitsFirstAdministrator()) return new Refusal("There is an administrator already; ask them to add you.");
        var added = await Create(first, password, isOneTime: false);
        if (added.IsOk) await change.CommitAsync();
        return added;
    }

    /// <summary>Adds a shop (administrators).</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="name">What it is called.</param>
    /// <param name="timeZone">The IANA name of its time zone.</param>
    public async Task<Outcome<ShopId, Refusal>> AddShop(Actor actor, string name, string timeZone)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Administrator)) return Refused.NotAllowed;
        var called = name?.Trim() ?? "";
        if (!IsName(called)) return new Refusal("A shop's name has 1 to 100 characters on one line.") { About = "Name" };
        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(timeZone ?? "") is null)
            return new Refusal($"There is no time zone “{timeZone}”; write one such as Europe/London.") { About = "TimeZone" };
        await using var change = await db.BeginChange();
        if (await db.Shops.AnyAsync(shop => shop.Name == called)) return new Refusal($"There is a shop called {called} already.") { About = "Name" };
        var now = clock.Instant();
        var shop = new Shop { Id = ShopId.New(now), Name = called, TimeZone = timeZone!, AddedAt = now };
        db.Add(shop);
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return shop.Id;
    }

    /// <summary>The shops that the actor sees: all for staff of the provider, their own for everybody else. By name.</summary>
    /// <param name="actor">Who asks.</param>
    public async Task<IReadOnlyList<ShopView>> Shops(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var shops = await db.Shops.AsNoTracking().OrderBy(shop => shop.Name).ToListAsync();
        return [.. shops.Where(shop => actor.Reaches(shop.Id)).Select(View)];
    }

    /// <summary>
    /// Adds a person with a one-time password. Owners add technicians of their own shop; administrators add anybody.
    /// Technicians and owners belong to a shop, trainers and administrators to the provider, examiners to either.
    /// </summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="person">Who is added.</param>
    public async Task<Outcome<AddedPerson, Refusal>> Add(Actor actor, NewPerson person)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(person);
        if (!actor.Is(Roles.Administrator))
        {
            if (!actor.Is(Roles.Owner)) return Refused.NotAllowed;
            if (person.Shop != actor.Shop) return Refused.NotFound;
            if (person.Roles.Any(role => role != Roles.Technician)) return new Refusal("An owner adds technicians; an administrator adds everybody else.");
        }

        if (WhyNot(person) is { } wrong) return wrong;
        await using var change = await db.BeginChange();
        if (person.Shop is { } shop && !await db.Shops.AnyAsync(known => known.Id == shop)) return Refused.NotFound;
        var password = OneTimePassword();
        var added = await Create(person, password, isOneTime: true);
        if (!added.IsOk) return added.Fault;
        await change.CommitAsync();
        return new AddedPerson(added.Value, SignInName(person.UserName), password);
    }

    /// <summary>The people that the actor answers for, by shop and name: for examiners, trainers, owners and administrators.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="shop">One shop alone; null for all within reach.</param>
    public async Task<Outcome<IReadOnlyList<PersonView>, Refusal>> List(Actor actor, ShopId? shop = null)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.AnswersForOthers) return Refused.NotAllowed;
        if (shop is not null && (!actor.Reaches(shop) || !await db.Shops.AnyAsync(known => known.Id == shop))) return Refused.NotFound;
        var people = db.Users.AsNoTracking().WithinReach(actor);
        if (shop is not null) people = people.Where(person => person.ShopId == shop);
        return (await Views(people)).OrderBy(person => person.Shop?.Name, StringComparer.Ordinal)
            .ThenBy(person => person.DisplayName, StringComparer.Ordinal).ToList();
    }

    /// <summary>One person: oneself, or one within reach for the roles that <see cref="List"/> serves.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="person">The person.</param>
    public async Task<Outcome<PersonView, Refusal>> Look(Actor actor, PersonId person)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (await db.PersonInSight(actor, person) is null) return Refused.NotFound;
        return (await Views(db.Users.AsNoTracking().Where(found => found.Id == person))).Single();
    }

    /// <summary>Gives somebody a new one-time password (owners: technicians of their own shop; administrators: anybody).</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="person">Who forgot theirs.</param>
    public async Task<Outcome<AddedPerson, Refusal>> GiveOneTimePassword(Actor actor, PersonId person)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Administrator) && !actor.Is(Roles.Owner)) return Refused.NotAllowed;
        await using var change = await db.BeginChange();
        var found = await db.Users.WithinReach(actor).SingleOrDefaultAsync(user => user.Id == person);
        if (found is null) return Refused.NotFound;
        if (!actor.Is(Roles.Administrator) && (await RolesOf([person]))[person].Any(role => role != Roles.Technician))
            return new Refusal("An owner gives passwords to technicians; ask an administrator.");
        var password = OneTimePassword();
        found.HasOneTimePassword = true;
        if (WhyNot(await users.RemovePasswordAsync(found)) is { } wrong) return wrong;
        if (WhyNot(await users.AddPasswordAsync(found, password)) is { } lacking) return lacking;
        await change.CommitAsync();
        return new AddedPerson(person, found.UserName!, password);
    }

    /// <summary>Replaces one's own password.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="current">The password until now.</param>
    /// <param name="chosen">The new one.</param>
    /// <returns>The person, or the sentence of what the new password lacks.</returns>
    public async Task<Outcome<PersonId, Refusal>> ChoosePassword(Actor actor, string current, string chosen)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var change = await db.BeginChange();
        var found = await db.Users.SingleOrDefaultAsync(user => user.Id == actor.Person);
        if (found is null) return Refused.NotFound;
        if (current == chosen) return new Refusal("The new password must not be the old one.");
        found.HasOneTimePassword = false;
        if (WhyNot(await users.ChangePasswordAsync(found, current ?? "", chosen ?? "")) is { } wrong) return wrong;
        await change.CommitAsync();
        return actor.Person;
    }

    /// <summary>Chooses the language that one would rather read.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="language">The language, such as <c>es</c>.</param>
    public async Task<Outcome<PersonId, Refusal>> ChooseLanguage(Actor actor, string language)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!Language().IsMatch(language ?? "")) return new Refusal($"“{language}” is no language code such as en or es.");
        await using var change = await db.BeginChange();
        var found = await db.Users.SingleOrDefaultAsync(user => user.Id == actor.Person);
        if (found is null) return Refused.NotFound;
        found.Language = language!;
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return actor.Person;
    }

    internal static ShopView View(Shop shop) => new(shop.Id, shop.Name, shop.TimeZone);

    /// <summary>Everything that is wrong with what was said of somebody.</summary>
    internal static IEnumerable<Refusal> Wrongs(NewPerson person)
    {
        if (!IsName(person.DisplayName?.Trim() ?? "")) yield return new("A name has 1 to 100 characters on one line.") { About = nameof(NewPerson.DisplayName) };
        if (!UserName().IsMatch(SignInName(person.UserName)))
            yield return new("A name for signing in has 2 to 32 letters a to z, digits, dots or hyphens and begins with a letter.") { About = nameof(NewPerson.UserName) };
        if (!Language().IsMatch(person.Language))
            yield return new($"“{person.Language}” is no language code such as en or es.") { About = nameof(NewPerson.Language) };
        if (person.Roles.Count == 0) yield return new("Choose at least one role.") { About = nameof(NewPerson.Roles) };
        if (person.Roles.FirstOrDefault(role => !Roles.All.Contains(role)) is { } unknown)
            yield return new($"There is no role “{unknown}”.") { About = nameof(NewPerson.Roles) };
        if (person.Shop is null && person.Roles.Any(role => role is Roles.Technician or Roles.Owner))
            yield return new("A technician or an owner belongs to a shop; choose one.") { About = nameof(NewPerson.Shop) };
        if (person.Shop is not null && person.Roles.Any(role => role is Roles.Trainer or Roles.Administrator))
            yield return new("A trainer or an administrator is staff of the provider and belongs to no shop.") { About = nameof(NewPerson.Shop) };
    }

    private static Refusal? WhyNot(NewPerson person) => Wrongs(person).FirstOrDefault();

    private static Refusal? WhyNot(IdentityResult result) =>
        result.Succeeded ? null : result.Errors.First().Code switch
        {
            nameof(IdentityErrorDescriber.PasswordMismatch) => new("The password until now is another one. Type it again.") { About = "Current" },
            nameof(IdentityErrorDescriber.PasswordTooShort) => new("A password has at least 15 characters: a sentence that you will remember is good."),
            _ => new(string.Join(' ', result.Errors.Select(error => error.Description))),
        };

    private static bool IsName(string name) => name.Length is >= 1 and <= 100 && !name.Any(char.IsControl);

    internal static string SignInName(string? userName) => userName?.Trim().ToLowerInvariant() ?? "";

    private static string OneTimePassword() =>
        string.Join('-', RandomNumberGenerator.GetString(PasswordLetters, 20).Chunk(5).Select(part => new string(part)));

    /// <summary>Somebody who is not yet kept, with a one-time password that is hashed already.</summary>
    internal (Person Person, string Password) Prepare(NewPerson person, IPasswordHasher<Person> hasher)
    {
        var prepared = Made(person, isOneTime: true);
        var password = OneTimePassword();
        prepared.PasswordHash = hasher.HashPassword(prepared, password);
        return (prepared, password);
    }

    /// <summary>Keeps somebody whose password is hashed already; the sentence of what is wrong, if anything.</summary>
    internal async Task<Refusal?> Create(Person person, IReadOnlyCollection<string> roles) =>
        WhyNot(await users.CreateAsync(person)) ?? WhyNot(await users.AddToRolesAsync(person, roles));

    private async Task<Outcome<PersonId, Refusal>> Create(NewPerson person, string password, bool isOneTime)
    {
        var created = Made(person, isOneTime);
        if (await users.FindByNameAsync(created.UserName!) is not null)
            return new Refusal($"Somebody signs in as {created.UserName} already; choose another name.") { About = nameof(NewPerson.UserName) };
        if (WhyNot(await users.CreateAsync(created, password)) is { } wrong) return wrong;
        if (WhyNot(await users.AddToRolesAsync(created, person.Roles.Distinct())) is { } fault) return fault;
        return created.Id;
    }

    private Person Made(NewPerson person, bool isOneTime)
    {
        var now = clock.Instant();
        return new()
        {
            Id = PersonId.New(now),
            DisplayName = person.DisplayName.Trim(),
            UserName = SignInName(person.UserName),
            ShopId = person.Shop,
            Language = person.Language,
            HasOneTimePassword = isOneTime,
            AddedAt = now,
        };
    }

    private async Task<IReadOnlyList<PersonView>> Views(IQueryable<Person> people)
    {
        var found = await people.ToListAsync();
        var roles = await RolesOf([.. found.Select(person => person.Id)]);
        var shops = await db.Shops.AsNoTracking().ToDictionaryAsync(shop => shop.Id);
        return [.. found.Select(person => new PersonView(
            person.Id, person.DisplayName, person.UserName!, person.ShopId is { } shop ? View(shops[shop]) : null,
            [.. roles[person.Id].Order(StringComparer.Ordinal)], person.Language, person.AddedAt))];
    }

    private async Task<ILookup<PersonId, string>> RolesOf(List<PersonId> people) =>
        (await (from held in db.UserRoles
                join role in db.Roles on held.RoleId equals role.Id
                where people.Contains(held.UserId)
                select new { held.UserId, role.Name }).ToListAsync()).ToLookup(held => held.UserId, held => held.Name!);

    [GeneratedRegex(@"\A[a-z][a-z0-9.\-]{1,31}\z", RegexOptions.CultureInvariant)]
    private static partial Regex UserName();

    [GeneratedRegex(@"\A[a-z]{2,3}(-[A-Za-z0-9]{2,8})?\z", RegexOptions.CultureInvariant)]
    private static partial Regex Language();
}
