using Training.Proofs.Signing;
using Training.Proofs.StatusLists;

namespace Training.Proofs.Credentials;

/// <summary>
/// What a competency record says to the world, as plain data. <see cref="AchievementCredential"/> writes it as a
/// credential and reads it back.
/// </summary>
public sealed record CompetencyCredential
{
    /// <summary>The credential's own identifier: a URL, or <c>urn:uuid:…</c>. It is the record's identifier too.</summary>
    public required Uri Id { get; init; }

    /// <summary>The line under which a wallet shows the credential.</summary>
    public required string Title { get; init; }

    /// <summary>Who issues it.</summary>
    public required IssuerProfile Issuer { get; init; }

    /// <summary>Whose competency it is.</summary>
    public required Recipient Recipient { get; init; }

    /// <summary>The shop for which the person works, or null.</summary>
    public string? Shop { get; init; }

    /// <summary>What the person can do.</summary>
    public required CompetencyDefinition Competency { get; init; }

    /// <summary>From when on it holds.</summary>
    public required DateTimeOffset ValidFrom { get; init; }

    /// <summary>The last instant at which it holds; null where it has no end.</summary>
    public DateTimeOffset? ValidUntil { get; init; }

    /// <summary>Where its status is looked up: one entry for each purpose.</summary>
    public IReadOnlyList<StatusListEntry> Status { get; init; } = [];

    /// <summary>What was judged, by its hashes.</summary>
    public IReadOnlyList<JudgedMatter> Judged { get; init; } = [];

    /// <summary>Where the record stands in the log, or null.</summary>
    public LogInclusion? Log { get; init; }
}

/// <summary>Who issues credentials.</summary>
/// <param name="Id">The issuer's identifier, under which its keys are found.</param>
/// <param name="Name">The issuer's name.</param>
/// <param name="Url">The issuer's page, or null.</param>
public sealed record IssuerProfile(DidWeb Id, string Name, Uri? Url = null);

/// <summary>What a person can do.</summary>
/// <param name="Id">The address of the competency.</param>
/// <param name="Title">Its title.</param>
/// <param name="Description">What it is, in a sentence or two.</param>
/// <param name="Criteria">What must be shown to earn it; Markdown.</param>
/// <param name="CriteriaPage">A page that says it at length, or null.</param>
/// <param name="Revision">Which revision of the competency, or null.</param>
public sealed record CompetencyDefinition(
    Uri Id, string Title, string Description, string Criteria, Uri? CriteriaPage = null, string? Revision = null);

/// <summary>Something that was judged, such as the procedure's revision, a paper or an observed run.</summary>
/// <param name="Genre">What kind of thing it is, in one or two words.</param>
/// <param name="Name">Its name.</param>
/// <param name="Digest">The SHA-256 of its text, so that it can be shown later and recognised.</param>
public sealed record JudgedMatter(string Genre, string Name, Sha256Digest Digest);
