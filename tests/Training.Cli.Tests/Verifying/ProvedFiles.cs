using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using Training.Proofs;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Credentials;
using Training.Proofs.DataIntegrity;
using Training.Proofs.Log;
using Training.Proofs.Signing;
using Training.Proofs.StatusLists;

namespace Training.Cli.Tests.Verifying;

/// <summary>Files of an invented provider, made by the keys that a test gives.</summary>
internal sealed class ProvedFiles(string keyName = "eastvale") : IDisposable
{
    public static readonly DateTimeOffset Now = DateTimeOffset.UtcNow;
    private static readonly DidWeb Did = DidWeb.For("eastvale.example").Value;
    private static readonly Uri Record = new("urn:uuid:0f3c2a52-6a0e-4f7e-9a55-0d8f6f1c2b11");

    private readonly SigningKey key = SigningKey.FromSeed(SHA256.HashData(Encoding.UTF8.GetBytes(keyName)));

    public string Multikey => key.PublicKey.Multikey;

    public KeyId Id => KeyId.For(Did, key.PublicKey);

    public string Document => DidDocument.Write(Did, [new IssuerKey(Id, key.PublicKey)]).ToString();

    public static LogEntry[] Log =>
    [
        Entry(new() { ["kind"] = "log-begun", ["log"] = "urn:uuid:1" }),
        Entry(new() { ["kind"] = "record-issued", ["record"] = Record.OriginalString }),
        Happened("record-confirmed", -20),
    ];

    public SignedCheckpoint Checkpoint => SignedCheckpoint.Sign(
        new("urn:uuid:1", 3, TreeHead.Of(Log.Select(entry => entry.LeafHash)).Root, Now.AddHours(-1)), key, Id);

    public JsonObject Credential(DateTimeOffset? until = null, LogInclusion? place = null) => EddsaJcs2022.Secure(
        AchievementCredential.Write(new CompetencyCredential
        {
            Id = Record,
            Title = "Electrical isolation",
            Issuer = new IssuerProfile(Did, "Eastvale Training Centre"),
            Recipient = new NamedRecipient("Amara Okafor"),
            Shop = "Quillmoor Coachworks",
            Competency = new CompetencyDefinition(new Uri("urn:example:1"), "Electrical isolation", "It.", "A paper."),
            ValidFrom = Now.AddDays(-30),
            ValidUntil = until ?? Now.AddDays(700),
            Status =
            [
                new(StatusPurpose.Revocation, new Uri("https://eastvale.example/status/withdrawn/1"), 94567),
                new(StatusPurpose.Suspension, new Uri("https://eastvale.example/status/suspended/1"), 94567),
            ],
            Log = place ?? new LogInclusion("urn:uuid:1", Log[1], InclusionProof.Of([.. Log.Select(entry => entry.LeafHash)], 1, 3)) { Checkpoint = Checkpoint },
        }).Value,
        key, Id, Now.AddHours(-1)).Value;

    public JsonObject List(StatusPurpose purpose, params int[] set)
    {
        var word = purpose == StatusPurpose.Revocation ? "withdrawn" : "suspended";
        var list = new StatusList(
            new Uri($"https://eastvale.example/status/{word}/1"), Did, purpose, StatusBitstring.Of(set), Now.AddHours(-1), Now.AddHours(23));
        return EddsaJcs2022.Secure(list.Write(), key, Id, Now.AddHours(-1)).Value;
    }

    public string Pack(JsonObject? credential = null, params int[] withdrawn) => Signed(Whole(credential, withdrawn));

    /// <summary>A pack as it was before packs were signed as a whole.</summary>
    public string OldPack() => Whole(null).Write().ToString();

