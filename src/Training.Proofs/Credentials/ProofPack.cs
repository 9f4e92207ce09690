using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Log;
using Training.Proofs.Signing;

namespace Training.Proofs.Credentials;

/// <summary>
/// Everything that it takes to check credentials without a network, in one file: the credentials, the status lists that
/// they name, a checkpoint of the log, and the issuer's key document. The form is this project's own; each part is of an
/// open standard or signed by itself. Whoever made the file chose the keys in it: compare them with the issuer's address.
/// </summary>
/// <param name="Credentials">The signed credentials.</param>
/// <param name="StatusLists">The signed status lists.</param>
/// <param name="Checkpoint">The checkpoint for whose size the places in the log are told; null where there is none.</param>
/// <param name="Issuer">The issuer's key document, did.json.</param>
public sealed record ProofPack(
    IReadOnlyList<JsonObject> Credentials, IReadOnlyList<JsonObject> StatusLists, SignedCheckpoint? Checkpoint, JsonObject Issuer)
{
    /// <summary>How many bytes a pack may have: 16 MiB.</summary>
    public const int MostBytes = 1 << 24;

    private const string Type = "ProofPack";

    /// <summary>Who was competent on the days of a job (<see cref="JobDays"/>), signed; null where the pack is about no job.</summary>
    public JsonObject? Job { get; init; }

    /// <summary>The keys that the file itself names.</summary>
    public KeyRing OwnKeys => KeyDocuments.Read([Issuer]);

    /// <summary>Whether a document says that it is a pack.</summary>
    public static bool IsPack(JsonObject document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return document.TextOf("type") == Type;
    }

    /// <summary>Writes the pack.</summary>
    public CanonicalText Write()
    {
        JsonObject pack = new()
        {
            ["type"] = Type,
            ["issuer"] = Issuer.DeepClone(),
            ["credentials"] = new JsonArray([.. Credentials.Select(credential => credential.DeepClone())]),
            ["statusLists"] = new JsonArray([.. StatusLists.Select(list => list.DeepClone())]),
        };
        if (Checkpoint is not null)
            pack["checkpoint"] = StrictJson.ReadObject(Checkpoint.Write().Utf8).Value;
        if (Job is not null)
            pack["job"] = Job.DeepClone();
        return Jcs.Must(pack);
    }

    /// <summary>Reads what <see cref="Write"/> wrote; refused where a part is missing.</summary>
    public static Outcome<ProofPack> Read(JsonObject pack)
    {
        ArgumentNullException.ThrowIfNull(pack);
        if (!IsPack(pack) || pack["issuer"] is not JsonObject issuer || Objects(pack["credentials"]) is not { Count: > 0 } credentials
            || Objects(pack["statusLists"]) is not { } lists)
            return new Refused("The file is not a whole proof pack.");
        SignedCheckpoint? checkpoint = null;
        if (pack["checkpoint"] is { } member)
        {
            Outcome<SignedCheckpoint> signed = SignedCheckpoint.Read(Jcs.Must(member).Utf8);
            if (!signed.IsOk)
                return new Refused(signed.Sentence);
            checkpoint = signed.Value;
        }
        // What stands there and is no statement must not pass for none.
        if (pack.ContainsKey("job") && pack["job"] is not JsonObject)
            return new Refused("The file is not a whole proof pack.");
        return new ProofPack(credentials, lists, checkpoint, issuer) { Job = pack["job"] as JsonObject };
    }

    private static List<JsonObject>? Objects(JsonNode? node) =>
        node is JsonArray items && items.All(item => item is JsonObject) ? [.. items.Select(item => (JsonObject)item!)] : null;
}
