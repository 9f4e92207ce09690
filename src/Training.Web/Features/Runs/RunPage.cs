using Training.Records.Observing;

namespace Training.Web.Features.Runs;

/// <summary>A run that has ended, or that somebody else observes.</summary>
/// <param name="View">The run.</param>
/// <param name="IsMine">Whether the reader is its examiner.</param>
/// <param name="MayObserveBeside">Whether the reader may observe it beside its examiner.</param>
public sealed record RunPage(RunView View, bool IsMine, bool MayObserveBeside);
