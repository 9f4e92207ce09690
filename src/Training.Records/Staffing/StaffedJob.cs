using NodaTime;
using Training.Content.Competencies;
using Training.Records.Certifying;
using Training.Sequencing;

namespace Training.Records.Staffing;

/// <summary>A job with everybody of its shop who has a record for what it needs.</summary>
/// <param name="Job">The job.</param>
/// <param name="Today">Today in the shop.</param>
/// <param name="Titles">What each needed competency is called.</param>
/// <param name="Staff">Who has a record, by competency.</param>
internal sealed record StaffedJob(Job Job, LocalDate Today, IReadOnlyDictionary<CompetencyId, string> Titles, ILookup<CompetencyId, JobStaff> Staff)
{
    private const int MostNearest = 3;

    /// <summary>Why people cannot stand in places of the job; null where they can.</summary>
    /// <param name="places">Who shall stand for which competency.</param>
    public Refusal? WhyNot(IReadOnlyCollection<(CompetencyId Competency, PersonId Person)> places)
    {
        foreach (var of in places.GroupBy(place => place.Competency))
        {
            if (Job.Needs.Find(need => need.Competency == of.Key) is not { } need) return Refused.NotFound;
            if (of.Count() > need.People) return new($"{Titles[of.Key]}: choose at most {need.People}.");
            foreach (var (_, person) in of)
            {
                if (Staff[of.Key].FirstOrDefault(one => one.Line.Person == person) is not { } staff) return Refused.NotFound;
                if (!staff.May) return WhyNot(staff, Titles[of.Key]);
            }
        }

        return Job.SeparatePeople && places.DistinctBy(place => place.Person).Count() < places.Count
            ? new("This job wants a person of its own in each place, and somebody stands in two.")
            : null;
    }

    /// <summary>The job as its owner sees it.</summary>
    /// <param name="confirmed">When and by whom the crew was confirmed; null where it was not yet.</param>
    public JobView View(CrewConfirmed? confirmed)
    {
        var needs = Job.Needs.OrderBy(need => Titles[need.Competency], StringComparer.Ordinal).ToList();
        // Whoever holds longest is preferred: they are least likely to need anything before the job is over.
        var proposed = CrewProposal.Propose(
            [.. needs.Select(need => new CrewNeed(need.People, [.. Staff[need.Competency].Where(one => one.May).OrderByDescending(one => one.Line.Standing!.Until)
                .ThenBy(one => one.Line.Name, StringComparer.Ordinal).Select(one => one.Line.Person)]))],
            Job.SeparatePeople);
        return new(
            JobBoard.Line(Job), Job.Work, Job.SeparatePeople, Today,
            [.. needs.Select((need, index) => NeedView(need, proposed[index], JobBoard.Newest(Job)))], confirmed);
    }

    private static Refusal WhyNot(JobStaff staff, string title)
    {
        var (name, until) = (staff.Line.Name, staff.Line.Standing?.Until);
        return staff.Lacks switch
        {
            Lacks.Left => new($"Somebody whom you ticked has left the trade; choose another: {title}."),
            Lacks.Suspended => new($"{name} may not do this on all the days, the record is suspended: {title}."),
            Lacks.Ends => new($"{name} may not do this on all the days, the record ends on {until:uuuu-MM-dd}: {title}."),
            Lacks.Over when staff.Line.Standing is { State: RecordState.Withdrawn } =>
                new($"{name} may not do this on all the days, the record was withdrawn: {title}."),
            Lacks.Over => new($"{name} may not do this on all the days, the record ended on {until:uuuu-MM-dd}: {title}."),
            _ => new($"{name} may not do this on all the days: {title}."),
        };
    }

    private JobNeedView NeedView(JobNeed need, IReadOnlyList<PersonId> proposed, Crew? crew)
    {
        bool IsConfirmed(JobStaff one) => crew?.Places.Any(place => place.Competency == need.Competency && place.PersonId == one.Line.Person) ?? false;
        var staff = Staff[need.Competency].ToList();
        var candidates = staff.Where(one => one.May || IsConfirmed(one))
            .Select(one => new CrewCandidate(one.Line, one.May, proposed.Contains(one.Line.Person), IsConfirmed(one)))
            .OrderBy(candidate => candidate.Record.Name, StringComparer.Ordinal).ToList();
        var nearest = proposed.Count >= need.People
            ? []
            : staff.Where(one => one.Lacks != Lacks.Left && !proposed.Contains(one.Line.Person)).OrderBy(one => one.Lacks)
                .ThenByDescending(one => one.Line.Standing?.Until).ThenBy(one => one.Line.Name, StringComparer.Ordinal)
                .Take(MostNearest).Select(one => new NearMiss(one.Line, one.Lacks)).ToList();
        return new(need.Competency, Titles[need.Competency], need.People, candidates, nearest);
    }
}
