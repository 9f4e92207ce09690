using NodaTime;
using Training.Records.Certifying;

namespace Training.Records.Staffing;

/// <summary>Somebody with a record, looked at for a job's days.</summary>
internal sealed class JobStaff
{
    public JobStaff(HeldCompetency history, LocalDate firstDay, LocalDate lastDay, LocalDate today)
    {
        History = history;
        Line = history.LineOn(LocalDate.Max(lastDay, today))!;
        // Nothing is known of days to come but what follows from today, and then a record that holds on the last of them
        // holds on all. Days that are past are each asked for: a suspension may have come and gone.
        May = Holds(lastDay) && Holds(firstDay);
        for (var day = firstDay.PlusDays(1); May && day < lastDay && day <= today; day = day.PlusDays(1)) May = Holds(day);
        var standing = history.LineOn(lastDay)?.Standing;
        Lacks = May ? Lacks.Elsewhere
            : history.HasLeftOn(lastDay) ? Lacks.Left
            : standing is { Holds: true } or null ? Lacks.NotAllDays
            // A record that is suspended may run out as well before the job is over; what can be mended is told.
            : standing.State == RecordState.Suspended || history.LineOn(firstDay)?.Standing is { State: RecordState.Suspended } ? Lacks.Suspended
            : standing.State == RecordState.Expired && standing.Until >= firstDay ? Lacks.Ends
            : Lacks.Over;
    }

    public HeldCompetency History { get; }

    /// <summary>The record as it stands on the last day of the job, or today where that is later.</summary>
    public RecordLine Line { get; }

    /// <summary>Whether they may do the work on all the days.</summary>
    public bool May { get; }

    /// <summary>What lacks; meaningful for those who may not, or who stand elsewhere.</summary>
    public Lacks Lacks { get; }

    private bool Holds(LocalDate day) => History.MayOn(day);
}
