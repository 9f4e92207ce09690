using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using Training.Proofs.CanonicalJson;
using Training.Proofs.DataIntegrity;
using Training.Proofs.Signing;
using Training.Proofs.Tests.CanonicalJson;
using static Training.Proofs.Tests.TestKeys;

namespace Training.Proofs.Tests.DataIntegrity;

public sealed class EddsaJcs2022Tests : IDisposable
{
    private readonly SigningKey key = Key("first");
    private readonly SigningKey other = Key("other");

    public void Dispose()
    {
        key.Dispose();
        other.Dispose();
    }

    [Fact]
    public void What_is_signed_holds() => Assert.True(Verify(Secured()).IsOk);

    [Fact]
    public void Any_document_that_is_signed_holds_after_it_was_sent() =>
        JcsTests.Documents.Where(document => !document.ContainsKey("proof")).Sample(document =>
        {
            JsonObject secured = EddsaJcs2022.Secure(document, key, Id(key), Now).Value;
            JsonObject received = StrictJson.ReadObject(Jcs.Canonicalize(secured).Value.Utf8).Value;
            Assert.True(Verify(received).IsOk);
        });

    [Fact]
    public void The_proof_carries_the_contexts_of_the_document() =>
        Assert.True(JsonNode.DeepEquals(Secured()["@context"], Secured()["proof"]!["@context"]));

    [Fact]
    public void Every_flipped_bit_of_every_byte_is_found()
    {
        byte[] text = Jcs.Canonicalize(Secured()).Value.Utf8.ToArray();
        for (int bit = 0; bit < text.Length * 8; bit++)
        {
            byte[] altered = [.. text];
            altered[bit / 8] ^= (byte)(1 << (bit % 8));
            var read = StrictJson.ReadObject(altered);
            Assert.False(read.IsOk && Verify(read.Value).IsOk, Encoding.UTF8.GetString(altered));
        }
    }

    [Fact]
    public void Every_letter_that_is_left_out_is_found()
    {
        string text = Jcs.Canonicalize(Secured()).Value.ToString();
        for (int i = 0; i < text.Length; i++)
        {
            var read = StrictJson.ReadObject(Encoding.UTF8.GetBytes(text.Remove(i, 1)));
            Assert.False(read.IsOk && Verify(read.Value).IsOk, text.Remove(i, 1));
        }
    }

