namespace Training.Proofs.Credentials;

/// <summary>What is checked about a credential, in the order in which Open Badges 3.0 has it checked.</summary>
public enum Check
{
    /// <summary>It has the members that the standards require.</summary>
    Shape,

    /// <summary>The key that is said to have signed it is a good key of its issuer.</summary>
    IssuerKey,

    /// <summary>The signature fits, so that nothing was altered.</summary>
    Signature,

    /// <summary>It is neither withdrawn nor suspended.</summary>
    Status,

    /// <summary>It held already at the date asked about.</summary>
    ValidFrom,

    /// <summary>It held still at the date asked about.</summary>
    ValidUntil,

    /// <summary>It is about the person asked about; checked only where somebody was asked about.</summary>
    Person,

    /// <summary>It stands in the issuer's log.</summary>
    Log,
}

/// <summary>How a check came out.</summary>
public enum CheckState
{
    /// <summary>It is as it should be.</summary>
    Passed,

    /// <summary>It is not.</summary>
    Failed,

    /// <summary>What is needed to tell was not at hand.</summary>
    NotChecked,
}

/// <summary>Why a check came out as it did: stable, for programs and for translations.</summary>
public enum CheckReason
{
    /// <summary>As it should be.</summary>
    Fits,

    /// <summary>The document is not what the standards prescribe.</summary>
    Malformed,

    /// <summary>There is no proof that can be read, or it is of a kind that is not accepted.</summary>
    NoProof,

    /// <summary>No key of the issuer is at hand.</summary>
    NoKeys,

    /// <summary>The issuer has no such key.</summary>
    UnknownKey,

    /// <summary>The key belongs to somebody else.</summary>
    KeyOfAnother,

    /// <summary>The key is printed in public documents.</summary>
    PublishedKey,

    /// <summary>The key's time is over.</summary>
    KeyExpired,

    /// <summary>The issuer gave the key up.</summary>
    KeyRevoked,

    /// <summary>The signature does not fit.</summary>
    SignatureDoesNotFit,

    /// <summary>It stands in a text that nobody is known to have signed.</summary>
    NotSigned,

    /// <summary>The proof ran out, or bears a time that is yet to come.</summary>
    ProofOutOfTime,

    /// <summary>The credential names no status list.</summary>
    NoStatus,

    /// <summary>The status list was not at hand.</summary>
    NoStatusList,

    /// <summary>The status list is not to be believed.</summary>
    StatusListNotBelieved,

    /// <summary>The status list tells a later time, and does not say how it was on the day asked about.</summary>
    StatusListTooNew,

    /// <summary>The status list is older than the date asked about, and its time is over.</summary>
    StatusListTooOld,

    /// <summary>The credential is withdrawn.</summary>
    Withdrawn,

    /// <summary>The credential is suspended.</summary>
    Suspended,

    /// <summary>It does not hold yet.</summary>
    NotYet,

    /// <summary>It holds no more.</summary>
    Expired,

    /// <summary>It is about somebody else.</summary>
    AnotherPerson,

    /// <summary>The credential does not say where it stands in the log.</summary>
    NoLogPlace,

    /// <summary>No checkpoint was at hand, or none that the place in the log can be held against.</summary>
    NoCheckpoint,

    /// <summary>The checkpoint is not to be believed.</summary>
    CheckpointNotBelieved,

    /// <summary>The log does not have the entry at that place.</summary>
    NotInLog,

    /// <summary>The entry in the log speaks of another record.</summary>
    EntryOfAnother,

    /// <summary>The log was not only added to between the credential's proof and the checkpoint.</summary>
    LogRewritten,
}

/// <summary>One check and how it came out.</summary>
/// <param name="Check">What was checked.</param>
/// <param name="State">How it came out.</param>
/// <param name="Reason">Why.</param>
/// <param name="Sentence">The same in one plain sentence.</param>
public sealed record CheckResult(Check Check, CheckState State, CheckReason Reason, string Sentence);

/// <summary>Everything that was checked about a credential.</summary>
/// <param name="Results">Each check; a credential with two status entries has two results for its status.</param>
/// <param name="Credential">What the credential says; null where it cannot be read. Show it as proved only where <see cref="State"/> is passed.</param>
public sealed record VerificationReport(IReadOnlyList<CheckResult> Results, CompetencyCredential? Credential)
{
    /// <summary>Passed where everything passed; failed where anything failed; else something could not be checked.</summary>
    public CheckState State =>
        Results.Any(result => result.State == CheckState.Failed) ? CheckState.Failed
        : Results.Any(result => result.State == CheckState.NotChecked) ? CheckState.NotChecked
        : CheckState.Passed;

    /// <summary>The results of one check.</summary>
    public IEnumerable<CheckResult> Of(Check check) => Results.Where(result => result.Check == check);
}
