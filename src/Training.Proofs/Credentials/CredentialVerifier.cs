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
        ShopCalendar calendar = ShopCalendar.Of(credential.Log?.Entry);
        CheckResult log = LogCheck.Of(credential, request, calendar);
        CheckResult[] proof = Proof(document.Value, credential, request, log);
        List<CheckResult> told =
        [
            .. StatusCheck.Of(credential, request, calendar),
            ValidFrom(credential, request, calendar),
            ValidUntil(credential, request, calendar),
        ];
        if (request.PersonName is { } name)
            told.Add(Person(credential, name));
        told.Add(log);
        // What nobody is known to have signed says nothing, neither yes nor no.
        if (proof.Any(result => result.State != CheckState.Passed))
            told = [.. told.Select(result => NotChecked(result.Check, CheckReason.NotSigned, "It stands in a text whose signature is not to be believed."))];
        return new([Passed(Credentials.Check.Shape, "The document is an Open Badges 3.0 credential."), .. proof, .. told], credential);
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

    private static CheckResult[] Proof(JsonObject document, CompetencyCredential credential, VerificationRequest request, CheckResult log)
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
        CheckResult issuerKey = IssuerKey(read.Value, credential, request, log);
        // The signature is held against the named key even where the key is no good any more: what went wrong is then
        // told apart from an alteration.
        return request.Keys.Find(read.Value.Key) is { } key && issuerKey.Reason != CheckReason.KeyOfAnother
            ? [issuerKey, Signature(document, read.Value, key, request)]
            : [issuerKey, NotChecked(Credentials.Check.Signature, issuerKey.Reason, "Without the issuer's key the signature cannot be checked.")];
    }

    private static CheckResult IssuerKey(DataIntegrityProof proof, CompetencyCredential credential, VerificationRequest request, CheckResult log)
    {
        KeyId id = proof.Key;
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
            // Before its end a key may have signed what its owner then wrote into the log; a key of today says what the log holds.
            KeyStanding.Expired when proof.Created < key.Expires && log.State == CheckState.Passed =>
                Passed(Subject, $"The key was a good key of {issuer} until {Day(key.Expires!.Value)}, and a key of today vouches for the log."),
            KeyStanding.Expired => Failed(Subject, CheckReason.KeyExpired, $"The issuer's key ended on {Day(key.Expires!.Value)}; ask for a newly signed file."),
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

    private static CheckResult ValidFrom(CompetencyCredential credential, VerificationRequest request, ShopCalendar calendar)
    {
        string day = calendar.Day(credential.ValidFrom);
        bool holds = request.On is { } on ? calendar.DayOf(credential.ValidFrom) <= on : credential.ValidFrom <= request.Now;
        return holds
            ? Passed(Credentials.Check.ValidFrom, $"It holds from {day} on.")
            : Failed(Credentials.Check.ValidFrom, CheckReason.NotYet, $"It holds only from {day} on.");
    }

    // Verifiable Credentials 2.0, section 4.9: validUntil is the last instant at which the credential is valid.
    private static CheckResult ValidUntil(CompetencyCredential credential, VerificationRequest request, ShopCalendar calendar)
    {
        if (credential.ValidUntil is not { } end)
            return Passed(Credentials.Check.ValidUntil, "It has no end.");
        bool holds = request.On is { } on ? on <= calendar.DayOf(end) : request.Now <= end;
        return holds
            ? Passed(Credentials.Check.ValidUntil, $"It holds until {calendar.Day(end)}.")
            : Failed(Credentials.Check.ValidUntil, CheckReason.Expired, $"It held until {calendar.Day(end)} and no longer.");
    }

    private static CheckResult Person(CompetencyCredential credential, string name) =>
        credential.Recipient.IsFor(name)
            ? Passed(Credentials.Check.Person, $"It is about {name}.")
            : Failed(Credentials.Check.Person, CheckReason.AnotherPerson, $"It is not about {name}.");

    private static string Day(DateTimeOffset instant) => DateTimeStamp.Day(instant);
}
