using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Credentials;
using Training.Proofs.Log;
using static Training.Proofs.Tests.TestKeys;

namespace Training.Proofs.Tests.Credentials;

public class AchievementCredentialTests
{
    [Fact]
    public void A_record_reads_back_as_it_was_written()
    {
        CompetencyCredential credential = Awards.Credential();
        CompetencyCredential read = AchievementCredential.Read(Sent(Written(credential))).Value;
        Assert.Equal(credential with { Status = [], Judged = [], Log = null }, read with { Status = [], Judged = [], Log = null });
        Assert.Equal(credential.Status, read.Status);
        Assert.Equal(credential.Judged, read.Judged);
        Assert.Equal(credential.Log!.Write(), read.Log!.Write());
    }

    [Fact]
    public void A_record_with_the_least_that_is_allowed_reads_back()
    {
        CompetencyCredential least = Awards.Credential() with
        {
            Issuer = new IssuerProfile(Eastvale, "Eastvale Training Centre"),
            Shop = null,
            ValidUntil = null,
            Status = [],
            Judged = [],
            Log = null,
        };
        CompetencyCredential read = AchievementCredential.Read(Sent(Written(least))).Value;
        Assert.Equal(least with { Status = read.Status, Judged = read.Judged }, read);
        Assert.Empty(read.Status);
        Assert.Empty(read.Judged);
    }

    // Open Badges 3.0 (April 2025), the required members of each class; Verifiable Credentials 2.0 for the contexts.
    [Fact]
    public void Every_member_that_the_standards_require_is_there()
    {
        JsonObject document = Written(Awards.Credential());
        Assert.Equal("https://www.w3.org/ns/credentials/v2", (string?)document["@context"]![0]);
        Assert.Equal("https://purl.imsglobal.org/spec/ob/v3p0/context-3.0.3.json", (string?)document["@context"]![1]);
        Assert.Equal(["VerifiableCredential", "AchievementCredential"], Texts(document["type"]));
        Assert.Equal(Awards.Id.OriginalString, (string?)document["id"]);
        Assert.Equal("2026-01-30T08:00:00Z", (string?)document["validFrom"]);
        Assert.Equal("2028-01-30T08:00:00Z", (string?)document["validUntil"]);
        Assert.Equal("did:web:eastvale.example", (string?)document["issuer"]!["id"]);
        Assert.Equal(["Profile"], Texts(document["issuer"]!["type"]));
        JsonNode subject = document["credentialSubject"]!;
        Assert.Equal(["AchievementSubject"], Texts(subject["type"]));
        JsonNode achievement = subject["achievement"]!;
        Assert.Equal(["Achievement"], Texts(achievement["type"]));
        Assert.All(["id", "name", "description"], member => Assert.NotEqual("", (string?)achievement[member]));
        Assert.NotEqual("", (string?)achievement["criteria"]!["narrative"]);
        JsonNode person = subject["identifier"]![0]!;
        Assert.Equal("IdentityObject", (string?)person["type"]);
        Assert.False((bool)person["hashed"]!);
        Assert.Equal("Amara Nwosu", (string?)person["identityHash"]);
        Assert.Equal("name", (string?)person["identityType"]);
        JsonNode status = document["credentialStatus"]![0]!;
        Assert.Equal("BitstringStatusListEntry", (string?)status["type"]);
        Assert.Equal("revocation", (string?)status["statusPurpose"]);
        Assert.Equal("94567", (string?)status["statusListIndex"]);
        Assert.All(document["evidence"]!.AsArray(), evidence => Assert.Equal(["Evidence"], Texts(evidence!["type"])));
    }

    // Open Badges 3.0, IdentityHash: the name of the algorithm, a dollar sign, and the hash of the identity followed
    // by the salt. [computed] with another program.
    [Fact]
    public void A_hashed_name_is_hashed_as_Open_Badges_prescribes()
    {
        HashedRecipient recipient = HashedRecipient.Of("Amara Nwosu", Convert.FromHexString("000102030405060708090a0b0c0d0e0f"));
        Assert.Equal("000102030405060708090a0b0c0d0e0f", recipient.Salt);
        Assert.Equal("159f3bee4742a736259ceb34bb948946f616d7c66e8f03347a2d1834a80ee938", recipient.Hash.ToString());
        JsonObject document = Written(Awards.Credential() with { Recipient = recipient });
        Assert.DoesNotContain("Amara", document.ToJsonString(), StringComparison.Ordinal);
        Assert.Equal($"sha256${recipient.Hash}", (string?)document["credentialSubject"]!["identifier"]![0]!["identityHash"]);
        Recipient read = AchievementCredential.Read(Sent(document)).Value.Recipient;
        Assert.Equal(recipient, read);
        Assert.True(read.IsFor("Amara Nwosu"));
        Assert.False(read.IsFor("Wei Chen"));
    }

    [Fact]
    public void What_would_not_read_back_is_not_written()
    {
        CompetencyCredential good = Awards.Credential();
        Unwritten(good with { Title = " " });
        Unwritten(good with { Shop = "" });
        Unwritten(good with { Recipient = new NamedRecipient("") });
        Unwritten(good with { Recipient = new NamedRecipient("\ud800") });
        Unwritten(good with { Id = new Uri("/records/1", UriKind.Relative) });
        Unwritten(good with { Id = new Uri("javascript:alert(1)") });
        Unwritten(good with { ValidUntil = good.ValidFrom.AddSeconds(-1) });
        Unwritten(good with { Competency = good.Competency with { Criteria = "" } });
        Unwritten(good with { Competency = good.Competency with { Id = new Uri("data:text/plain,x") } });
        Unwritten(good with { Status = [good.Status[0], good.Status[0] with { Index = 5 }] });
        Unwritten(good with { Status = [good.Status[0] with { List = new Uri("http://eastvale.example/status") }] });
        Unwritten(good with { Status = [good.Status[0] with { Index = -1 }] });
    }

