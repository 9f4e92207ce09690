using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Signing;

namespace Training.Proofs.DataIntegrity;

/// <summary>The proof that stands in a secured document, read but not yet believed.</summary>
public sealed class DataIntegrityProof
{
    /// <summary>The one type of proof that is read.</summary>
    public const string Type = "DataIntegrityProof";

    /// <summary>The one purpose that is accepted: to say that something is so.</summary>
    public const string Purpose = "assertionMethod";

    private DataIntegrityProof(KeyId key, DateTimeOffset created, DateTimeOffset? expires, byte[] signature, JsonObject options)
        => (Key, Created, Expires, Signature, Options) = (key, created, expires, signature, options);

    /// <summary>Which key is said to have signed.</summary>
    public KeyId Key { get; }

    /// <summary>When it is said to have signed.</summary>
    public DateTimeOffset Created { get; }

    /// <summary>From when on the proof is not to be relied on; often not said.</summary>
    public DateTimeOffset? Expires { get; }

    /// <summary>The 64 bytes of the signature.</summary>
    internal byte[] Signature { get; }

    /// <summary>The proof without its value: what was signed beside the document.</summary>
    internal JsonObject Options { get; }

    /// <summary>
    /// Reads the single proof of a document. Refused: none or several, a proof chain, any suite but
    /// <see cref="EddsaJcs2022.Name"/>, any purpose but <see cref="Purpose"/>, a proof for other contexts than the
    /// document's.
    /// </summary>
    public static Outcome<DataIntegrityProof> Read(JsonObject secured)
    {
        ArgumentNullException.ThrowIfNull(secured);
        if (secured["proof"] is null)
            return new Refused("The document bears no proof.");
        if (secured["proof"] is not JsonObject proof)
            return new Refused("The document bears more than one proof, or none that can be read; one is expected.");
        if (proof.TextOf("type") != Type || proof.TextOf("cryptosuite") != EddsaJcs2022.Name)
            return new Refused($"The proof is not made by the suite {EddsaJcs2022.Name}; no other is accepted.");
        if (proof.TextOf("proofPurpose") != Purpose)
            return new Refused("The proof was not made to assert what the document says.");
        if (proof.ContainsKey("previousProof"))
            return new Refused("The proof is part of a chain; chains are not accepted.");
        // The suite lets others add contexts after signing. Contexts give words their meaning, and nobody has reason
        // to add any to our credentials, so we ask for equality.
        if (proof.ContainsKey("@context") && !JsonNode.DeepEquals(proof["@context"], secured["@context"]))
            return new Refused("The document's contexts are not the ones that were signed.");
        return ReadMembers(proof);
    }

    private static Outcome<DataIntegrityProof> ReadMembers(JsonObject proof)
    {
        Outcome<KeyId> key = KeyId.Parse(proof.TextOf("verificationMethod"));
        if (!key.IsOk)
            return new Refused(key.Sentence);
        Outcome<DateTimeOffset> created = DateTimeStamp.Parse(proof.TextOf("created"));
        if (!created.IsOk)
            return new Refused("The proof does not say when it was made.");
        Outcome<DateTimeOffset?> expires = proof.InstantOf("expires");
        if (!expires.IsOk)
            return new Refused(expires.Sentence);
        Outcome<byte[]> signature = Multibase.DecodeBase58(proof.TextOf("proofValue"));
        if (!signature.IsOk || signature.Value.Length != Ed25519PublicKey.SignatureLength)
            return new Refused("The proof's value is not an Ed25519 signature.");
        JsonObject options = (JsonObject)proof.DeepClone();
        options.Remove("proofValue");
        return new DataIntegrityProof(key.Value, created.Value, expires.Value, signature.Value, options);
    }
}
