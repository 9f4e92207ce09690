using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.DataIntegrity;
using Training.Proofs.Log;
using Training.Proofs.Signing;

namespace Training.Proofs.Credentials;

/// <summary>
/// Everything that it takes to check credentials without a network, in one file: the credentials, the status lists that
/// they name, a checkpoint of the log, what the log tells of each record, and the issuer's key document. The form is this
/// project's own; each part is of an open standard or signed by itself, and the whole is signed once more, so that
/// nothing can be left out of it or put into it. Whoever made the file chose the keys in it: compare them with the
/// issuer's address.
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
    private static readonly HashSet<string> Known = ["type", "issuer", "credentials", "statusLists", "checkpoint", "job", "histories", "proof"];

    /// <summary>Who was competent on the days of a job (<see cref="JobDays"/>), signed; null where the pack is about no job.</summary>
    public JsonObject? Job { get; init; }

    /// <summary>
    /// Of each record, by its credential's identifier, every entry of the log since it was issued, up to the checkpoint.
    /// That none is left out is the issuer's word: believe it where <see cref="CheckWhole"/> passes.
    /// </summary>
    public IReadOnlyDictionary<string, IReadOnlyList<LogInclusion>> Histories { get; init; } = new Dictionary<string, IReadOnlyList<LogInclusion>>();

    /// <summary>Whether somebody signed the file as a whole. Files of before that are not.</summary>
    public bool IsSigned => Secured is not null;

    /// <summary>The keys that the file itself names.</summary>
    public KeyRing OwnKeys => KeyDocuments.Read([Issuer]);

    private JsonObject? Secured { get; init; }

    /// <summary>Whether a document says that it is a pack.</summary>
    public static bool IsPack(JsonObject document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return document.TextOf("type") == Type;
    }

    /// <summary>Signs the whole and writes it.</summary>
    /// <param name="key">The issuer's key.</param>
    /// <param name="keyId">Its name in <see cref="Issuer"/>.</param>
    /// <param name="created">When it is signed.</param>
    public CanonicalText Sign(SigningKey key, KeyId keyId, DateTimeOffset created) =>
        Jcs.Must(EddsaJcs2022.Secure(Members(), key, keyId, created).Value);

    /// <summary>Writes the pack without signing the whole.</summary>
    public CanonicalText Write() => Jcs.Must(Members());

    /// <summary>Reads what <see cref="Sign"/> or <see cref="Write"/> wrote; refused where a part is missing or is none of these.</summary>
    public static Outcome<ProofPack> Read(JsonObject pack)
    {
        ArgumentNullException.ThrowIfNull(pack);
        if (pack.FirstOrDefault(member => !Known.Contains(member.Key)).Key is { } unknown)
            return new Refused($"The file holds something that no proof file has: \"{unknown}\".");
        // What stands there and is no statement must not pass for none.
        if (!IsPack(pack) || pack["issuer"] is not JsonObject issuer || Objects(pack["credentials"]) is not { Count: > 0 } credentials
            || Objects(pack["statusLists"]) is not { } lists
            || (pack.ContainsKey("job") && pack["job"] is not JsonObject)
            || (pack.ContainsKey("proof") && pack["proof"] is not JsonObject))
            return new Refused("The file is not a whole proof pack.");
        Outcome<Dictionary<string, IReadOnlyList<LogInclusion>>> histories = HistoriesOf(pack);
        if (!histories.IsOk)
            return new Refused(histories.Sentence);
        SignedCheckpoint? checkpoint = null;
        if (pack.ContainsKey("checkpoint"))
        {
            Outcome<SignedCheckpoint> signed = pack["checkpoint"] is { } member
                ? SignedCheckpoint.Read(Jcs.Must(member).Utf8) : new Refused("The file is not a whole proof pack.");
            if (!signed.IsOk)
                return new Refused(signed.Sentence);
            checkpoint = signed.Value;
        }
        return new ProofPack(credentials, lists, checkpoint, issuer)
        {
            Job = pack["job"] as JsonObject,
            Histories = histories.Value,
            Secured = pack.ContainsKey("proof") ? pack : null,
        };
    }

    /// <summary>Whether the issuer of every credential signed the file as it is.</summary>
    /// <param name="keys">The keys that are trusted.</param>
    /// <param name="now">The instant of checking.</param>
    /// <returns>When it was signed, or why it is not to be believed as a whole.</returns>
    public Outcome<DateTimeOffset> CheckWhole(KeyRing keys, DateTimeOffset now)
    {
        if (Secured is null)
            return new Refused("The file is not signed as a whole.");
        Outcome<DataIntegrityProof> proof = EddsaJcs2022.Verify(Secured, keys, now);
        if (!proof.IsOk)
            return new Refused(proof.Sentence);
        KeyId signer = proof.Value.Key;
        if (OwnKeys.Find(signer) is null)
            return new Refused($"The key document in the file does not have the key that signed it, {signer}.");
        return Credentials.All(credential => (credential["issuer"] as JsonObject)?.TextOf("id") == signer.Controller)
            ? proof.Value.Created
            : new Refused("Somebody else than the issuer of its credentials signed the file.");
    }

    private JsonObject Members()
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
        if (Histories.Count > 0)
        {
            pack["histories"] = new JsonArray([.. Histories.Select(history => new JsonObject
            {
                ["record"] = history.Key,
                ["entries"] = new JsonArray([.. history.Value.Select(entry => entry.Members())]),
            })]);
        }
        return pack;
    }

    private static Outcome<Dictionary<string, IReadOnlyList<LogInclusion>>> HistoriesOf(JsonObject pack)
    {
        Dictionary<string, IReadOnlyList<LogInclusion>> histories = [];
        if (!pack.ContainsKey("histories"))
            return histories;
        Refused malformed = new("The file does not tell what happened to its records as it should.");
        if (Objects(pack["histories"]) is not { } items)
            return malformed;
        foreach (JsonObject item in items)
        {
            if (item.Count != 2 || item.TextOf("record") is not { } record || Objects(item["entries"]) is not { } entries)
                return malformed;
            List<LogInclusion> history = [];
            foreach (JsonObject entry in entries)
            {
                Outcome<LogInclusion> read = LogInclusion.Read(entry);
                if (!read.IsOk)
                    return new Refused(read.Sentence);
                history.Add(read.Value);
            }
            if (!histories.TryAdd(record, history))
                return malformed;
        }
        return histories;
    }

    private static List<JsonObject>? Objects(JsonNode? node) =>
        node is JsonArray items && items.All(item => item is JsonObject) ? [.. items.Select(item => (JsonObject)item!)] : null;
}
