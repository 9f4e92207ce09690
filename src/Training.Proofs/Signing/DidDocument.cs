using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;

namespace Training.Proofs.Signing;

/// <summary>
/// The document that stands at <see cref="DidWeb.DocumentUrl"/> and says which keys are whose (Controlled
/// Identifiers 1.0 and DID Core 1.0). All keys ever used stay in it, so that old credentials can still be checked.
/// </summary>
public static class DidDocument
{
    /// <summary>Writes the document, to be served as it is.</summary>
    /// <param name="subject">Whose document it is.</param>
    /// <param name="keys">The keys, the present one first.</param>
    /// <exception cref="ArgumentException">No key, or a key of somebody else.</exception>
    public static CanonicalText Write(DidWeb subject, IReadOnlyCollection<IssuerKey> keys)
    {
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(keys);
        if (keys.Count == 0 || keys.Any(key => key.Id.Controller != subject.ToString()))
            throw new ArgumentException($"The document of {subject} needs keys, and only its own.", nameof(keys));
        return Jcs.Must(new JsonObject
        {
            ["@context"] = new JsonArray("https://www.w3.org/ns/did/v1", "https://www.w3.org/ns/cid/v1"),
            ["id"] = subject.ToString(),
            ["verificationMethod"] = new JsonArray([.. keys.Select(Method)]),
            ["assertionMethod"] = new JsonArray([.. keys.Select(key => JsonValue.Create(key.Id.Value))]),
        });
    }

    /// <summary>
    /// Reads a document into the keys that may sign assertions. Refused where it speaks of somebody else than asked
    /// for, or where a listed Multikey is not an Ed25519 key of its subject; methods of other types are left out.
    /// </summary>
    public static Outcome<KeyRing> Read(ReadOnlySpan<byte> utf8, DidWeb subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        Outcome<JsonObject> read = StrictJson.ReadObject(utf8);
        if (!read.IsOk)
            return new Refused(read.Sentence);
        if (read.Value.TextOf("id") != subject.ToString())
            return new Refused($"The document does not speak of {subject}.");
        if (read.Value["verificationMethod"] is not JsonArray methods || read.Value["assertionMethod"] is not JsonArray assertions)
            return new Refused("The document names no keys for signing assertions.");
        HashSet<string> asserting = [.. assertions.Select(entry => entry.AsText()).OfType<string>()];
        Dictionary<KeyId, IssuerKey> keys = [];
        foreach (JsonObject method in methods.OfType<JsonObject>())
        {
            if (method.TextOf("type") != "Multikey" || !asserting.Contains(method.TextOf("id") ?? ""))
                continue;
            Outcome<IssuerKey> key = ReadMethod(method, subject);
            if (!key.IsOk)
                return new Refused(key.Sentence);
            if (!keys.TryAdd(key.Value.Id, key.Value))
                return new Refused($"The document names the key {key.Value.Id} twice.");
        }
        return keys.Count == 0 ? new Refused("The document names no Ed25519 key.") : new KeyRing(keys.Values);
    }

    private static JsonObject Method(IssuerKey key)
    {
        JsonObject method = new()
        {
            ["id"] = key.Id.Value,
            ["type"] = "Multikey",
            ["controller"] = key.Id.Controller,
            ["publicKeyMultibase"] = key.PublicKey.Multikey,
        };
        if (key.Expires is { } expires)
            method["expires"] = DateTimeStamp.Format(expires);
        if (key.Revoked is { } revoked)
            method["revoked"] = DateTimeStamp.Format(revoked);
        return method;
    }

    private static Outcome<IssuerKey> ReadMethod(JsonObject method, DidWeb subject)
    {
        Outcome<KeyId> id = KeyId.Parse(method.TextOf("id"));
        if (!id.IsOk)
            return new Refused(id.Sentence);
        if (id.Value.Controller != subject.ToString() || method.TextOf("controller") != subject.ToString())
            return new Refused($"The key {id.Value} is not said to be a key of {subject}.");
        Outcome<Ed25519PublicKey> key = Ed25519PublicKey.FromMultikey(method.TextOf("publicKeyMultibase"));
        if (!key.IsOk)
            return new Refused($"The key {id.Value} cannot be used: {key.Sentence}");
        Outcome<DateTimeOffset?> expires = method.InstantOf("expires");
        if (!expires.IsOk)
            return new Refused(expires.Sentence);
        Outcome<DateTimeOffset?> revoked = method.InstantOf("revoked");
        return revoked.IsOk
            ? new IssuerKey(id.Value, key.Value, expires.Value, revoked.Value)
            : new Refused(revoked.Sentence);
    }
}
