using Microsoft.EntityFrameworkCore;
using Training.Records.Accounts;
using Training.Records.Observing;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Overviews;

/// <summary>What waits for an examiner at vehicles, in three numbers: for the page that they come to first.</summary>
public sealed class RunsAhead
{
    private readonly TrainingDbContext db;
    private readonly Runs runs;

    internal RunsAhead(TrainingDbContext db, Runs runs) => (this.db, this.runs) = (db, runs);

    /// <summary>The runs within reach that are not signed, and who waits to be observed (examiners; administrators, who observe nobody).</summary>
    /// <param name="actor">Who asks.</param>
    public async Task<Outcome<RunCounts, Refusal>> Of(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Examiner) && !actor.Is(Roles.Administrator)) return Refused.NotAllowed;
        var open = db.Runs.Where(run => run.SignedAt == null && run.AbandonedAt == null);
        if (actor.Shop is { } shop) open = open.Where(run => run.ShopId == shop);
        var toDo = await runs.ToDo(actor);
        return new RunCounts(
            await open.CountAsync(run => run.EndedAt == null),
            await open.CountAsync(run => run.EndedAt != null),
            toDo.IsOk ? toDo.Value.Where(line => line.OpenRun is null).Select(line => line.Technician).Distinct().Count() : 0);
    }
}

/// <summary>What waits for an examiner at vehicles.</summary>
/// <param name="UnderWay">Runs under way.</param>
/// <param name="NotSigned">Runs whose work is done, and which nobody has signed.</param>
/// <param name="Waiting">People who have still to be observed in a job of which no run is open.</param>
public sealed record RunCounts(int UnderWay, int NotSigned, int Waiting)
{
    /// <summary>Whether there is nothing to be done.</summary>
    public bool IsNothing => this is { UnderWay: 0, NotSigned: 0, Waiting: 0 };
}
