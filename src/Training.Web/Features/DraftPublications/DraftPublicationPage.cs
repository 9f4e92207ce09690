using Training.Content;
using Training.Records.Writing;
using Training.Web.Features.Shared;

namespace Training.Web.Features.DraftPublications;

/// <summary>The last look before a draft is published.</summary>
/// <param name="Draft">The draft.</param>
/// <param name="Others">The other drafts on the desk, which can be published with it.</param>
/// <param name="Missing">What would be wrong if it were published alone.</param>
public sealed record DraftPublicationPage(DraftView Draft, IReadOnlyList<DraftView> Others, IReadOnlyList<ContentProblem> Missing)
{
    /// <summary>What differs from what is served, in words; null where nothing is served at its path.</summary>
    public ComparisonPage? Comparison { get; init; }

    /// <summary>Whether the draft itself has an error, whatever is published with it.</summary>
    public bool HasOwnFault => Missing.Count > 0 && Others.Count == 0;

    /// <summary>The other drafts that the actor may publish, too.</summary>
    public IEnumerable<DraftView> Joinable => Others.Where(other => other.Way is ApprovalWay.Approve or ApprovalWay.Alone);

    /// <summary>A draft with the version that is looked at, as the form carries it.</summary>
    /// <param name="draft">The draft.</param>
    public static string Named(DraftView draft)
    {
        ArgumentNullException.ThrowIfNull(draft);
        return $"{draft.Line.Id}/{draft.Line.Version}";
    }
}