    [Fact]
    public void A_log_entry_about_another_record_is_not_written() =>
        Unwritten(Awards.Credential() with { Log = Awards.Place(12, index: 6) });

    public static readonly TheoryData<string, string?> Broken = new()
    {
        { "@context", null },
        { "@context", "[\"https://purl.imsglobal.org/spec/ob/v3p0/context-3.0.3.json\",\"https://www.w3.org/ns/credentials/v2\"]" },
        { "@context", "[\"https://www.w3.org/ns/credentials/v2\"]" },
        { "@context", "\"https://www.w3.org/ns/credentials/v2\"" },
        { "id", null },
        { "id", "\"record 5\"" },
        { "type", "[\"VerifiableCredential\"]" },
        { "type", "\"AchievementCredential\"" },
        { "name", null },
        { "name", "7" },
        { "issuer", null },
        { "issuer", "\"did:web:eastvale.example\"" },
        { "issuer/id", "\"https://eastvale.example\"" },
        { "issuer/type", "[\"Person\"]" },
        { "issuer/name", "\"\"" },
        { "issuer/url", "\"javascript:alert(1)\"" },
        { "validFrom", null },
        { "validFrom", "\"2026-01-30\"" },
        { "validUntil", "\"2026-01-30T07:59:59Z\"" },
        { "validUntil", "null" },
        { "credentialSubject", null },
        { "credentialSubject/type", "[\"Person\"]" },
        { "credentialSubject/identifier", null },
        { "credentialSubject/identifier/0/identityHash", null },
        { "credentialSubject/identifier/0/identityType", null },
        { "credentialSubject/identifier/0/hashed", "\"false\"" },
        { "credentialSubject/identifier/0/hashed", "true" },
        { "credentialSubject/identifier/0/type", null },
        { "credentialSubject/identifier/1/identityType", "\"name\"" },
        { "credentialSubject/achievement", null },
        { "credentialSubject/achievement/type", null },
        { "credentialSubject/achievement/id", null },
        { "credentialSubject/achievement/name", null },
        { "credentialSubject/achievement/description", null },
        { "credentialSubject/achievement/criteria", null },
        { "credentialSubject/achievement/criteria/narrative", null },
        { "credentialStatus/0/type", "\"StatusList2021Entry\"" },
        { "credentialStatus/1/statusPurpose", "\"revocation\"" },
        { "credentialStatus", "[7]" },
        { "evidence/0/type", null },
        { "evidence/0/id", "\"ni:///sha-256;AAAA\"" },
        { "evidence/0/name", null },
        { "evidence/2/id", "\"data:application/json;base64,AAAA\"" },
        { "evidence/2/id", "\"https://eastvale.example\"" },
    };

    [Theory]
    [MemberData(nameof(Broken))]
    public void A_document_in_which_a_member_is_missing_or_wrong_is_refused(string path, string? json)
    {
        JsonObject document = Written(Awards.Credential());
        string[] steps = path.Split('/');
        JsonNode parent = steps[..^1].Aggregate((JsonNode)document, (node, step) =>
            int.TryParse(step, out int index) ? node[index]! : node[step]!);
        if (json is null)
            parent.AsObject().Remove(steps[^1]);
        else
            parent[steps[^1]] = JsonNode.Parse(json);
        Assert.False(AchievementCredential.Read(Sent(document)).IsOk);
    }

    [Fact]
    public void Everything_that_is_wrong_is_told_at_once()
    {
        JsonObject document = Written(Awards.Credential());
        document.Remove("name");
        document.Remove("validFrom");
        document["credentialSubject"]!.AsObject().Remove("achievement");
        string sentence = AchievementCredential.Read(Sent(document)).Sentence;
        Assert.All(["name", "from when", "Achievement"], part => Assert.Contains(part, sentence, StringComparison.Ordinal));
    }

    [Fact]
    public void Evidence_of_other_kinds_is_left_alone()
    {
        JsonObject document = Written(Awards.Credential());
        document["evidence"]!.AsArray().Add(new JsonObject { ["id"] = "https://eastvale.example/film", ["type"] = new JsonArray("Evidence") });
        Assert.Equal(2, AchievementCredential.Read(Sent(document)).Value.Judged.Count);
    }

    [Fact]
    public void A_place_in_the_log_that_is_not_whole_is_refused()
    {
        JsonObject place = StrictJson.ReadObject(Awards.Place(12).Write().Utf8).Value;
        foreach (string member in place.Select(m => m.Key).ToArray())
        {
            JsonObject less = (JsonObject)place.DeepClone();
            less.Remove(member);
            Assert.False(LogInclusion.Read(Jcs.Canonicalize(less).Value.Utf8).IsOk);
        }
        place["path"] = new JsonArray([.. Enumerable.Range(0, 54).Select(_ => JsonValue.Create(MerkleHash.Empty.ToString()))]);
        Assert.False(LogInclusion.Read(Jcs.Canonicalize(place).Value.Utf8).IsOk);
    }

    private static void Unwritten(CompetencyCredential credential) => Assert.False(AchievementCredential.Write(credential).IsOk);

    private static JsonObject Written(CompetencyCredential credential) => AchievementCredential.Write(credential).Value;

    private static JsonObject Sent(JsonObject document) => StrictJson.ReadObject(Awards.Bytes(document)).Value;

    private static IEnumerable<string?> Texts(JsonNode? array) => array!.AsArray().Select(item => (string?)item);
}
