using Training.Records.Results;

namespace Training.Web.Features.Shared;

/// <summary>The row in which one chooses whose orders are counted: in practice, on papers, at the vehicle.</summary>
/// <param name="Source">What is chosen.</param>
/// <param name="Path">The address of the page without its choice.</param>
public sealed record SourceChoice(WorkSource Source, string Path);
