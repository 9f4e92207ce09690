using Training.Proofs.Log;
using Training.Proofs.Signing;

namespace Training.Proofs.Credentials;

/// <summary>What a credential is to be checked against. All of it comes from the one who checks, none from the credential.</summary>
public sealed record VerificationRequest
{
    /// <summary>The instant of checking.</summary>
    public required DateTimeOffset Now { get; init; }

    /// <summary>The day asked about, by the calendar of the record's shop: did the credential hold then? <see cref="Now"/> where nothing is said.</summary>
    public DateOnly? On { get; init; }

    /// <summary>The keys that are trusted, each for its owner.</summary>
    public required KeyRing Keys { get; init; }

    /// <summary>Status list credentials as they were fetched or handed over.</summary>
    public IReadOnlyList<ReadOnlyMemory<byte>> StatusLists { get; init; } = [];

    /// <summary>
    /// A checkpoint of the issuer's log that the one who checks got, best from elsewhere than the credential; null where
    /// the credential's own, if it has one, must do.
    /// </summary>
    public SignedCheckpoint? Checkpoint { get; init; }

    /// <summary>
    /// Shows that the log was only added to between the size in the credential and the checkpoint's; not needed where
    /// they are the same.
    /// </summary>
    public ConsistencyProof? Consistency { get; init; }

    /// <summary>
    /// Every entry of the log that tells what happened to the record since it was issued, by the word of its issuer who
    /// leaves none out; null where nobody says so. A status list tells one instant, these tell every day before.
    /// </summary>
    public IReadOnlyList<LogInclusion>? History { get; init; }

    /// <summary>The name of the person about whom the credential should be; null where nobody was asked about.</summary>
    public string? PersonName { get; init; }
}
