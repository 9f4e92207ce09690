using Training.Content;
using Training.Records.Results;

namespace Training.Web.Features.Agreement;

/// <summary>How far examiners agree.</summary>
/// <param name="View">The agreement.</param>
/// <param name="Content">What is served, for the words of procedures.</param>
public sealed record AgreementPage(AgreementView View, ContentLibrary Content)
{
    /// <summary>How many disagreements are listed at most.</summary>
    public const int MostDisputed = 20;
}
