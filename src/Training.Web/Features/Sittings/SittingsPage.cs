using Training.Content.Competencies;
using Training.Records.Examining;
using Training.Records.Overviews;

namespace Training.Web.Features.Sittings;

/// <summary>The sittings and the form that opens one.</summary>
/// <param name="Sittings">Open ones first, then the newest.</param>
/// <param name="Runs">What waits at vehicles.</param>
/// <param name="Competencies">What can be examined; empty for those who open no sitting.</param>
/// <param name="Form">What was typed.</param>
public sealed record SittingsPage(
    IReadOnlyList<SittingLine> Sittings, RunCounts Runs, IReadOnlyList<Competency> Competencies, OpenSittingForm Form)
{
    private const int MostShown = 5;

    /// <summary>The sittings that are open.</summary>
    public IReadOnlyList<SittingLine> Open { get; } = [.. Sittings.Where(sitting => sitting.ClosedAt is null)];

    /// <summary>The newest of those that are closed.</summary>
    public IReadOnlyList<SittingLine> Closed { get; } = [.. Sittings.Where(sitting => sitting.ClosedAt is not null).Take(MostShown)];

    /// <summary>Those that were closed before.</summary>
    public IReadOnlyList<SittingLine> Earlier { get; } = [.. Sittings.Where(sitting => sitting.ClosedAt is not null).Skip(MostShown)];
}

/// <summary>What is typed to open a sitting.</summary>
public sealed class OpenSittingForm
{
    /// <summary>The competency's id.</summary>
    public string? Competency { get; init; }

    /// <summary>Where, in words.</summary>
    public string? Place { get; init; }
}

/// <summary>One sitting.</summary>
/// <param name="View">The sitting with its papers.</param>
/// <param name="Candidates">Who could be admitted; null for those who admit nobody.</param>
/// <param name="MayClose">Whether the reader may close it.</param>
public sealed record SittingPage(SittingView View, IReadOnlyList<CandidateView>? Candidates, bool MayClose);
