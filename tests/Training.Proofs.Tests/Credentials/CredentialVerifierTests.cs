using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Credentials;
using Training.Proofs.DataIntegrity;
using Training.Proofs.Log;
using Training.Proofs.Signing;
using static Training.Proofs.Tests.TestKeys;
using About = Training.Proofs.Credentials.Check;

namespace Training.Proofs.Tests.Credentials;

public sealed class CredentialVerifierTests : IDisposable
{
    private readonly Awards awards = new();

    public void Dispose() => awards.Dispose();

    [Fact]
    public void With_everything_at_hand_every_check_passes()
    {
        VerificationReport report = Check(awards.Request());
        Assert.Equal(CheckState.Passed, report.State);
        Assert.Equal(Enum.GetValues<About>().ToHashSet(), report.Results.Select(result => result.Check).ToHashSet());
        Assert.All(report.Results, result => Assert.EndsWith(".", result.Sentence, StringComparison.Ordinal));
        Assert.Equal("Quillmoor Coachworks", report.Credential!.Shop);
    }

    [Fact]
    public void Any_flipped_byte_makes_the_credential_fail()
    {
        byte[] text = Awards.Bytes(awards.Secured());
        VerificationRequest request = awards.Request() with { StatusLists = [] };
        for (int i = 0; i < text.Length; i++)
        {
            byte[] altered = [.. text];
            altered[i] ^= (byte)(1 << (i % 8));
            Assert.Equal(CheckState.Failed, CredentialVerifier.Check(altered, request).State);
        }
    }

    [Fact]
    public void A_name_that_was_exchanged_is_told_as_an_alteration()
    {
        string text = Encoding.UTF8.GetString(Awards.Bytes(awards.Secured())).Replace(Awards.Person, "Wei Chen", StringComparison.Ordinal);
        VerificationReport report = CredentialVerifier.Check(Encoding.UTF8.GetBytes(text), awards.Request() with { PersonName = "Wei Chen" });
        Is(report, About.Signature, CheckState.Failed, CheckReason.SignatureDoesNotFit);
    }

    [Fact]
    public void What_stands_in_a_text_that_nobody_signed_is_neither_yes_nor_no()
    {
        JsonObject forged = awards.Secured();
        forged["validUntil"] = "2040-01-01T00:00:00Z";
        VerificationReport report = Check(awards.Request() with { PersonName = "Wei Chen" }, forged);
        foreach (About about in (About[])[About.Status, About.ValidFrom, About.ValidUntil, About.Person, About.Log])
            Assert.All(report.Of(about), result => Assert.Equal((CheckState.NotChecked, CheckReason.NotSigned), (result.State, result.Reason)));
    }

    [Fact]
    public void A_document_that_cannot_be_read_fails_by_its_shape_and_nothing_else_is_said_of_it()
    {
        VerificationReport report = CredentialVerifier.Check("{\"@context\":[]}"u8, awards.Request());
        Is(report, About.Shape, CheckState.Failed, CheckReason.Malformed);
        Assert.Null(report.Credential);
        Assert.All(report.Results.Skip(1), result => Assert.Equal(CheckState.NotChecked, result.State));
        Assert.False(CredentialVerifier.Check("no JSON"u8, awards.Request()).State == CheckState.Passed);
    }

    [Fact]
    public void Any_bytes_give_a_report_and_never_an_exception() =>
        Gen.Byte.Array[0, 200].Sample(bytes =>
            CredentialVerifier.Check(bytes, awards.Request()).State == CheckState.Failed, iter: 200);

    [Fact]
    public void Any_value_in_the_place_of_any_other_makes_the_credential_fail_and_never_throws()
    {
        byte[] text = Awards.Bytes(awards.Secured());
        VerificationRequest request = awards.Request() with { StatusLists = [] };
        int places = Places(StrictJson.ReadObject(text).Value).Count();
        Assert.True(places > 80);
        foreach (string value in (string[])["null", "7", "-1e300", "true", "\"\"", "\"x\"", "[]", "{}", "[null]", "[[{}]]"])
        {
            for (int place = 0; place < places; place++)
            {
                JsonObject document = StrictJson.ReadObject(text).Value;
                JsonNode target = Places(document).ElementAt(place);
                if (target.ToJsonString() == value)
                    continue;
                target.ReplaceWith(JsonNode.Parse(value));
                Assert.Equal(CheckState.Failed, CredentialVerifier.Check(Awards.Bytes(document), request).State);
            }
        }

        static IEnumerable<JsonNode> Places(JsonNode node) => node switch
        {
            JsonObject members => members.Where(m => m.Value is not null).SelectMany(m => Places(m.Value!).Prepend(m.Value!)),
            JsonArray items => items.OfType<JsonNode>().SelectMany(item => Places(item).Prepend(item)),
            _ => [],
        };
    }

