using System.ComponentModel;
using Training.Records.Certifying;
using Training.Records.Examining;
using Training.Records.Overviews;

namespace Training.Web.Features.Next;

/// <summary>What a technician does next.</summary>
/// <param name="Paths">The way to each competency.</param>
/// <param name="Zone">The time zone that times are told in.</param>
public sealed record NextPage(IReadOnlyList<CompetencyPath> Paths, string Zone)
{
    /// <summary>The records that are suspended.</summary>
    public IReadOnlyList<SuspendedRecord> Suspended { get; init; } = [];

    /// <summary>Whether the reader owns the shop as well, whose coverage has a page of its own.</summary>
    public bool IsOwner { get; init; }

    /// <summary>The way with the one thing to do next: a paper whose time runs before all else, then one that may be begun.</summary>
    public CompetencyPath? First =>
        Paths.FirstOrDefault(path => PaperOf(path) == PaperState.Open)
        ?? Paths.FirstOrDefault(path => PaperOf(path) == PaperState.Admitted)
        ?? Paths.FirstOrDefault(path => path.Next is not null);

    /// <summary>The one thing to do next; null where nothing is to be done.</summary>
    public PathStep? Act => First is { } path
        ? path.Steps.OfType<PathStep.SitPaper>().FirstOrDefault(step => step.State is PaperState.Open or PaperState.Admitted)
            ?? path.Next
        : null;

    /// <summary>The way to a competency in its four parts: read, practise, paper, at the vehicle. A part without steps is left out.</summary>
    /// <param name="path">The way.</param>
    public static IReadOnlyList<WayPart> PartsOf(CompetencyPath path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return [.. new[]
        {
            new WayPart("Read", [.. path.Steps.OfType<PathStep.Read>()]),
            new WayPart("Practise", [.. path.Steps.OfType<PathStep.Practise>()]),
            new WayPart("Paper", [.. path.Steps.OfType<PathStep.SitPaper>()]),
            new WayPart("At the vehicle", [.. path.Steps.OfType<PathStep.BeObserved>()]),
        }.Where(part => part.Steps.Count > 0)];
    }

    private static PaperState? PaperOf(CompetencyPath path) =>
        path.Steps.OfType<PathStep.SitPaper>().Select(step => step.State).FirstOrDefault();
}

/// <summary>A record that is suspended, and the act that suspended it.</summary>
/// <param name="Record">The record.</param>
/// <param name="Act">When it was suspended, by whom and why.</param>
public sealed record SuspendedRecord(RecordLine Record, RecordEventView Act);

/// <summary>A part of the way to a competency.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Steps">Its steps, at least one.</param>
public sealed record WayPart([Localizable(true)] string Name, IReadOnlyList<PathStep> Steps)
{
    /// <summary>How many of its steps are done.</summary>
    public int Done => Steps.Count(step => step.IsDone);

    /// <summary>Whether all of it is done.</summary>
    public bool IsDone => Done == Steps.Count;
}
