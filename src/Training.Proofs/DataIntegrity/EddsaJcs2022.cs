using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Signing;

namespace Training.Proofs.DataIntegrity;

/// <summary>
/// The suite eddsa-jcs-2022 of the W3C Recommendation Data Integrity EdDSA Cryptosuites 1.0, section 3.3: RFC 8785,
/// SHA-256, Ed25519.
/// </summary>
public static class EddsaJcs2022
{
    /// <summary>The suite's name.</summary>
    public const string Name = "eddsa-jcs-2022";

    /// <summary>How far the clocks of signer and checker may differ.</summary>
    public static readonly TimeSpan ClockSkew = TimeSpan.FromMinutes(5);

    /// <summary>Signs a document: the result is a copy with a proof in it.</summary>
    /// <param name="document">A JSON object without a proof.</param>
    /// <param name="key">The key to sign with.</param>
    /// <param name="keyId">The key's name, under which a checker finds its public half.</param>
    /// <param name="created">When it is signed; whole seconds are enough.</param>
    /// <param name="expires">From when on the proof is not to be relied on; usually left out.</param>
    public static Outcome<JsonObject> Secure(
        JsonObject document, SigningKey key, KeyId keyId, DateTimeOffset created, DateTimeOffset? expires = null)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(key);
        if (document.ContainsKey("proof"))
            return new Refused("The document bears a proof already.");
        JsonObject proof = new()
        {
            ["type"] = DataIntegrityProof.Type,
            ["cryptosuite"] = Name,
            ["created"] = DateTimeStamp.Format(created),
            ["verificationMethod"] = keyId.Value,
            ["proofPurpose"] = DataIntegrityProof.Purpose,
        };
        if (expires is { } end)
            proof["expires"] = DateTimeStamp.Format(end);
        if (document["@context"] is { } context)
            proof["@context"] = context.DeepClone();
        Outcome<byte[]> hashData = HashData(document, proof);
        if (!hashData.IsOk)
            return new Refused(hashData.Sentence);
        proof["proofValue"] = Multibase.EncodeBase58(key.Sign(hashData.Value));
        JsonObject secured = (JsonObject)document.DeepClone();
        secured["proof"] = proof;
        return secured;
    }

    /// <summary>Checks everything about a document's proof: its shape, its key, its times and its signature.</summary>
    /// <param name="secured">The document with its proof.</param>
    /// <param name="keys">The keys that are trusted for whoever signed.</param>
    /// <param name="now">The instant of checking.</param>
    /// <returns>The proof, or why it does not hold.</returns>
    public static Outcome<DataIntegrityProof> Verify(JsonObject secured, KeyRing keys, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(keys);
        Outcome<DataIntegrityProof> read = DataIntegrityProof.Read(secured);
        if (!read.IsOk)
            return read;
        if (keys.Find(read.Value.Key) is not { } key)
            return new Refused($"The key {read.Value.Key} is not one of the known keys.");
        return key.StandingAt(now) switch
        {
            KeyStanding.Expired => new Refused($"The key {key.Id} ended on {DateTimeStamp.Day(key.Expires!.Value)}."),
            KeyStanding.Revoked => new Refused($"The key {key.Id} was given up on {DateTimeStamp.Day(key.Revoked!.Value)}."),
            _ => !Fits(secured, read.Value, key.PublicKey)
                ? new Refused("The signature does not fit the document: it was altered, or another key signed it.")
                : Timely(read.Value, now),
        };
    }

    /// <summary>Whether the signature is that key's over exactly this document and this proof.</summary>
    public static bool Fits(JsonObject secured, DataIntegrityProof proof, Ed25519PublicKey key)
    {
        ArgumentNullException.ThrowIfNull(secured);
        ArgumentNullException.ThrowIfNull(proof);
        ArgumentNullException.ThrowIfNull(key);
        JsonObject unsecured = (JsonObject)secured.DeepClone();
        unsecured.Remove("proof");
        Outcome<byte[]> hashData = HashData(unsecured, proof.Options);
        return hashData.IsOk && key.Verify(hashData.Value, proof.Signature);
    }

    /// <summary>Whether the proof was made by now and has not run out; its signature must have been checked before.</summary>
    public static Outcome<DataIntegrityProof> Timely(DataIntegrityProof proof, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(proof);
        if (proof.Created > now + ClockSkew)
            return new Refused($"The proof says that it will be made on {DateTimeStamp.Day(proof.Created)}.");
        return proof.Expires <= now
            ? new Refused($"The proof ran out on {DateTimeStamp.Day(proof.Expires.Value)}.")
            : proof;
    }

    /// <summary>The 64 bytes that are signed: the hash of the proof's options first, then that of the document.</summary>
    internal static Outcome<byte[]> HashData(JsonObject unsecured, JsonObject options)
    {
        Outcome<CanonicalText> optionsText = Jcs.Canonicalize(options);
        Outcome<CanonicalText> documentText = Jcs.Canonicalize(unsecured);
        if (!optionsText.IsOk || !documentText.IsOk)
            return new Refused(optionsText.IsOk ? documentText.Sentence : optionsText.Sentence);
        return (byte[])[.. optionsText.Value.Digest.Bytes, .. documentText.Value.Digest.Bytes];
    }
}
