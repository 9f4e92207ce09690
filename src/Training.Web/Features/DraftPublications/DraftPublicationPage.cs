using Training.Content;
using Training.Records.Writing;
using Training.Web.Features.Shared;

namespace Training.Web.Features.DraftPublications;

/// <summary>The last look before a draft is published.</summary>
/// <param name="Draft">The draft.</param>
/// <param name="Changes">What the draft changes, and then each other draft that can be published with it.</param>
/// <param name="Missing">What would be wrong if the draft were published alone.</param>
public sealed record DraftPublicationPage(DraftView Draft, IReadOnlyList<DraftChange> Changes, IReadOnlyList<ContentProblem> Missing)
{
    /// <summary>Whether it has no error with the other drafts on the desk.</summary>
    public bool IsFitTogether { get; init; }

    /// <summary>The other drafts that the actor may publish with it.</summary>
    public IEnumerable<DraftChange> Joinable => Changes.Skip(1);
}

/// <summary>A draft with what it changes.</summary>
/// <param name="Draft">The draft.</param>
/// <param name="Comparison">What it says that is not served now.</param>
public sealed record DraftChange(DraftView Draft, ComparisonPage Comparison)
{
    /// <summary>The draft with the version that is looked at, as the form carries it.</summary>
    public string Named => $"{Draft.Line.Id}/{Draft.Line.Version}";
}
