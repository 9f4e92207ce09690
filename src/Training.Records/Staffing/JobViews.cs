using NodaTime;
using Training.Content.Competencies;
using Training.Records.Certifying;
using Training.Sequencing.Procedures;

namespace Training.Records.Staffing;

/// <summary>A job to be planned.</summary>
/// <param name="Customer">For whom.</param>
/// <param name="Chassis">Which vehicle: the shop's or the customer's own sign for it.</param>
/// <param name="Kind">Which kind of chassis, one that the procedures know.</param>
/// <param name="FirstDay">The first day.</param>
/// <param name="LastDay">The last day, the same or later.</param>
/// <param name="Work">What is done.</param>
/// <param name="Needs">How many people with each competency.</param>
/// <param name="SeparatePeople">Whether each place wants a person of its own; otherwise one may stand for several competencies.</param>
public sealed record NewJob(
    string Customer,
    string Chassis,
    VariantId Kind,
    LocalDate FirstDay,
    LocalDate LastDay,
    string Work,
    IReadOnlyDictionary<CompetencyId, int> Needs,
    bool SeparatePeople)
{
    /// <summary>Under which id the form wants it kept, so that one that is sent twice makes one job; null for any.</summary>
    public JobId? Key { get; init; }
}

/// <summary>A job in a list.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Customer">For whom.</param>
/// <param name="Chassis">Which vehicle.</param>
/// <param name="Kind">Which kind of chassis.</param>
/// <param name="FirstDay">The first day.</param>
/// <param name="LastDay">The last day.</param>
/// <param name="Places">How many places it has.</param>
/// <param name="Filled">How many of them the confirmed crew fills.</param>
public sealed record JobLine(
    JobId Id, string Customer, string Chassis, VariantId Kind, LocalDate FirstDay, LocalDate LastDay, int Places, int Filled)
{
    /// <summary>How many of the confirmed crew's places are held by somebody who may no longer do the work on all the days; not counted for a job that is over or called off.</summary>
    public int Lost { get; init; }

    /// <summary>When it was called off; null while it goes on.</summary>
    public Instant? CalledOffAt { get; init; }
}

/// <summary>A job with its crew.</summary>
/// <param name="Job">The job.</param>
/// <param name="Work">What is done.</param>
/// <param name="SeparatePeople">Whether each place wants a person of its own.</param>
/// <param name="Today">Today in the shop.</param>
/// <param name="Needs">What it needs, and who may do it.</param>
/// <param name="Confirmed">When and by whom the crew was confirmed; null where it was not yet.</param>
public sealed record JobView(
    JobLine Job, string Work, bool SeparatePeople, LocalDate Today, IReadOnlyList<JobNeedView> Needs, CrewConfirmed? Confirmed)
{
    /// <summary>Who called it off; null while it goes on.</summary>
    public string? CalledOffBy { get; init; }
}

/// <summary>When a crew was confirmed.</summary>
/// <param name="At">When.</param>
/// <param name="By">By whom.</param>
public sealed record CrewConfirmed(Instant At, string By);

/// <summary>What a job needs for one competency.</summary>
/// <param name="Competency">The competency.</param>
/// <param name="Title">What it is called.</param>
/// <param name="People">How many people.</param>
/// <param name="Candidates">Who may do it on all the days, and who of the confirmed crew no longer may.</param>
/// <param name="Nearest">Where the proposal leaves a place open: who comes nearest, at most three.</param>
public sealed record JobNeedView(
    CompetencyId Competency, string Title, int People, IReadOnlyList<CrewCandidate> Candidates, IReadOnlyList<NearMiss> Nearest)
{
    /// <summary>How many places nobody is proposed for.</summary>
    public int Open => Math.Max(0, People - Candidates.Count(candidate => candidate.IsProposed));
}

/// <summary>Somebody for a place.</summary>
/// <param name="Record">Their record as it stands on the job's last day.</param>
/// <param name="May">Whether they may do it on all the days.</param>
/// <param name="IsProposed">Whether they are proposed.</param>
/// <param name="IsConfirmed">Whether they are in the confirmed crew.</param>
public sealed record CrewCandidate(RecordLine Record, bool May, bool IsProposed, bool IsConfirmed);

/// <summary>Why somebody with a record cannot fill a place.</summary>
public enum Lacks
{
    /// <summary>Their record ends before the job does.</summary>
    Ends,

    /// <summary>Their record is suspended.</summary>
    Suspended,

    /// <summary>Their record has expired before the job begins, or was withdrawn.</summary>
    Over,

    /// <summary>Their record did not hold on one of the days that are past.</summary>
    NotAllDays,

    /// <summary>They may, but stand in another place of this job.</summary>
    Elsewhere,

    /// <summary>They have left the trade, and their name was removed.</summary>
    Left,
}

/// <summary>Somebody who comes near to filling a place.</summary>
/// <param name="Record">Their record as it stands on the job's last day.</param>
/// <param name="Why">What lacks.</param>
public sealed record NearMiss(RecordLine Record, Lacks Why);

/// <summary>Who was on a job and competent on one day, by what had happened to the records by then.</summary>
/// <param name="Day">The day.</param>
/// <param name="IsJobDay">Whether the job went on that day.</param>
/// <param name="Confirmed">The crew that was confirmed by then; the first where none was yet; null where none ever was.</param>
/// <param name="WasConfirmed">Whether that crew was confirmed by the end of that day.</param>
/// <param name="Crew">The places of that crew.</param>
/// <param name="Others">Who else in the shop was competent that day, by the job's competencies.</param>
public sealed record JobDay(
    LocalDate Day, bool IsJobDay, CrewConfirmed? Confirmed, bool WasConfirmed, IReadOnlyList<JobDayLine> Crew, IReadOnlyList<RecordLine> Others);

/// <summary>A place of a crew on one day.</summary>
/// <param name="Name">The person.</param>
/// <param name="Title">What they stand for.</param>
/// <param name="Standing">How their record stood; null where they had none yet.</param>
/// <param name="Left">Whether they had left the trade by then, so that their name was removed.</param>
public sealed record JobDayLine(string Name, string Title, RecordStanding? Standing, bool Left)
{
    /// <summary>Whether they might do the work.</summary>
    public bool May => !Left && Standing is { Holds: true };
}
