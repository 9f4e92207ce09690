using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.DataIntegrity;
using Training.Proofs.Signing;

namespace Training.Proofs.Tests.DataIntegrity;

/// <summary>The test vector of W3C Data Integrity EdDSA Cryptosuites 1.0 (Recommendation of 15 May 2025), appendix B.3.</summary>
public class W3cVectorTests
{
    private const string SecretKey = "z3u2en7t5LR2WtQH5PfFqMqwVHBeXouLzo6haApm8XHqvjxq";
    private const string PublicKey = "z6MkrJVnaZkeFzdQyMZu1cgjg7k1pZZ6pvBQ7XJPt4swbTQ2";
    private const string DocumentHash = "59b7cb6251b8991add1ce0bc83107e3db9dbbab5bd2c28f687db1a03abc92f19";
    private const string ProofHash = "66ab154f5c2890a140cb8388a22a160454f80575f6eae09e5a097cabe539a1db";
    private const string ProofValue = "z2HnFSSPPBzR36zdDgK8PbEHeXbR56YF24jwMpt3R1eHXQzJDMWS93FCzpvJpwTWd3GAVFuUfjoJdcnTMuVor51aX";
    private const string Signature = "407cd12654b33d718ecbb99179a1506daaa849450bf3fc523cce3e1c96f8b80351da3f253d725c6f00b07c9e5448d50b3ef78012b9ab54255116d069c6dd2808";

    private static readonly DateTimeOffset Created = new(2023, 2, 24, 23, 36, 38, TimeSpan.Zero);
    private static readonly KeyId Id = KeyId.Parse($"did:key:{PublicKey}#{PublicKey}").Value;

    [Fact]
    public void Each_step_gives_the_published_bytes()
    {
        JsonObject unsigned = Object("unsigned.json");
        JsonObject options = Object("proofConfigJCS.json");
        CanonicalText document = Jcs.Canonicalize(unsigned).Value;
        CanonicalText config = Jcs.Canonicalize(options).Value;
        Assert.Equal(SharedReference.Text("w3c-eddsa-jcs-2022/canonDocJCS.txt"), document.ToString());
        Assert.Equal(SharedReference.Text("w3c-eddsa-jcs-2022/proofCanonJCS.txt"), config.ToString());
        Assert.Equal(DocumentHash, document.Digest.ToString());
        Assert.Equal(ProofHash, config.Digest.ToString());
        Assert.Equal(ProofHash + DocumentHash, Convert.ToHexStringLower(EddsaJcs2022.HashData(unsigned, options).Value));
    }

    // Needs no file: the hashes, the key and the signature are facts.
    [Fact]
    public void The_published_hashes_proof_first_are_signed_with_the_published_signature()
    {
        using SigningKey key = SigningKey.FromSecretMultikey(SecretKey).Value;
        byte[] signature = key.Sign(Convert.FromHexString(ProofHash + DocumentHash));
        Assert.Equal(Signature, Convert.ToHexStringLower(signature));
        Assert.Equal(ProofValue, Multibase.EncodeBase58(signature));
        Assert.False(key.PublicKey.Verify(Convert.FromHexString(DocumentHash + ProofHash), signature));
    }

    [Fact]
    public void Signing_the_published_document_gives_the_published_secured_document()
    {
        using SigningKey key = SigningKey.FromSecretMultikey(SecretKey).Value;
        JsonObject secured = EddsaJcs2022.Secure(Object("unsigned.json"), key, Id, Created).Value;
        Assert.Equal(ProofValue, (string?)secured["proof"]!["proofValue"]);
        Assert.Equal(Jcs.Canonicalize(Object("signedJCS.json")).Value, Jcs.Canonicalize(secured).Value);
    }

    [Fact]
    public void The_published_secured_document_holds()
    {
        KeyRing keys = new([new IssuerKey(Id, Ed25519PublicKey.FromMultikey(PublicKey).Value)]);
        var proof = EddsaJcs2022.Verify(Object("signedJCS.json"), keys, Created.AddYears(3));
        Assert.True(proof.IsOk);
        Assert.Equal(Created, proof.Value.Created);
    }

    private static JsonObject Object(string name) =>
        StrictJson.ReadObject(SharedReference.Bytes($"w3c-eddsa-jcs-2022/{name}")).Value;
}
