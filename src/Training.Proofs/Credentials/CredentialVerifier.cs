using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.DataIntegrity;
using Training.Proofs.Signing;

namespace Training.Proofs.Credentials;

/// <summary>
/// Checks a credential in every respect and says of each how it came out. Nothing is fetched and no clock is read:
/// what a check needs is in the request, and a check whose needs are missing says so.
/// </summary>
public static class CredentialVerifier
{
    /// <summary>Checks a credential.</summary>
    /// <param name="utf8">The credential as it was handed over.</param>
    /// <param name="request">What to check it against.</param>
    public static VerificationReport Check(ReadOnlySpan<byte> utf8, VerificationRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        Outcome<JsonObject> document = StrictJson.ReadObject(utf8);
        if (!document.IsOk)
            return Unreadable(document.Sentence);
        Outcome<CompetencyCredential> read = AchievementCredential.Read(document.Value);
        if (!read.IsOk)
            return Unreadable(read.Sentence);
        CompetencyCredential credential = read.Value;
        List<CheckResult> results =
        [
            Passed(Credentials.Check.Shape, "The document is an Open Badges 3.0 credential."),
            .. Proof(document.Value, credential, request),
            .. StatusCheck.Of(credential, request),
            ValidFrom(credential, request),
            ValidUntil(credential, request),
        ];
        if (request.PersonName is { } name)
            results.Add(Person(credential, name));
        results.Add(LogCheck.Of(credential, request));
        return new(results, credential);
    }

    internal static CheckResult Passed(Check check, string sentence) =>
        new(check, CheckState.Passed, CheckReason.Fits, sentence);

    internal static CheckResult Failed(Check check, CheckReason reason, string sentence) =>
        new(check, CheckState.Failed, reason, sentence);

    internal static CheckResult NotChecked(Check check, CheckReason reason, string sentence) =>
        new(check, CheckState.NotChecked, reason, sentence);

    private static VerificationReport Unreadable(string sentence)
    {
        CheckResult shape = Failed(Credentials.Check.Shape, CheckReason.Malformed, sentence);
        Check[] others = [.. Enum.GetValues<Check>().Where(check => check is not Credentials.Check.Shape and not Credentials.Check.Person)];
        return new(
            [shape, .. others.Select(check => NotChecked(check, CheckReason.Malformed, "The document is not such a credential, so this was not checked."))],
            null);
    }

    private static CheckResult[] Proof(JsonObject document, CompetencyCredential credential, VerificationRequest request)
    {
        Outcome<DataIntegrityProof> read = DataIntegrityProof.Read(document);
        if (!read.IsOk)
        {
            return
            [
                NotChecked(Credentials.Check.IssuerKey, CheckReason.NoProof, "Without a proof nobody is said to have signed."),
                Failed(Credentials.Check.Signature, CheckReason.NoProof, read.Sentence),
            ];
        }
        CheckResult issuerKey = IssuerKey(read.Value.Key, credential, request);
        // The signature is held against the named key even where the key is no good any more: what went wrong is then
        // told apart from an alteration.
        return request.Keys.Find(read.Value.Key) is { } key && issuerKey.Reason != CheckReason.KeyOfAnother
            ? [issuerKey, Signature(document, read.Value, key, request)]
            : [issuerKey, NotChecked(Credentials.Check.Signature, issuerKey.Reason, "Without the issuer's key the signature cannot be checked.")];
    }

    private static CheckResult IssuerKey(KeyId id, CompetencyCredential credential, VerificationRequest request)
    {
        const Check Subject = Credentials.Check.IssuerKey;
        string issuer = credential.Issuer.Id.ToString();
        if (id.Controller != issuer)
            return Failed(Subject, CheckReason.KeyOfAnother, $"The credential names {issuer} as its issuer, but a key of {id.Controller} signed it.");
        if (!request.Keys.Knows(issuer))
            return NotChecked(Subject, CheckReason.NoKeys, $"The keys of {issuer} are not at hand.");
        if (request.Keys.Find(id) is not { } key)
            return Failed(Subject, CheckReason.UnknownKey, $"{issuer} has no key {id}.");
        if (key.PublicKey.IsPublishedTestKey)
            return Failed(Subject, CheckReason.PublishedKey, "The key is printed in public documents, so anyone can sign with it.");
        return key.StandingAt(request.Now) switch
        {
            KeyStanding.Expired => Failed(Subject, CheckReason.KeyExpired, $"The issuer's key expired on {Day(key.Expires!.Value)}."),
            KeyStanding.Revoked => Failed(Subject, CheckReason.KeyRevoked, $"The issuer gave the key up on {Day(key.Revoked!.Value)}; ask for a newly signed credential."),
            _ => Passed(Subject, $"The key is a good key of {issuer}."),
        };
    }

    private static CheckResult Signature(
        JsonObject document, DataIntegrityProof proof, IssuerKey key, VerificationRequest request)
    {
        const Check Subject = Credentials.Check.Signature;
        if (!EddsaJcs2022.Fits(document, proof, key.PublicKey))
            return Failed(Subject, CheckReason.SignatureDoesNotFit, "The signature does not fit: the credential was altered, or another key signed it.");
        Outcome<DataIntegrityProof> timely = EddsaJcs2022.Timely(proof, request.Now);
        return timely.IsOk
            ? Passed(Subject, $"Nothing was altered since {Day(proof.Created)}.")
            : Failed(Subject, CheckReason.ProofOutOfTime, timely.Sentence);
    }

    private static CheckResult ValidFrom(CompetencyCredential credential, VerificationRequest request) =>
        credential.ValidFrom <= (request.AsOf ?? request.Now)
            ? Passed(Credentials.Check.ValidFrom, $"It holds from {Day(credential.ValidFrom)} on.")
            : Failed(Credentials.Check.ValidFrom, CheckReason.NotYet, $"It holds only from {Day(credential.ValidFrom)} on.");

    // Verifiable Credentials 2.0, section 4.9: validUntil is the last instant at which the credential is valid.
    private static CheckResult ValidUntil(CompetencyCredential credential, VerificationRequest request) =>
        credential.ValidUntil is not { } end ? Passed(Credentials.Check.ValidUntil, "It has no end.")
        : (request.AsOf ?? request.Now) <= end ? Passed(Credentials.Check.ValidUntil, $"It holds until {Day(end)}.")
        : Failed(Credentials.Check.ValidUntil, CheckReason.Expired, $"It held until {Day(end)} and no longer.");

    private static CheckResult Person(CompetencyCredential credential, string name) =>
        credential.Recipient.IsFor(name)
            ? Passed(Credentials.Check.Person, $"It is about {name}.")
            : Failed(Credentials.Check.Person, CheckReason.AnotherPerson, $"It is not about {name}.");

    internal static string Day(DateTimeOffset instant) => DateTimeStamp.Format(instant);
}
