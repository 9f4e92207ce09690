using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Training.Content;
using Training.Records.Accounts;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Interchange;

/// <summary>
/// Takes technicians in from a file: first all is looked at and nothing is changed, then all of them come in or none.
/// For owners (their own shop) and administrators.
/// </summary>
public sealed class PeopleIntake
{
    private readonly TrainingDbContext db;
    private readonly People people;
    private readonly UserManager<Person> users;

    internal PeopleIntake(TrainingDbContext db, People people, UserManager<Person> users) => (this.db, this.people, this.users) = (db, people, users);

    /// <summary>Looks at a file and says everything that is wrong with it.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="shop">The shop that the people belong to.</param>
    /// <param name="text">The text of the file.</param>
    /// <param name="languages">The languages that somebody can be given.</param>
    public async Task<Outcome<PeoplePreview, Refusal>> Preview(Actor actor, ShopId shop, string? text, IReadOnlyCollection<string> languages)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(languages);
        if (!actor.Is(Roles.Administrator) && !actor.Is(Roles.Owner)) return Refused.NotAllowed;
        if (!actor.Reaches(shop) || !await db.Shops.AnyAsync(known => known.Id == shop)) return Refused.NotFound;
        var read = PeopleFile.Read(text);
        if (!read.IsOk) return read.Fault;
        var file = read.Value.People;
        var wanted = file.Select(person => People.SignInName(person.UserName)).Distinct().ToList();
        var taken = (await db.Users.Where(user => wanted.Contains(user.UserName!)).Select(user => user.UserName!).ToListAsync()).ToHashSet();
        var first = new Dictionary<string, int>();
        var problems = new List<LineProblem>();
        foreach (var person in file)
        {
            void Wrong(Refusal why) => problems.Add(new(person.Line, why));
            if (person.HasTooMany) Wrong(new("This line has more fields than there are columns; does a name hold a separator?"));
            foreach (var wrong in People.Wrongs(New(person, shop)).Where(wrong => wrong.About != nameof(NewPerson.Language))) Wrong(wrong);
            if (person.Language.Length > 0 && !languages.Contains(person.Language))
                Wrong(new($"“{person.Language}” is no language that is spoken here; write one of these: {string.Join(", ", languages)}."));
            var signIn = People.SignInName(person.UserName);
            if (taken.Contains(signIn)) Wrong(new($"Somebody signs in as {signIn} already; choose another name."));
            else if (!first.TryAdd(signIn, person.Line)) Wrong(new($"Line {first[signIn]} has the name {signIn} for signing in, too."));
        }

        // A form sends its lines ended in another way than a file has them.
        return new PeoplePreview(file, problems, ContentHash.Of(text!.ReplaceLineEndings("\n"))) { Remarks = await Namesakes(shop, file) };
    }

    /// <summary>Takes all of them in with one-time passwords, or nobody.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="shop">The shop that the people belong to.</param>
    /// <param name="text">The text of the file.</param>
    /// <param name="previewed">The hash that the preview named, so that what was looked at is what comes in.</param>
    /// <param name="languages">The languages that somebody can be given.</param>
    public async Task<Outcome<IReadOnlyList<AddedPerson>, Refusal>> TakeIn(Actor actor, ShopId shop, string? text, ContentHash previewed, IReadOnlyCollection<string> languages)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var looked = await Preview(actor, shop, text, languages);
        if (!looked.IsOk) return looked.Fault;
        if (looked.Value.Hash != previewed) return new Refusal("The file is another one than you looked at; look at it again.");
        if (FirstFault(looked.Value) is { } wrong) return wrong;
        // Hashing passwords takes long on purpose: it is done before the change begins, so that nobody waits for it.
        var newcomers = looked.Value.People.Select(person => people.Prepare(New(person, shop), users.PasswordHasher)).ToList();
        await using var change = await db.BeginChange();
        // Between the look and now somebody may have taken a name.
        var again = await Preview(actor, shop, text, languages);
        if (!again.IsOk) return again.Fault;
        if (FirstFault(again.Value) is { } taken) return taken;
        foreach (var (person, _) in newcomers)
            if (await people.Create(person, [Roles.Technician]) is { } fault) return fault;
        await change.CommitAsync();
        return newcomers.Select(newcomer => new AddedPerson(newcomer.Person.Id, newcomer.Person.UserName!, newcomer.Password)).ToList();
    }

    // Two people may well have one name. Whoever adds the same person twice, under two names for signing in, should see it.
    private async Task<List<LineProblem>> Namesakes(ShopId shop, IReadOnlyList<PersonInFile> file)
    {
        static string Plain(string name) => name.Trim().ToUpperInvariant();
        var here = (await db.Users.Where(person => person.ShopId == shop && person.NameRemovedAt == null).Select(person => person.DisplayName).ToListAsync())
            .Select(Plain).ToHashSet(StringComparer.Ordinal);
        return [.. file.Where(person => person.Name.Length > 0 && !here.Add(Plain(person.Name)))
            .Select(person => new LineProblem(person.Line, new($"{person.Name} is in the shop already, or in this file. That is right if these are two people.")))];
    }

    private static Refusal? FirstFault(PeoplePreview preview) => preview.Problems.Count == 0 ? null
        : new($"Line {preview.Problems[0].Line}: {preview.Problems[0].Why.Said} Nobody was added.");

    private static NewPerson New(PersonInFile person, ShopId shop) =>
        new(person.Name, person.UserName, shop, [Roles.Technician], person.Language.Length == 0 ? "en" : person.Language);
}

/// <summary>What a file would bring.</summary>
/// <param name="People">The people, in the order of the file.</param>
/// <param name="Problems">Everything that is wrong, by line; while there is something, nobody comes in.</param>
/// <param name="Hash">The hash of the file.</param>
public sealed record PeoplePreview(IReadOnlyList<PersonInFile> People, IReadOnlyList<LineProblem> Problems, ContentHash Hash)
{
    /// <summary>What may be wrong, by line; it keeps nobody out.</summary>
    public IReadOnlyList<LineProblem> Remarks { get; init; } = [];
}

/// <summary>Something wrong on a line of a file.</summary>
/// <param name="Line">The line, from 1.</param>
/// <param name="Why">What is wrong.</param>
public sealed record LineProblem(int Line, Refusal Why)
{
    /// <summary>What is wrong, in English.</summary>
    public string Sentence => Why.Sentence;
}
