using Training.Records.Results;

namespace Training.Web.Features.Shared;

/// <summary>Parts of the people with how many of each got something wrong.</summary>
/// <param name="Parts">The parts.</param>
/// <param name="Id">Begins the ids of their pictures.</param>
public sealed record PartsView(IReadOnlyList<Part<GroupChoice>> Parts, string Id);
