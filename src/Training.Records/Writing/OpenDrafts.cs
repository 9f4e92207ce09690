using System.Collections.Concurrent;
using NodaTime;
using Training.Records.Storage;

namespace Training.Records.Writing;

/// <summary>
/// Who has which draft on the screen. One for the process, kept in memory: whoever is looking says so again within
/// seconds. Where it is wrong nothing is lost; the versions guard the texts.
/// </summary>
/// <param name="clock">The time.</param>
internal sealed class OpenDrafts(TimeProvider clock)
{
    private static readonly Duration Remembered = Duration.FromSeconds(45);
    private readonly ConcurrentDictionary<(DraftId Draft, PersonId Person), Instant> seen = new();

    /// <summary>Somebody looks at a draft.</summary>
    public void See(DraftId draft, PersonId person) => seen[(draft, person)] = clock.Instant();

    /// <summary>Who else looks at it now.</summary>
    public IReadOnlyList<PersonId> Others(DraftId draft, PersonId person)
    {
        var since = clock.Instant() - Remembered;
        foreach (var (key, at) in seen)
            if (at < since) seen.TryRemove(key, out _);
        return [.. seen.Keys.Where(key => key.Draft == draft && key.Person != person).Select(key => key.Person)];
    }
}