    [Fact]
    public void Two_names_that_changed_places_are_found()
    {
        JsonObject secured = Secured();
        (secured["examiner"], secured["technician"]) = (secured["technician"]!.DeepClone(), secured["examiner"]!.DeepClone());
        Assert.Contains("does not fit", Verify(secured).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Another_spelling_of_the_same_data_is_no_alteration()
    {
        string spaced = Secured().ToJsonString(new() { WriteIndented = true });
        Assert.True(Verify(StrictJson.ReadObject(Encoding.UTF8.GetBytes(spaced)).Value).IsOk);
    }

    [Fact]
    public void A_member_that_was_added_is_found() => Altered(secured => secured["note"] = "");

    [Fact]
    public void A_member_of_the_proof_that_was_added_is_found() => Altered(secured => secured["proof"]!["note"] = "");

    [Fact]
    public void A_context_that_was_added_is_found()
    {
        Altered(secured => secured["@context"]!.AsArray().Add("https://elsewhere.example/words"));
        Altered(secured =>
        {
            secured["@context"]!.AsArray().Add("https://elsewhere.example/words");
            secured["proof"]!["@context"] = secured["@context"]!.DeepClone();
        });
    }

    [Fact]
    public void A_signature_of_another_key_under_the_same_name_is_found()
    {
        JsonObject secured = EddsaJcs2022.Secure(Document(), other, Id(key), Now).Value;
        Assert.Contains("does not fit", Verify(secured).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Naming_another_known_key_is_found()
    {
        JsonObject secured = Secured();
        secured["proof"]!["verificationMethod"] = Id(other).Value;
        Assert.False(EddsaJcs2022.Verify(secured, Ring(key, other), Now).IsOk);
    }

    [Fact]
    public void A_key_that_is_not_known_proves_nothing_even_where_the_document_brings_it_along()
    {
        JsonObject document = Document();
        document["publicKeyMultibase"] = other.PublicKey.Multikey;
        document["jwk"] = new JsonObject { ["kty"] = "OKP", ["crv"] = "Ed25519" };
        KeyId id = KeyId.Parse($"did:key:{other.PublicKey.Multikey}#{other.PublicKey.Multikey}").Value;
        JsonObject secured = EddsaJcs2022.Secure(document, other, id, Now).Value;
        Assert.Contains("not one of the known keys", Verify(secured).Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("cryptosuite", "eddsa-rdfc-2022")]
    [InlineData("cryptosuite", "ecdsa-jcs-2019")]
    [InlineData("cryptosuite", "none")]
    [InlineData("cryptosuite", "EDDSA-JCS-2022")]
    [InlineData("cryptosuite", null)]
    [InlineData("type", "Ed25519Signature2020")]
    [InlineData("type", null)]
    [InlineData("proofPurpose", "authentication")]
    [InlineData("proofPurpose", null)]
    [InlineData("created", "2026-03-01")]
    [InlineData("created", null)]
    [InlineData("expires", "never")]
    [InlineData("proofValue", "")]
    [InlineData("proofValue", "z")]
    [InlineData("proofValue", null)]
    [InlineData("verificationMethod", "did:web:eastvale.example")]
    [InlineData("verificationMethod", null)]
    [InlineData("previousProof", "urn:uuid:1")]
    public void A_proof_of_another_kind_or_shape_is_refused_before_any_key_is_looked_for(string member, string? value)
    {
        JsonObject secured = Secured();
        secured["proof"]![member] = value;
        Assert.False(DataIntegrityProof.Read(secured).IsOk);
        Assert.False(Verify(secured).IsOk);
    }

    // The purpose is signed: a proof made for another purpose is refused although its signature fits.
    [Fact]
    public void A_proof_that_was_made_for_another_purpose_is_refused()
    {
        JsonObject document = Document();
        JsonObject proof = (JsonObject)Secured()["proof"]!.DeepClone();
        proof.Remove("proofValue");
        proof["proofPurpose"] = "authentication";
        proof["proofValue"] = Multibase.EncodeBase58(key.Sign(EddsaJcs2022.HashData(document, proof).Value));
        document["proof"] = proof;
        Assert.False(Verify(document).IsOk);
    }

    [Fact]
    public void None_or_more_than_one_proof_is_refused()
    {
        Assert.False(Verify(Document()).IsOk);
        Altered(secured => secured["proof"] = new JsonArray(secured["proof"]!.DeepClone()));
        Altered(secured => secured["proof"] = new JsonArray(secured["proof"]!.DeepClone(), secured["proof"]!.DeepClone()));
        Altered(secured => secured["proof"] = "none");
    }

    [Fact]
    public void A_proof_runs_out_at_the_instant_that_it_says()
    {
        JsonObject secured = EddsaJcs2022.Secure(Document(), key, Id(key), Now, Now.AddDays(1)).Value;
        Assert.True(EddsaJcs2022.Verify(secured, Ring(key), Now.AddDays(1).AddTicks(-1)).IsOk);
        Assert.False(EddsaJcs2022.Verify(secured, Ring(key), Now.AddDays(1)).IsOk);
    }

    [Fact]
    public void A_proof_of_a_time_yet_to_come_is_refused_but_clocks_may_differ_by_minutes()
    {
        Assert.True(EddsaJcs2022.Verify(Secured(), Ring(key), Now - EddsaJcs2022.ClockSkew).IsOk);
        Assert.False(EddsaJcs2022.Verify(Secured(), Ring(key), Now - EddsaJcs2022.ClockSkew - TimeSpan.FromSeconds(1)).IsOk);
    }

    [Fact]
    public void An_expired_or_revoked_key_proves_nothing()
    {
        IssuerKey good = new(Id(key), key.PublicKey);
        Assert.Contains("ended", EddsaJcs2022.Verify(Secured(), new([good with { Expires = Now }]), Now).Sentence, StringComparison.Ordinal);
        Assert.Contains("given up", EddsaJcs2022.Verify(Secured(), new([good with { Revoked = Now }]), Now).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_document_that_bears_a_proof_already_is_not_signed_again() =>
        Assert.False(EddsaJcs2022.Secure(Secured(), key, Id(key), Now).IsOk);

    [Fact]
    public void Signing_and_checking_leave_the_document_as_it_is()
    {
        JsonObject document = Document();
        JsonObject secured = EddsaJcs2022.Secure(document, key, Id(key), Now).Value;
        string before = secured.ToJsonString();
        Verify(secured);
        Assert.Equal(before, secured.ToJsonString());
        Assert.True(JsonNode.DeepEquals(Document(), document));
    }

    private void Altered(Action<JsonObject> change)
    {
        JsonObject secured = Secured();
        change(secured);
        Assert.False(Verify(secured).IsOk);
    }

    private JsonObject Secured() => EddsaJcs2022.Secure(Document(), key, Id(key), Now).Value;

    private Outcome<DataIntegrityProof> Verify(JsonObject secured) => EddsaJcs2022.Verify(secured, Ring(key), Now);

    private static KeyId Id(SigningKey key) => KeyId.For(Eastvale, key.PublicKey);

    private static JsonObject Document() => new()
    {
        ["@context"] = new JsonArray("https://www.w3.org/ns/credentials/v2"),
        ["technician"] = "Amara Nwosu",
        ["examiner"] = "Jiří Dvořák",
        ["run"] = new JsonObject { ["minutes"] = 42.5, ["passed"] = true, ["note"] = null },
    };
}
