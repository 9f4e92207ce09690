using NodaTime;
using Training.Content;
using Training.Content.Modules;
using Training.Records.Accounts;
using Training.Sequencing;

namespace Training.Records.Learning;

/// <summary>Which lessons somebody has read.</summary>
public sealed class Reading
{
    /// <summary>Notes that the actor has read a module's lesson as it is served now. Saying so again changes nothing.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="module">The module.</param>
    /// <param name="language">The language that it was read in.</param>
    public Task<Outcome<ModuleReadView, Refusal>> Finish(Actor actor, ModuleId module, string language = ContentLibrary.DefaultLanguage) =>
        throw new NotImplementedException();

    /// <summary>What a person has read: one's own, or that of somebody within reach (examiners, owners, trainers, administrators).</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="person">Whose.</param>
    /// <returns>One line a module, the newest reading of it.</returns>
    public Task<Outcome<IReadOnlyList<ModuleReadView>, Refusal>> Of(Actor actor, PersonId person) =>
        throw new NotImplementedException();
}

/// <summary>That somebody has read a lesson.</summary>
/// <param name="Module">The module.</param>
/// <param name="Lesson">The hash of the text that was read.</param>
/// <param name="ReadAt">When, the first time.</param>
/// <param name="IsAsServedNow">Whether the lesson still reads the same.</param>
public sealed record ModuleReadView(ModuleId Module, ContentHash Lesson, Instant ReadAt, bool IsAsServedNow);
