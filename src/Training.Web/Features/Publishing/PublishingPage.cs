using Training.Records.Publishing;
using Training.Records.Results;

namespace Training.Web.Features.Publishing;

/// <summary>What is broken, and what people get wrong: a trainer's first page.</summary>
/// <param name="State">What is served and what is wrong with the folder.</param>
/// <param name="Worst">What people get wrong most surely in practice.</param>
public sealed record PublishingPage(PublishingState State, IReadOnlyList<ProcedureResultLine> Worst);
