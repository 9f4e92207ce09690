using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
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
        Entry(new() { ["kind"] = "record-confirmed", ["record"] = Record.OriginalString }),
    ];

    public SignedCheckpoint Checkpoint => SignedCheckpoint.Sign(
        new("urn:uuid:1", 3, TreeHead.Of(Log.Select(entry => entry.LeafHash)).Root, Now.AddHours(-1)), key, Id);

    public JsonObject Credential(DateTimeOffset? until = null) => EddsaJcs2022.Secure(
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
            Log = new LogInclusion("urn:uuid:1", Log[1], InclusionProof.Of([.. Log.Select(entry => entry.LeafHash)], 1, 3)) { Checkpoint = Checkpoint },
        }).Value,
        key, Id, Now.AddHours(-1)).Value;

    public JsonObject List(StatusPurpose purpose, params int[] set)
    {
        var word = purpose == StatusPurpose.Revocation ? "withdrawn" : "suspended";
        var list = new StatusList(
            new Uri($"https://eastvale.example/status/{word}/1"), Did, purpose, StatusBitstring.Of(set), Now.AddHours(-1), Now.AddHours(23));
        return EddsaJcs2022.Secure(list.Write(), key, Id, Now.AddHours(-1)).Value;
    }

    public string Pack(JsonObject? credential = null, params int[] withdrawn) => Whole(credential, withdrawn).Write().ToString();

    /// <summary>A pack that speaks of a job of three days, on the second of which somebody may not have held.</summary>
    public string PackOfJob(bool holdsOnTheSecondDay = true)
    {
        DateOnly first = new(2026, 3, 10);
        JobDays days = new(Did.ToString(), "Quillmoor Coachworks", "Larkfield Haulage", "K26-0142", first, first.AddDays(2), first.AddDays(5),
        [
            new(Record.ToString(), "Amara Okafor", "Electrical isolation",
            [
                new(first, first, true, "holds"),
                new(first.AddDays(1), first.AddDays(1), holdsOnTheSecondDay, holdsOnTheSecondDay ? "holds" : "suspended"),
                new(first.AddDays(2), first.AddDays(2), true, "holds"),
            ]),
        ]);
        return (Whole(null) with { Job = EddsaJcs2022.Secure(days.Write(), key, Id, Now.AddHours(-1)).Value }).Write().ToString();
    }

    private ProofPack Whole(JsonObject? credential, params int[] withdrawn) => new(
        [credential ?? Credential()], [List(StatusPurpose.Revocation, withdrawn), List(StatusPurpose.Suspension)], Checkpoint,
        StrictJson.ReadObject(Encoding.UTF8.GetBytes(Document)).Value);

    public string Export() => string.Concat(LogExport.Write(
        [StrictJson.ReadObject(Encoding.UTF8.GetBytes(Document)).Value],
        Log.Select((entry, index) => new StoredEntry(index, entry.Text.Utf8.ToArray(), entry.LeafHash)),
        [Checkpoint]).Select(line => line + "\n"));

    public void Dispose() => key.Dispose();

    private static LogEntry Entry(JsonObject content) => LogEntry.Of(content).Value;
}
