using Training.Records.Results;

namespace Training.Web.Features.Shared;

/// <summary>A share in words, with its picture.</summary>
/// <param name="Share">How many of how many; null where the people are too few to be shown.</param>
/// <param name="Id">An id that no other picture of the page has.</param>
public sealed record ShareBar(Share? Share, string Id);
