using System.Globalization;
using Training.Content.Competencies;
using Training.Records;
using Training.Records.Staffing;
using Training.Sequencing;
using Training.Sequencing.Procedures;
using Training.Web.Features.Shared;

namespace Training.Web.Features.Jobs;

/// <summary>The jobs and the form that plans one.</summary>
/// <param name="Jobs">The jobs, the last to end first.</param>
/// <param name="Kinds">The kinds of chassis.</param>
/// <param name="Competencies">What a job can need.</param>
/// <param name="Form">What was typed.</param>
public sealed record JobsPage(
    IReadOnlyList<JobLine> Jobs, IReadOnlyList<VariantId> Kinds, IReadOnlyList<(CompetencyId Competency, string Title)> Competencies, PlanJobForm Form);

/// <summary>One job.</summary>
/// <param name="View">The job, its places and who may fill them.</param>
public sealed record JobPage(JobView View)
{
    /// <summary>How it stood on the day that was asked for; null where none was.</summary>
    public JobDay? Day { get; init; }

    /// <summary>What is wrong with the day that was asked for, if anything.</summary>
    public string? WrongDay { get; init; }

    /// <summary>Whether somebody of the confirmed crew may no longer do the work on all the days.</summary>
    public bool HasLost => View.Job.CalledOffAt is null && View.Needs.Any(need => need.Candidates.Any(candidate => candidate is { IsConfirmed: true, May: false }));
}

/// <summary>What is typed to plan a job.</summary>
public sealed class PlanJobForm
{
    /// <summary>The form's own key, so that a form that is sent twice plans one job.</summary>
    public string? Key { get; init; }

    /// <summary>For whom.</summary>
    public string? Customer { get; init; }

    /// <summary>Which vehicle.</summary>
    public string? Chassis { get; init; }

    /// <summary>Which kind of chassis.</summary>
    public string? Kind { get; init; }

    /// <summary>The first day, as <c>2026-11-25</c>.</summary>
    public string? FirstDay { get; init; }

    /// <summary>The last day, as <c>2026-11-25</c>.</summary>
    public string? LastDay { get; init; }

    /// <summary>What is done.</summary>
    public string? Work { get; init; }

    /// <summary>Whether each place wants a person of its own.</summary>
    public bool SeparatePeople { get; init; }

    /// <summary>The competencies, in the page's order.</summary>
    public IReadOnlyList<string?>? Competencies { get; init; }

    /// <summary>How many people for each of them, as it was typed.</summary>
    public IReadOnlyList<string?>? People { get; init; }

    /// <summary>What was typed for a competency.</summary>
    /// <param name="competency">The competency.</param>
    public string? TypedFor(CompetencyId competency)
    {
        var place = Competencies?.ToList().IndexOf(competency.Value) ?? -1;
        return place >= 0 && place < People?.Count ? People[place] : null;
    }

    /// <summary>The job, or what is wrong with what was typed.</summary>
    public Outcome<NewJob, Refusal> Read()
    {
        if (!DayAsked.TryRead(FirstDay, out var first) || first is not { } firstDay) return new Refusal("Write the first day as 2026-11-25.") { About = nameof(FirstDay) };
        if (!DayAsked.TryRead(LastDay, out var last) || last is not { } lastDay) return new Refusal("Write the last day as 2026-11-25.") { About = nameof(LastDay) };
        var needs = new Dictionary<CompetencyId, int>();
        foreach (var competency in (Competencies ?? []).Select(value => new CompetencyId(value ?? "")))
        {
            var typed = TypedFor(competency)?.Trim();
            if (string.IsNullOrEmpty(typed)) continue;
            if (!int.TryParse(typed, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var people))
                return new Refusal("Write whole numbers, such as 2; 0 where you need nobody.") { About = $"people-{competency}" };
            needs[competency] = people;
        }

        return new NewJob(Customer ?? "", Chassis ?? "", new VariantId(Kind ?? ""), firstDay, lastDay, Work ?? "", needs, SeparatePeople)
        {
            Key = JobId.TryParse(Key, null, out var key) ? key : null,
        };
    }
}