    [Fact]
    public void A_credential_without_a_proof_fails()
    {
        VerificationReport report = Check(awards.Request(), AchievementCredential.Write(Awards.Credential()).Value);
        Is(report, About.Signature, CheckState.Failed, CheckReason.NoProof);
    }

    [Fact]
    public void Without_the_issuers_keys_the_signature_is_not_checked()
    {
        VerificationReport report = Check(awards.Request() with { Keys = KeyRing.Empty });
        Is(report, About.IssuerKey, CheckState.NotChecked, CheckReason.NoKeys);
        Is(report, About.Signature, CheckState.NotChecked, CheckReason.NoKeys);
        Assert.Equal(CheckState.NotChecked, report.State);
    }

    [Fact]
    public void A_key_that_the_issuer_does_not_have_fails()
    {
        using SigningKey other = Key("other");
        Is(Check(awards.Request() with { Keys = Ring(other) }), About.IssuerKey, CheckState.Failed, CheckReason.UnknownKey);
    }

    [Fact]
    public void A_key_of_somebody_else_fails_although_it_is_trusted_for_its_owner()
    {
        DidWeb stranger = DidWeb.For("other.example").Value;
        using SigningKey other = Key("other");
        KeyId id = KeyId.For(stranger, other.PublicKey);
        JsonObject secured = EddsaJcs2022.Secure(AchievementCredential.Write(Awards.Credential()).Value, other, id, Now).Value;
        KeyRing keys = Ring(awards.Key).With(new KeyRing([new IssuerKey(id, other.PublicKey)]));
        VerificationReport report = Check(awards.Request() with { Keys = keys }, secured);
        Is(report, About.IssuerKey, CheckState.Failed, CheckReason.KeyOfAnother);
        Assert.NotEqual(CheckState.Passed, report.Of(About.Signature).Single().State);
    }

    [Fact]
    public void A_key_whose_secret_is_published_fails_although_its_signature_fits()
    {
        // RFC 8032, section 7.1, test 1.
        using SigningKey published = SigningKey.FromSeed(Convert.FromHexString("9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60"));
        KeyId id = KeyId.For(Eastvale, published.PublicKey);
        JsonObject secured = EddsaJcs2022.Secure(AchievementCredential.Write(Awards.Credential()).Value, published, id, Now).Value;
        VerificationReport report = Check(awards.Request() with { Keys = Ring(awards.Key, published) }, secured);
        Is(report, About.IssuerKey, CheckState.Failed, CheckReason.PublishedKey);
    }

    [Fact]
    public void An_expired_or_revoked_key_fails_and_the_signature_is_still_told_apart_from_an_alteration()
    {
        IssuerKey good = new(KeyId.For(Eastvale, awards.Key.PublicKey), awards.Key.PublicKey);
        VerificationReport expired = Check(awards.Request() with { Keys = new([good with { Expires = Now }]) });
        Is(expired, About.IssuerKey, CheckState.Failed, CheckReason.KeyExpired);
        Is(expired, About.Signature, CheckState.Passed, CheckReason.Fits);
        VerificationReport revoked = Check(awards.Request() with { Keys = new([good with { Revoked = Now }]) });
        Is(revoked, About.IssuerKey, CheckState.Failed, CheckReason.KeyRevoked);
    }

    // Whoever holds a stolen key can write any date: asking about a date before the theft makes nothing good.
    [Fact]
    public void A_revoked_key_fails_whatever_date_is_asked_about()
    {
        KeyRing keys = new([new IssuerKey(KeyId.For(Eastvale, awards.Key.PublicKey), awards.Key.PublicKey, Revoked: Now)]);
        VerificationReport report = Check(awards.Request() with { Keys = keys, On = DayOf(Now.AddDays(-20)) });
        Is(report, About.IssuerKey, CheckState.Failed, CheckReason.KeyRevoked);
    }

    [Fact]
    public void A_credential_still_holds_by_its_old_key_after_the_issuer_took_a_new_one()
    {
        using SigningKey newer = Key("second");
        CanonicalText document = DidDocument.Write(
            Eastvale,
            [
                new IssuerKey(KeyId.For(Eastvale, newer.PublicKey), newer.PublicKey),
                new IssuerKey(KeyId.For(Eastvale, awards.Key.PublicKey), awards.Key.PublicKey, Expires: Now.AddDays(700)),
            ]);
        KeyRing keys = DidDocument.Read(document.Utf8, Eastvale).Value;
        Assert.Equal(CheckState.Passed, Check(awards.Request() with { Keys = keys }).State);
    }

