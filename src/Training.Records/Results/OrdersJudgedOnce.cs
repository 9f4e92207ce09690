using System.Collections.Concurrent;
using NodaTime;
using Training.Content;
using Training.Records.Asking;

namespace Training.Records.Results;

/// <summary>
/// Judges each order that was given to a question once, however many gave it: what is right or wrong in it hangs on the
/// question and the order alone. May be asked from several places at once.
/// </summary>
internal sealed class OrdersJudgedOnce(Tallies tallies)
{
    // An order with all that could be got wrong in it takes some 6 KB: these are some 100 MB at most.
    private const int MostKept = 16_000;

    private readonly ConcurrentDictionary<(AskedOrder Question, string? Json), GradedWork> judged = [];
    private int kept;

    /// <summary>An order that somebody gave.</summary>
    public KeptOrder Order(WorkSource source, AskedOrder question, string? json, Worker worker, Instant at, WorkPlace place) =>
        new(question.Written!.Id, () => Judge(source, question, json, worker, at, place));

    private async ValueTask<GradedWork?> Judge(WorkSource source, AskedOrder question, string? json, Worker worker, Instant at, WorkPlace place)
    {
        if (!judged.TryGetValue((question, json), out var work))
        {
            work = await tallies.WorkOf(worker, JudgedWork.Of(source, question, question.Grade(json, ContentLibrary.DefaultLanguage), place), at);
            Keep(question, json, work);
        }

        return work.IsEmpty ? null : work with { Source = source, Person = worker.Person, Shop = worker.Shop, Language = worker.Language, At = at, Place = place };
    }

    private void Keep(AskedOrder question, string? json, GradedWork work)
    {
        // Its name is worked out before others have it, so that they do not do it again.
        _ = work.OrderCode;
        if (Interlocked.Increment(ref kept) > MostKept)
        {
            judged.Clear();
            Interlocked.Exchange(ref kept, 0);
        }

        judged[(question, json)] = work;
    }
}
