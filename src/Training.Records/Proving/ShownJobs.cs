using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Records.Certifying;
using Training.Records.Staffing;
using Training.Records.Storage;

namespace Training.Records.Proving;

/// <summary>The job that a proof speaks of, and how its people stood on each of its days.</summary>
/// <param name="Customer">For whom.</param>
/// <param name="Chassis">Which vehicle.</param>
/// <param name="FirstDay">The first day.</param>
/// <param name="LastDay">The last day.</param>
/// <param name="Today">Today in the shop; of later days it says what follows if nothing happens.</param>
/// <param name="People">The people of the proof.</param>
public sealed record ShownJob(
    string Customer, string Chassis, LocalDate FirstDay, LocalDate LastDay, LocalDate Today, IReadOnlyList<ShownJobPerson> People)
{
    /// <summary>Whether everybody was competent on every day.</summary>
    public bool AllHeld => People.Count > 0 && People.All(person => person.Held);
}

/// <summary>Somebody on a job.</summary>
/// <param name="Record">The record by which they are in the proof.</param>
/// <param name="Name">The person.</param>
/// <param name="CompetencyTitle">What they stand for.</param>
/// <param name="Days">How they stood, from the first day to the last, without a gap.</param>
public sealed record ShownJobPerson(RecordId Record, string Name, string CompetencyTitle, IReadOnlyList<ShownJobSpan> Days)
{
    /// <summary>Whether they were competent on every day.</summary>
    public bool Held => Days.All(span => span.Holds);
}

/// <summary>Days on which somebody stood alike.</summary>
/// <param name="From">The first.</param>
/// <param name="To">The last.</param>
/// <param name="Holds">Whether they might do the work.</param>
/// <param name="State">How the record stood on the first of them; null where there was none yet.</param>
public sealed record ShownJobSpan(LocalDate From, LocalDate To, bool Holds, RecordState? State);

/// <summary>Works out how the people of a proof stood on the days of its job, each day by what had happened by its end.</summary>
internal sealed class ShownJobs(TrainingDbContext db, RecordLines lines)
{
    /// <summary>The job of a proof; null where it speaks of none.</summary>
    /// <param name="proof">The proof.</param>
    /// <param name="today">Today in the shop.</param>
    /// <param name="chosen">The records of the proof.</param>
    /// <param name="doubtful">Those of them that are not to be believed: they hold on no day.</param>
    public async Task<ShownJob?> Of(ProofId proof, LocalDate today, IReadOnlyList<RecordLine> chosen, IReadOnlySet<RecordId> doubtful)
    {
        if (await JobOf(proof) is not { } job) return null;
        var people = chosen.Select(line => line.Person).Distinct().ToList();
        var held = (await lines.Held(db.Users.AsNoTracking().Where(person => people.Contains(person.Id))))
            .ToDictionary(history => (history.Person, history.Competency));
        return new(job.Customer, job.Chassis, job.FirstDay, job.LastDay, today, [.. chosen.Select(line => new ShownJobPerson(
            line.Id, line.Name, line.CompetencyTitle,
            // A record that is not of the chain that counts was moved to another person behind our back.
            Spans(held[(line.Person, line.Competency)] is var history && history.Records.Any(record => record.Id == line.Id) ? history : null, job.FirstDay, job.LastDay, doubtful.Contains(line.Id))))]);
    }

    /// <summary>The job of a proof; null where it speaks of none.</summary>
    public async Task<Job?> JobOf(ProofId proof) => await (
        from spoken in db.Set<JobProof>().AsNoTracking()
        where spoken.ProofId == proof
        join job in db.Set<Job>() on spoken.JobId equals job.Id
        select job).SingleOrDefaultAsync();

    private static List<ShownJobSpan> Spans(HeldCompetency? history, LocalDate first, LocalDate last, bool isDoubtful)
    {
        var spans = new List<ShownJobSpan>();
        for (var day = first; day <= last; day = day.PlusDays(1))
        {
            var standing = history?.LineOn(day)?.Standing;
            var holds = standing is { Holds: true } && !isDoubtful;
            // That renewal is open makes no difference to the work.
            if (spans is [.., var before] && before.Holds == holds && (holds || before.State == standing?.State)) spans[^1] = before with { To = day };
            else spans.Add(new(day, day, holds, standing?.State));
        }

        return spans;
    }
}
