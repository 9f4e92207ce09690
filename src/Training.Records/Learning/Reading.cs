using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Content;
using Training.Content.Modules;
using Training.Records.Accounts;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Learning;

/// <summary>Which lessons somebody has read.</summary>
public sealed class Reading
{
    private readonly TrainingDbContext db;
    private readonly Library library;
    private readonly TimeProvider clock;

    /// <summary>Made by the host's services.</summary>
    public Reading(TrainingDbContext db, Library library, TimeProvider clock) => (this.db, this.library, this.clock) = (db, library, clock);

    /// <summary>Notes that the actor has read a module's lesson as it is served now. Saying so again changes nothing.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="module">The module.</param>
    /// <param name="language">The language that it was read in.</param>
    public async Task<Outcome<ModuleReadView, Refusal>> Finish(
        Actor actor, ModuleId module, string language = ContentLibrary.DefaultLanguage)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (library.Current.Content.FindModule(module) is not { } found) return Refused.NotFound;
        var hash = found.In(language).File.Hash;
        await using var change = await db.BeginChange();
        var read = await db.LessonsRead.SingleOrDefaultAsync(
            known => known.PersonId == actor.Person && known.Module == module && known.Lesson == hash);
        if (read is null)
        {
            if (!await db.Users.AnyAsync(person => person.Id == actor.Person)) return Refused.NotFound;
            read = new() { PersonId = actor.Person, Module = module, Lesson = hash, ReadAt = clock.Instant() };
            db.Add(read);
            await db.SaveChangesAsync();
            await change.CommitAsync();
        }

        return View(read);
    }

    /// <summary>What a person has read: one's own, or that of somebody within reach (examiners, owners, trainers, administrators).</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="person">Whose.</param>
    /// <returns>One line a module, the newest reading of it.</returns>
    public async Task<Outcome<IReadOnlyList<ModuleReadView>, Refusal>> Of(Actor actor, PersonId person)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (await db.PersonInSight(actor, person) is null) return Refused.NotFound;
        return await Newest(person);
    }

    internal async Task<List<ModuleReadView>> Newest(PersonId person)
    {
        var read = await db.LessonsRead.AsNoTracking().Where(known => known.PersonId == person).ToListAsync();
        return [.. read.Select(View).GroupBy(view => view.Module)
            .Select(of => of.OrderByDescending(view => view.IsAsServedNow).ThenByDescending(view => view.ReadAt).First())
            .OrderBy(view => view.Module.Value, StringComparer.Ordinal)];
    }

    private ModuleReadView View(LessonRead read)
    {
        var module = library.Current.Content.FindModule(read.Module);
        var isAsServed = module is not null &&
            (module.Lesson.File.Hash == read.Lesson || module.Translations.Any(lesson => lesson.File.Hash == read.Lesson));
        return new(read.Module, read.Lesson, read.ReadAt, isAsServed);
    }
}

/// <summary>That somebody has read a lesson.</summary>
/// <param name="Module">The module.</param>
/// <param name="Lesson">The hash of the text that was read.</param>
/// <param name="ReadAt">When, the first time.</param>
/// <param name="IsAsServedNow">Whether the lesson still reads the same.</param>
public sealed record ModuleReadView(ModuleId Module, ContentHash Lesson, Instant ReadAt, bool IsAsServedNow);