    [Fact]
    public void What_an_ended_key_signed_before_its_end_holds_where_a_key_of_today_vouches_for_its_place_in_the_log()
    {
        using SigningKey newer = Key("second");
        IssuerKey old = new(KeyId.For(Eastvale, awards.Key.PublicKey), awards.Key.PublicKey, Expires: Now.AddDays(-10));
        KeyRing keys = new([old, new IssuerKey(KeyId.For(Eastvale, newer.PublicKey), newer.PublicKey)]);
        VerificationRequest request = awards.Request() with { Keys = keys };
        // By its own checkpoint, which the old key signed, whoever stole that key could make any place.
        Is(Check(request), About.IssuerKey, CheckState.Failed, CheckReason.KeyExpired);
        SignedCheckpoint living = SignedCheckpoint.Sign(awards.Checkpoint(12).Checkpoint, newer, KeyId.For(Eastvale, newer.PublicKey));
        Is(Check(request with { Checkpoint = living }), About.IssuerKey, CheckState.Passed, CheckReason.Fits);
        // What bears a date after its end is nobody's.
        JsonObject late = EddsaJcs2022.Secure(AchievementCredential.Write(Awards.Credential()).Value, awards.Key, old.Id, Now.AddDays(-9)).Value;
        Is(Check(request with { Checkpoint = living }, late), About.IssuerKey, CheckState.Failed, CheckReason.KeyExpired);
    }

    [Fact]
    public void A_proof_that_ran_out_fails()
    {
        JsonObject secured = EddsaJcs2022.Secure(
            AchievementCredential.Write(Awards.Credential()).Value, awards.Key,
            KeyId.For(Eastvale, awards.Key.PublicKey), Now.AddDays(-30), Now.AddDays(-1)).Value;
        Is(Check(awards.Request(), secured), About.Signature, CheckState.Failed, CheckReason.ProofOutOfTime);
    }

    [Fact]
    public void Without_a_day_the_instant_of_checking_decides_whether_the_credential_holds()
    {
        CompetencyCredential credential = Awards.Credential();
        Is(At(credential.ValidFrom.AddSeconds(-1)), About.ValidFrom, CheckState.Failed, CheckReason.NotYet);
        Is(At(credential.ValidFrom), About.ValidFrom, CheckState.Passed, CheckReason.Fits);
        Is(At(credential.ValidUntil!.Value), About.ValidUntil, CheckState.Passed, CheckReason.Fits);
        Is(At(credential.ValidUntil!.Value.AddSeconds(1)), About.ValidUntil, CheckState.Failed, CheckReason.Expired);

        // A proof of tomorrow would be no proof today.
        VerificationReport At(DateTimeOffset now) => Check(awards.Request() with { Now = now }, EddsaJcs2022.Secure(
            AchievementCredential.Write(credential).Value, awards.Key, KeyId.For(Eastvale, awards.Key.PublicKey), credential.ValidFrom.AddDays(-1)).Value);
    }

    [Theory]
    [InlineData("Pacific/Auckland", "2026-03-02T16:16:00Z", "2026-03-03")]
    [InlineData("Europe/London", "2026-03-02T16:16:00Z", "2026-03-02")]
    [InlineData("America/Los_Angeles", "2026-03-02T04:00:00Z", "2026-03-01")]
    [InlineData("Nowhere/Unknown", "2026-03-02T16:16:00Z", "2026-03-02")]
    public void Days_are_those_of_the_shops_calendar_from_the_day_of_issue_to_the_last_one(string zone, string issued, string day)
    {
        DateOnly first = DateOnly.Parse(day, null);
        CompetencyCredential credential = Awards.In(zone, DateTimeStamp.Parse(issued).Value, DateTimeStamp.Parse(issued).Value.AddDays(100));
        JsonObject secured = awards.Secured(credential);
        State(first.AddDays(-1), About.ValidFrom, CheckState.Failed);
        State(first, About.ValidFrom, CheckState.Passed);
        State(first.AddDays(100), About.ValidUntil, CheckState.Passed);
        State(first.AddDays(101), About.ValidUntil, CheckState.Failed);

        void State(DateOnly on, About about, CheckState state) =>
            Assert.Equal(state, Check(awards.Request() with { On = on }, secured).Of(about).Single().State);
    }

    [Fact]
    public void A_credential_about_somebody_else_fails_and_without_a_name_the_person_is_not_spoken_of()
    {
        Is(Check(awards.Request() with { PersonName = "Wei Chen" }), About.Person, CheckState.Failed, CheckReason.AnotherPerson);
        Assert.Empty(Check(awards.Request() with { PersonName = null }).Of(About.Person));
    }

