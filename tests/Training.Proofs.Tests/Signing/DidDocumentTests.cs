using System.Text;
using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Signing;
using static Training.Proofs.Tests.TestKeys;

namespace Training.Proofs.Tests.Signing;

public class DidDocumentTests
{
    private static readonly IssuerKey Present = Named("second");
    private static readonly IssuerKey Former = Named("first") with { Expires = Now.AddYears(2) };
    private static readonly IssuerKey Stolen = Named("stolen") with { Revoked = Now.AddDays(-1) };

    [Fact]
    public void A_document_with_several_keys_reads_back_with_the_times_of_each()
    {
        CanonicalText document = DidDocument.Write(Eastvale, [Present, Former, Stolen]);
        KeyRing ring = DidDocument.Read(document.Utf8, Eastvale).Value;
        Assert.Equal([Present, Former, Stolen], ring.Keys);
    }

    [Fact]
    public void Every_key_is_a_Multikey_of_the_subject_for_assertions()
    {
        JsonObject document = Parse(DidDocument.Write(Eastvale, [Present, Former]));
        Assert.Equal("did:web:eastvale.example", (string?)document["id"]);
        JsonNode method = document["verificationMethod"]![1]!;
        Assert.Equal("Multikey", (string?)method["type"]);
        Assert.Equal("did:web:eastvale.example", (string?)method["controller"]);
        Assert.Equal(Former.PublicKey.Multikey, (string?)method["publicKeyMultibase"]);
        Assert.Equal("2028-03-01T08:00:00Z", (string?)method["expires"]);
        Assert.Equal([Present.Id.Value, Former.Id.Value], document["assertionMethod"]!.AsArray().Select(id => (string?)id));
    }

    [Fact]
    public void A_key_stands_as_its_times_say()
    {
        Assert.Equal(KeyStanding.Good, Present.StandingAt(Now));
        Assert.Equal(KeyStanding.Good, Former.StandingAt(Now.AddYears(2).AddTicks(-1)));
        Assert.Equal(KeyStanding.Expired, Former.StandingAt(Now.AddYears(2)));
        Assert.Equal(KeyStanding.Good, Stolen.StandingAt(Now.AddDays(-2)));
        Assert.Equal(KeyStanding.Revoked, Stolen.StandingAt(Now));
    }

    [Fact]
    public void A_document_of_somebody_else_is_refused() =>
        Assert.False(DidDocument.Read(DidDocument.Write(Eastvale, [Present]).Utf8, DidWeb.For("other.example").Value).IsOk);

    [Fact]
    public void A_key_that_is_said_to_be_somebody_elses_is_refused() =>
        Refused(document => document["verificationMethod"]![0]!["controller"] = "did:web:other.example");

    [Fact]
    public void A_Multikey_that_is_not_Ed25519_is_refused() =>
        Refused(document => document["verificationMethod"]![0]!["publicKeyMultibase"] = Multibase.EncodeBase58([0x80, 0x24, .. new byte[33]]));

    [Fact]
    public void A_time_that_cannot_be_read_is_refused_and_not_taken_for_no_time() =>
        Refused(document => document["verificationMethod"]![0]!["revoked"] = "yesterday");

    [Fact]
    public void A_key_that_is_named_twice_is_refused() =>
        Refused(document => document["verificationMethod"]!.AsArray().Add(document["verificationMethod"]![0]!.DeepClone()));

    [Fact]
    public void A_key_that_is_not_for_assertions_is_left_out()
    {
        JsonObject document = Parse(DidDocument.Write(Eastvale, [Present, Former]));
        document["assertionMethod"]!.AsArray().RemoveAt(0);
        Assert.Equal([Former], DidDocument.Read(Jcs.Canonicalize(document).Value.Utf8, Eastvale).Value.Keys);
    }

    [Fact]
    public void Writing_no_key_or_a_key_of_somebody_else_is_a_fault_of_the_calling_code()
    {
        Assert.Throws<ArgumentException>(() => DidDocument.Write(Eastvale, []));
        Assert.Throws<ArgumentException>(() => DidDocument.Write(DidWeb.For("other.example").Value, [Present]));
    }

    [Fact]
    public void Joined_rings_hold_the_keys_of_both_and_the_later_word_on_a_key_stands()
    {
        KeyRing joined = new KeyRing([Present, Former]).With(new KeyRing([Present with { Revoked = Now }]));
        Assert.Equal(2, joined.Keys.Count);
        Assert.Equal(Now, joined.Find(Present.Id)!.Revoked);
    }

    private static void Refused(Action<JsonObject> change)
    {
        JsonObject document = Parse(DidDocument.Write(Eastvale, [Present]));
        change(document);
        Assert.False(DidDocument.Read(Encoding.UTF8.GetBytes(document.ToJsonString()), Eastvale).IsOk);
    }

    private static JsonObject Parse(CanonicalText text) => StrictJson.ReadObject(text.Utf8).Value;

    private static IssuerKey Named(string name)
    {
        using SigningKey key = Key(name);
        return new IssuerKey(KeyId.For(Eastvale, key.PublicKey), key.PublicKey);
    }
}
