using Microsoft.Extensions.Caching.Memory;
using Training.Records;
using Training.Sequencing;

namespace Training.Web.Startup;

/// <summary>
/// Answers that show something once, such as passwords: a form that is sent twice, by a hurried tap or because the first
/// answer did not arrive, is answered alike. Kept in memory, for some minutes, for the same person, form and words.
/// </summary>
public sealed class SameAnswers : IDisposable
{
    private const int MostAnswers = 100;
    private static readonly TimeSpan Kept = TimeSpan.FromMinutes(10);
    private readonly MemoryCache answers = new(new MemoryCacheOptions { SizeLimit = MostAnswers });
    private readonly Lock opening = new();

    /// <summary>Does what a form asks, or gives the answer that it was given before. A refusal is not kept.</summary>
    /// <param name="person">Who sent it.</param>
    /// <param name="key">The key of the form; null where it has none, and then it is done.</param>
    /// <param name="said">What was typed: with other words it is another form.</param>
    /// <param name="act">What it asks.</param>
    public async Task<Outcome<T, Refusal>> Of<T>(PersonId person, Guid? key, string said, Func<Task<Outcome<T, Refusal>>> act)
    {
        ArgumentNullException.ThrowIfNull(act);
        if (key is not { } form) return await act();
        var place = (typeof(T), person, form, said);
        Lazy<Task<Outcome<T, Refusal>>>? answer;
        lock (opening)
        {
            // The first may still be under way when the second comes: both wait for one act.
            if (!answers.TryGetValue(place, out answer))
            {
                answer = new(act);
                answers.Set(place, answer, new MemoryCacheEntryOptions { Size = 1, AbsoluteExpirationRelativeToNow = Kept });
            }
        }

        var isKept = false;
        try
        {
            var outcome = await answer!.Value;
            isKept = outcome.IsOk;
            return outcome;
        }
        finally
        {
            if (!isKept) answers.Remove(place);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => answers.Dispose();
}