    [Fact]
    public void A_hashed_name_is_recognised_by_who_knows_it()
    {
        JsonObject secured = awards.Secured(Awards.Credential() with { Recipient = HashedRecipient.Of(Awards.Person, Salt("a")) });
        Assert.Equal(CheckState.Passed, Check(awards.Request(), secured).State);
        Assert.Equal(CheckState.Failed, Check(awards.Request() with { PersonName = "Wei Chen" }, secured).State);
    }

    [Fact]
    public void A_later_checkpoint_needs_the_proof_that_joins_it()
    {
        Sha256Digest[] leaves = [.. Awards.Log(20).Select(entry => entry.LeafHash)];
        VerificationRequest later = awards.Request() with { Checkpoint = awards.Checkpoint(20) };
        Is(Check(later), About.Log, CheckState.NotChecked, CheckReason.NoCheckpoint);
        Is(Check(later with { Consistency = ConsistencyProof.Of(leaves, 11, 20) }), About.Log, CheckState.NotChecked, CheckReason.NoCheckpoint);
        Assert.Equal(CheckState.Passed, Check(later with { Consistency = ConsistencyProof.Of(leaves, 12, 20) }).State);
    }

    [Fact]
    public void A_log_that_was_rewritten_fails()
    {
        LogEntry[] rewritten = Awards.Log(20);
        rewritten[5] = rewritten[6];
        Sha256Digest[] leaves = [.. rewritten.Select(entry => entry.LeafHash)];
        VerificationRequest later = awards.Request() with
        {
            Checkpoint = SignRoot(20, TreeHead.Of(leaves).Root),
            Consistency = ConsistencyProof.Of(leaves, 12, 20),
        };
        Is(Check(later), About.Log, CheckState.Failed, CheckReason.LogRewritten);
        VerificationRequest same = awards.Request() with { Checkpoint = SignRoot(12, TreeHead.Of(leaves.Take(12)).Root) };
        Is(Check(same), About.Log, CheckState.Failed, CheckReason.NotInLog);
    }

    [Fact]
    public void An_entry_of_another_record_fails_although_it_is_in_the_log()
    {
        JsonObject document = AchievementCredential.Write(Awards.Credential()).Value;
        LogInclusion theirs = Awards.Place(12, index: 6);
        document["evidence"]![2]!["id"] = "data:application/json;base64," + Convert.ToBase64String(theirs.Write().Utf8);
        Is(Check(awards.Request(), awards.Secure(document)), About.Log, CheckState.Failed, CheckReason.EntryOfAnother);
    }

    [Fact]
    public void A_checkpoint_that_is_missing_or_not_to_be_believed_leaves_the_log_unchecked()
    {
        using SigningKey other = Key("other");
        SignedCheckpoint good = awards.Checkpoint(12);
        Is(Check(awards.Request() with { Checkpoint = null }), About.Log, CheckState.NotChecked, CheckReason.NoCheckpoint);
        SignedCheckpoint forged = SignedCheckpoint.Sign(good.Checkpoint, other, good.Key);
        Is(Check(awards.Request() with { Checkpoint = forged }), About.Log, CheckState.NotChecked, CheckReason.CheckpointNotBelieved);
        SignedCheckpoint elsewhere = SignedCheckpoint.Sign(good.Checkpoint with { Origin = "did:web:other.example" }, awards.Key, good.Key);
        Is(Check(awards.Request() with { Checkpoint = elsewhere }), About.Log, CheckState.NotChecked, CheckReason.CheckpointNotBelieved);
    }

    [Fact]
    public void A_credential_that_does_not_say_its_place_leaves_the_log_unchecked() =>
        Is(Check(awards.Request(), awards.Secured(Awards.Credential() with { Log = null })),
            About.Log, CheckState.NotChecked, CheckReason.NoLogPlace);

    private static void Is(VerificationReport report, About check, CheckState state, CheckReason reason)
    {
        CheckResult result = Assert.Single(report.Of(check));
        Assert.Equal((state, reason), (result.State, result.Reason));
    }

    private static DateOnly DayOf(DateTimeOffset instant) => DateOnly.FromDateTime(instant.UtcDateTime);

    private VerificationReport Check(VerificationRequest request, JsonObject? secured = null) =>
        CredentialVerifier.Check(Awards.Bytes(secured ?? awards.Secured()), request);

    private SignedCheckpoint SignRoot(int size, Sha256Digest root) => SignedCheckpoint.Sign(
        new Checkpoint(Awards.Origin, size, root, Now), awards.Key, KeyId.For(Eastvale, awards.Key.PublicKey));
}
