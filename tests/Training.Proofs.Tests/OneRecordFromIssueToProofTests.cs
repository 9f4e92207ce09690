using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Credentials;
using Training.Proofs.DataIntegrity;
using Training.Proofs.Log;
using Training.Proofs.PersonNames;
using Training.Proofs.Signing;
using Training.Proofs.StatusLists;

namespace Training.Proofs.Tests;

/// <summary>
/// How the parts fit, told as one story: a training provider issues a record, a customer checks it, the record is
/// withdrawn, the person's name is removed. Read it from top to bottom.
/// </summary>
public sealed class OneRecordFromIssueToProofTests
{
    private static readonly DateTimeOffset Issued = new(2026, 3, 1, 8, 0, 0, TimeSpan.Zero);
    private static readonly Uri Record = new("urn:uuid:5c0e9a38-7b53-4a3e-8f5e-2f1f0f4d9a10");
    private static readonly Uri Withdrawals = new("https://eastvale.example/status/withdrawn");
    private const int Place = 94567; // drawn at random by the provider

    [Fact]
    public void A_record_is_issued_proved_withdrawn_and_forgotten()
    {
        // The provider has an identifier on the web and a key. In production the seed is random, ForProduction makes
        // the key, and the exported seed is stored encrypted.
        DidWeb provider = DidWeb.Parse("did:web:eastvale.example").Value;
        using SigningKey key = SigningKey.ForProduction(TestKeys.Key("provider").ExportSeed()).Value;
        KeyId keyId = KeyId.For(provider, key.PublicKey);
        CanonicalText didJson = DidDocument.Write(provider, [new IssuerKey(keyId, key.PublicKey)]);
        Assert.Equal("https://eastvale.example/.well-known/did.json", provider.DocumentUrl.ToString());

        // Issuing begins with the log. The name goes in as a salted hash alone.
        byte[] salt = TestKeys.Salt("Jiří Dvořák");
        Sha256Digest person = PersonName.Hash("Jiří Dvořák", salt);
        List<LogEntry> log = [Entry(new() { ["kind"] = "log-begun" })];
        log.Add(Entry(new() { ["kind"] = "record-issued", ["record"] = Record.OriginalString, ["person"] = person.ToString() }));
        TreeHead head = TreeHead.Of(log.Select(entry => entry.LeafHash));
        LogInclusion inclusion = new(
            provider.ToString(), log[1], InclusionProof.Of([.. log.Select(entry => entry.LeafHash)], 1, 2));

        // A checkpoint is signed and handed to whoever wants to hold the provider to it.
        SignedCheckpoint checkpoint = SignedCheckpoint.Sign(new(provider.ToString(), head.Size, head.Root, Issued), key, keyId);

        // The credential says it all in the words of open standards, and is signed.
        JsonObject document = AchievementCredential.Write(new CompetencyCredential
        {
            Id = Record,
            Title = "Mechanical isolation of the truck chassis K26",
            Issuer = new IssuerProfile(provider, "Eastvale Training Centre"),
            Recipient = new NamedRecipient("Jiří Dvořák"),
            Shop = "Quillmoor Coachworks",
            Competency = new CompetencyDefinition(
                new Uri("https://eastvale.example/competencies/isolate-k26"), "Isolate the K26",
                "Opens the battery isolator and proves the chassis dead.", "A paper and an observed run."),
            ValidFrom = Issued,
            ValidUntil = Issued.AddYears(2),
            Status = [new StatusListEntry(StatusPurpose.Revocation, Withdrawals, Place)],
            Judged = [new JudgedMatter("procedure", "Isolate the K26, revision 4", Sha256Digest.Of("the procedure's text"u8))],
            Log = inclusion,
        }).Value;
        JsonObject secured = EddsaJcs2022.Secure(document, key, keyId, Issued).Value;
        byte[] file = Jcs.Canonicalize(secured).Value.Utf8.ToArray();

        // The customer has the file, the provider's did.json, its status list and a checkpoint, and checks offline.
        VerificationRequest request = new()
        {
            Now = Issued.AddMonths(6),
            Keys = DidDocument.Read(didJson.Utf8, provider).Value,
            StatusLists = [StatusListOf([], Issued.AddMonths(6), provider, key, keyId)],
            Checkpoint = SignedCheckpoint.Read(checkpoint.Write().Utf8).Value,
            PersonName = "Jiří Dvořák",
        };
        VerificationReport report = CredentialVerifier.Check(file, request);
        Assert.Equal(CheckState.Passed, report.State);
        Assert.Equal("Quillmoor Coachworks", report.Credential!.Shop);

        // The log has grown since; a proof joins the credential's place to the newer checkpoint.
        log.Add(Entry(new() { ["kind"] = "record-withdrawn", ["record"] = Record.OriginalString }));
        head = head.Append(log[2].LeafHash);
        SignedCheckpoint newer = SignedCheckpoint.Sign(new(provider.ToString(), head.Size, head.Root, Issued.AddMonths(7)), key, keyId);
        VerificationRequest later = request with
        {
            Now = Issued.AddMonths(7),
            StatusLists = [StatusListOf([Place], Issued.AddMonths(7), provider, key, keyId)],
            Checkpoint = newer,
            Consistency = ConsistencyProof.Of([.. log.Select(entry => entry.LeafHash)], 2, 3),
        };
        VerificationReport withdrawn = CredentialVerifier.Check(file, later);
        Assert.Equal(CheckReason.Withdrawn, withdrawn.Results.Single(result => result.State == CheckState.Failed).Reason);

        // The person leaves the trade: name and salt are deleted, and the whole log still holds to its checkpoints.
        IEnumerable<StoredEntry> stored = log.Select((entry, i) => new StoredEntry(i, entry.Text.Utf8.ToArray(), entry.LeafHash));
        LogWalkReport walk = LogWalk.Check(stored, [checkpoint, newer], request.Keys, later.Now);
        Assert.True(walk.IsWhole);
        Assert.Equal(3, walk.CoveredBy!.Size);
        Assert.All(log, entry => Assert.DoesNotContain("Dvořák", entry.ToString(), StringComparison.Ordinal));
    }

    private static LogEntry Entry(JsonObject content) => LogEntry.Of(content).Value;

    private static byte[] StatusListOf(int[] withdrawn, DateTimeOffset at, DidWeb issuer, SigningKey key, KeyId keyId)
    {
        StatusList list = new(Withdrawals, issuer, StatusPurpose.Revocation, StatusBitstring.Of(withdrawn), at, at.AddDays(7));
        return Jcs.Canonicalize(EddsaJcs2022.Secure(list.Write(), key, keyId, at).Value).Value.Utf8.ToArray();
    }
}