    /// <summary>A pack whose record was suspended ten days ago and reinstated six days ago.</summary>
    public string PackOfThePast()
    {
        LogEntry[] log = [.. Log, Happened("record-suspended", -10), Happened("record-reinstated", -6)];
        Sha256Digest[] leaves = [.. log.Select(entry => entry.LeafHash)];
        var checkpoint = SignedCheckpoint.Sign(new("urn:uuid:1", log.Length, TreeHead.Of(leaves).Root, Now.AddHours(-1)), key, Id);
        var place = new LogInclusion("urn:uuid:1", log[1], InclusionProof.Of(leaves, 1, log.Length)) { Checkpoint = checkpoint };
        return Signed(Whole(Credential(place: place)) with
        {
            Checkpoint = checkpoint,
            Histories = new Dictionary<string, IReadOnlyList<LogInclusion>>
            {
                [Record.OriginalString] = [.. new[] { 3, 4 }.Select(index => new LogInclusion("urn:uuid:1", log[index], InclusionProof.Of(leaves, index, log.Length)))],
            },
        });
    }

    /// <summary>A checkpoint of the log with two more entries, and what shows that they were only added.</summary>
    public (string Checkpoint, string Extension) Later()
    {
        Sha256Digest[] leaves = [.. Log.Select(entry => entry.LeafHash), Happened("record-suspended", -10).LeafHash, Happened("record-reinstated", -6).LeafHash];
        var checkpoint = SignedCheckpoint.Sign(new("urn:uuid:1", leaves.Length, TreeHead.Of(leaves).Root, Now), key, Id);
        return (checkpoint.Write().ToString(), ConsistencyProof.Of(leaves, 3, leaves.Length).Write().ToString());
    }

    private static LogEntry Happened(string kind, int day) =>
        Entry(new() { ["kind"] = kind, ["record"] = Record.OriginalString, ["at"] = DateTimeStamp.Format(Now.AddDays(day)) });

    private string Signed(ProofPack pack) => pack.Sign(key, Id, Now.AddHours(-1)).ToString();

    /// <summary>A pack that speaks of a job of three days, on the second of which somebody may not have held.</summary>
    public string PackOfJob(bool holdsOnTheSecondDay = true) => Signed(Whole(null) with { Job = Job(holdsOnTheSecondDay) });

    /// <summary>The same without a signature over the whole, about whom a test says.</summary>
    public string OldPackOfJob(string name) => (Whole(null) with { Job = Job(true, name) }).Write().ToString();

    private JsonObject Job(bool holdsOnTheSecondDay, string name = "Amara Okafor")
    {
        DateOnly first = new(2026, 3, 10);
        JobDays days = new(Did.ToString(), "Quillmoor Coachworks", "Larkfield Haulage", "K26-0142", first, first.AddDays(2), first.AddDays(5),
        [
            new(Record.ToString(), name, "Electrical isolation",
            [
                new(first, first, true, "holds"),
                new(first.AddDays(1), first.AddDays(1), holdsOnTheSecondDay, holdsOnTheSecondDay ? "holds" : "suspended"),
                new(first.AddDays(2), first.AddDays(2), true, "holds"),
            ]),
        ]);
        return EddsaJcs2022.Secure(days.Write(), key, Id, Now.AddHours(-1)).Value;
    }

    private ProofPack Whole(JsonObject? credential, params int[] withdrawn) => new(
        [credential ?? Credential()], [List(StatusPurpose.Revocation, withdrawn), List(StatusPurpose.Suspension)], Checkpoint,
        StrictJson.ReadObject(Encoding.UTF8.GetBytes(Document)).Value)
    {
        Histories = new Dictionary<string, IReadOnlyList<LogInclusion>>
        {
            [Record.OriginalString] = [new LogInclusion("urn:uuid:1", Log[2], InclusionProof.Of([.. Log.Select(entry => entry.LeafHash)], 2, 3))],
        },
    };

    public string Export() => string.Concat(LogExport.Write(
        [StrictJson.ReadObject(Encoding.UTF8.GetBytes(Document)).Value],
        Log.Select((entry, index) => new StoredEntry(index, entry.Text.Utf8.ToArray(), entry.LeafHash)),
        [Checkpoint]).Select(line => line + "\n"));

    public void Dispose() => key.Dispose();

    private static LogEntry Entry(JsonObject content) => LogEntry.Of(content).Value;
}
