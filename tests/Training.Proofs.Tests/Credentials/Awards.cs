using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Credentials;
using Training.Proofs.DataIntegrity;
using Training.Proofs.Log;
using Training.Proofs.Signing;
using Training.Proofs.StatusLists;
using static Training.Proofs.Tests.TestKeys;

namespace Training.Proofs.Tests.Credentials;

/// <summary>A competency record of the invented world and what belongs to it: a log, status lists, a checkpoint.</summary>
internal sealed class Awards : IDisposable
{
    public const string Origin = "did:web:eastvale.example";
    public const string Person = "Amara Nwosu";

    public static readonly Uri Id = new("urn:uuid:0f3c2a52-6a0e-4f7e-9a55-0d8f6f1c2b11");
    public static readonly Uri WithdrawnList = new("https://eastvale.example/status/withdrawn");
    public static readonly Uri SuspendedList = new("https://eastvale.example/status/suspended");

    public SigningKey Key { get; } = Key("first");

    public void Dispose() => Key.Dispose();

    /// <summary>Entries of the log; the record's own is number 5.</summary>
    public static LogEntry[] Log(int size) =>
    [
        .. Enumerable.Range(0, size).Select(i => LogEntry.Of(new JsonObject
        {
            ["kind"] = "record-issued",
            ["record"] = i == 5 ? Id.OriginalString : $"urn:example:{i}",
        }).Value),
    ];

    public static LogInclusion Place(int size, int index = 5)
    {
        LogEntry[] log = Log(size);
        return new LogInclusion(Origin, log[index], InclusionProof.Of([.. log.Select(entry => entry.LeafHash)], index, size));
    }

    public static CompetencyCredential Credential() => new()
    {
        Id = Id,
        Title = "Electrical isolation of the bus chassis L18",
        Issuer = new IssuerProfile(Eastvale, "Eastvale Training Centre", new Uri("https://eastvale.example/")),
        Recipient = new NamedRecipient(Person),
        Shop = "Quillmoor Coachworks",
        Competency = new CompetencyDefinition(
            new Uri("https://eastvale.example/competencies/isolate-l18"),
            "Isolate the L18",
            "Takes the chassis out of circuit and proves it dead before any welding or cabling.",
            "A paper and one observed run on a vehicle, each without a grave finding.",
            new Uri("https://eastvale.example/competencies/isolate-l18#criteria"),
            "3"),
        ValidFrom = Now.AddDays(-30),
        ValidUntil = Now.AddDays(700),
        Status =
        [
            new StatusListEntry(StatusPurpose.Revocation, WithdrawnList, 94567),
            new StatusListEntry(StatusPurpose.Suspension, SuspendedList, 17),
        ],
        Judged =
        [
            new JudgedMatter("procedure", "Isolate the L18, revision 7", Sha256Digest.Of("procedure"u8)),
            new JudgedMatter("observed run", "Run of 30 January 2026", Sha256Digest.Of("run"u8)),
        ],
        Log = Place(12),
    };

    /// <summary>The credential of a shop in a time zone.</summary>
    public static CompetencyCredential In(string zone, DateTimeOffset from, DateTimeOffset until)
    {
        LogEntry entry = LogEntry.Of(new JsonObject { ["kind"] = "record-issued", ["record"] = Id.OriginalString, ["zone"] = zone }).Value;
        return Credential() with
        {
            ValidFrom = from,
            ValidUntil = until,
            Log = new LogInclusion(Origin, entry, InclusionProof.Of([entry.LeafHash], 0, 1)),
        };
    }

    /// <summary>A credential to which things happened, by days from now, with lists of today and its history.</summary>
    public (JsonObject Secured, VerificationRequest Request) WithHistory(params (int Day, string Kind)[] happened)
    {
        LogEntry[] log =
        [
            .. Log(6),
            .. happened.Select(entry => LogEntry.Of(new JsonObject
            {
                ["kind"] = entry.Kind,
                ["record"] = Id.OriginalString,
                ["at"] = DateTimeStamp.Format(Now.AddDays(entry.Day)),
            }).Value),
        ];
        Sha256Digest[] leaves = [.. log.Select(entry => entry.LeafHash)];
        SignedCheckpoint checkpoint = SignedCheckpoint.Sign(
            new Checkpoint(Origin, log.Length, TreeHead.Of(leaves).Root, Now.AddDays(-1)), Key, KeyId.For(Eastvale, Key.PublicKey));
        return (
            Secured(Credential() with { Log = new LogInclusion(Origin, log[5], InclusionProof.Of(leaves, 5, log.Length)) { Checkpoint = checkpoint } }),
            Request() with
            {
                Checkpoint = checkpoint,
                StatusLists =
                [
                    List(StatusPurpose.Revocation, happened.Any(entry => entry.Kind == "record-withdrawn") ? [94567] : []),
                    List(StatusPurpose.Suspension, []),
                ],
                History = [.. Enumerable.Range(6, happened.Length).Select(index => new LogInclusion(Origin, log[index], InclusionProof.Of(leaves, index, log.Length)))],
            });
    }

    public JsonObject Secured(CompetencyCredential? credential = null) =>
        Secure(AchievementCredential.Write(credential ?? Credential()).Value);

    public JsonObject Secure(JsonObject document) =>
        EddsaJcs2022.Secure(document, Key, KeyId.For(Eastvale, Key.PublicKey), Now.AddDays(-30)).Value;

    public SignedCheckpoint Checkpoint(int size, DateTimeOffset? time = null) => SignedCheckpoint.Sign(
        new Checkpoint(Origin, size, TreeHead.Of(Log(size).Select(entry => entry.LeafHash)).Root, time ?? Now.AddDays(-1)),
        Key,
        KeyId.For(Eastvale, Key.PublicKey));

    public byte[] List(StatusPurpose purpose, int[] set, DateTimeOffset? from = null, DidWeb? issuer = null)
    {
        StatusList list = new(
            purpose == StatusPurpose.Revocation ? WithdrawnList : SuspendedList,
            issuer ?? Eastvale, purpose, StatusBitstring.Of(set), from ?? Now.AddDays(-1), (from ?? Now.AddDays(-1)).AddDays(7));
        return Bytes(EddsaJcs2022.Secure(list.Write(), Key, KeyId.For(issuer ?? Eastvale, Key.PublicKey), Now.AddDays(-1)).Value);
    }

    /// <summary>A request with everything at hand and nothing wrong.</summary>
    public VerificationRequest Request() => new()
    {
        Now = Now,
        Keys = Ring(Key),
        StatusLists = [List(StatusPurpose.Revocation, [1, 2]), List(StatusPurpose.Suspension, [1, 2])],
        Checkpoint = Checkpoint(12),
        PersonName = Person,
    };

    public static byte[] Bytes(JsonObject document) => Jcs.Canonicalize(document).Value.Utf8.ToArray();
}
