using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Signing;

namespace Training.Proofs.Log;

/// <summary>What a log was at some instant.</summary>
/// <param name="Origin">Which log: a name that never changes, such as the DID of its keeper.</param>
/// <param name="Size">How many entries it had.</param>
/// <param name="RootHash">Its root hash then.</param>
/// <param name="Time">When this was said.</param>
public sealed record Checkpoint(string Origin, long Size, Sha256Digest RootHash, DateTimeOffset Time);

/// <summary>
/// A checkpoint that the log's keeper signed. Whoever holds one can tell later whether what stood in the log then
/// still stands there. The format is this project's own: a canonical JSON object with the members type, origin, size,
/// rootHash, time and key; the Ed25519 signature is over that object's bytes and is added as the member signature.
/// </summary>
public sealed class SignedCheckpoint
{
    private const string Type = "LogCheckpoint";

    private readonly byte[] signature;

    private SignedCheckpoint(Checkpoint checkpoint, KeyId key, byte[] signature)
        => (Checkpoint, Key, this.signature) = (checkpoint, key, signature);

    /// <summary>What was signed; not to be believed before <see cref="Verify"/> said so.</summary>
    public Checkpoint Checkpoint { get; }

    /// <summary>Which key is said to have signed.</summary>
    public KeyId Key { get; }

    /// <summary>Signs a checkpoint.</summary>
    public static SignedCheckpoint Sign(Checkpoint checkpoint, SigningKey key, KeyId keyId)
    {
        ArgumentNullException.ThrowIfNull(checkpoint);
        ArgumentNullException.ThrowIfNull(key);
        return new(checkpoint, keyId, key.Sign(Jcs.Must(Unsigned(checkpoint, keyId)).Utf8));
    }

    /// <summary>Reads what <see cref="Write"/> wrote.</summary>
    public static Outcome<SignedCheckpoint> Read(ReadOnlySpan<byte> utf8)
    {
        Outcome<JsonObject> read = StrictJson.ReadObject(utf8);
        if (!read.IsOk)
            return new Refused(read.Sentence);
        JsonObject members = read.Value;
        Outcome<Sha256Digest> root = Sha256Digest.Parse(members.TextOf("rootHash"));
        Outcome<DateTimeOffset> time = DateTimeStamp.Parse(members.TextOf("time"));
        Outcome<KeyId> key = KeyId.Parse(members.TextOf("key"));
        Outcome<byte[]> signature = Multibase.DecodeBase58(members.TextOf("signature"));
        if (members.TextOf("type") != Type || members.Count != 7
            || members.TextOf("origin") is not { Length: > 0 } origin || members.CountOf("size") is not { } size
            || !root.IsOk || !time.IsOk || !key.IsOk
            || !signature.IsOk || signature.Value.Length != Ed25519PublicKey.SignatureLength)
            return new Refused("The document is not a signed checkpoint of a log.");
        return new SignedCheckpoint(new(origin, size, root.Value, time.Value), key.Value, signature.Value);
    }

    /// <summary>The checkpoint as it is stored and handed out.</summary>
    public CanonicalText Write()
    {
        JsonObject members = Unsigned(Checkpoint, Key);
        members["signature"] = Multibase.EncodeBase58(signature);
        return Jcs.Must(members);
    }

    /// <summary>Checks key, signature and time.</summary>
    /// <param name="keys">The keys that are trusted for the log's keeper.</param>
    /// <param name="now">The instant of checking.</param>
    /// <returns>The checkpoint, or why it is not to be believed.</returns>
    public Outcome<Checkpoint> Verify(KeyRing keys, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(keys);
        if (keys.Find(Key) is not { } key)
            return new Refused($"The checkpoint is signed by {Key}, which is not one of the known keys.");
        if (key.StandingAt(now) is not KeyStanding.Good and var standing)
            return new Refused($"The checkpoint is signed by {Key}, which is {(standing == KeyStanding.Expired ? "expired" : "revoked")}.");
        if (!Fits(key.PublicKey))
            return new Refused("The checkpoint's signature does not fit.");
        return Checkpoint.Time > now + DataIntegrity.EddsaJcs2022.ClockSkew
            ? new Refused($"The checkpoint bears the time {DateTimeStamp.Format(Checkpoint.Time)}, which is yet to come.")
            : Checkpoint;
    }

    /// <summary>Whether the signature is that key's over this checkpoint, whatever the key's standing.</summary>
    internal bool Fits(Ed25519PublicKey key) => key.Verify(Jcs.Must(Unsigned(Checkpoint, Key)).Utf8, signature);

    private static JsonObject Unsigned(Checkpoint checkpoint, KeyId key) => new()
    {
        ["type"] = Type,
        ["origin"] = checkpoint.Origin,
        ["size"] = checkpoint.Size,
        ["rootHash"] = checkpoint.RootHash.ToString(),
        ["time"] = DateTimeStamp.Format(checkpoint.Time),
        ["key"] = key.Value,
    };
}
