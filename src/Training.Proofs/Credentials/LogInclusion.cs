using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Log;

namespace Training.Proofs.Credentials;

/// <summary>
/// Where the record stands in the log. The entry names the record in its member <see cref="RecordMember"/>; without
/// that an entry about somebody else would serve as well.
/// </summary>
/// <param name="Origin">Which log.</param>
/// <param name="Entry">The entry.</param>
/// <param name="Proof">That the entry stands there.</param>
public sealed record LogInclusion(string Origin, LogEntry Entry, InclusionProof Proof)
{
    /// <summary>A checkpoint of the log at the size of the proof, so that the credential can be checked by itself; or null.</summary>
    public SignedCheckpoint? Checkpoint { get; init; }

    /// <summary>The member of the entry that names the credential it speaks of, by <see cref="CompetencyCredential.Id"/>.</summary>
    public const string RecordMember = "record";

    // A tree of 2^53 entries, more than JSON can count, has paths of 53 hashes.
    private const int LongestPath = 53;

    /// <summary>Whether the entry speaks of that credential.</summary>
    public bool SpeaksOf(Uri credential)
    {
        ArgumentNullException.ThrowIfNull(credential);
        return Entry.Content().TextOf(RecordMember) == credential.OriginalString;
    }

    /// <summary>Writes the inclusion as a JSON object.</summary>
    public CanonicalText Write() => Jcs.Must(Members());

    internal JsonObject Members()
    {
        JsonObject members = new()
        {
            ["origin"] = Origin,
            ["entry"] = Entry.ToString(),
            ["leafIndex"] = Proof.LeafIndex,
            ["treeSize"] = Proof.TreeSize,
            ["path"] = new JsonArray([.. Proof.Path.Select(hash => JsonValue.Create(hash.ToString()))]),
        };
        if (Checkpoint is not null)
            members["checkpoint"] = StrictJson.ReadObject(Checkpoint.Write().Utf8).Value;
        return members;
    }

    /// <summary>Reads what <see cref="Write"/> wrote.</summary>
    public static Outcome<LogInclusion> Read(ReadOnlySpan<byte> utf8)
    {
        Outcome<JsonObject> read = StrictJson.ReadObject(utf8);
        return read.IsOk ? Read(read.Value) : new Refused(read.Sentence);
    }

    internal static Outcome<LogInclusion> Read(JsonObject members)
    {
        if (members.TextOf("origin") is not { Length: > 0 } origin || members.TextOf("entry") is not { } text
            || members.CountOf("leafIndex") is not { } index || members.CountOf("treeSize") is not { } size
            || members["path"] is not JsonArray { Count: <= LongestPath } hashes)
            return new Refused("The evidence of the log is not complete.");
        Outcome<LogEntry> entry = LogEntry.Read(System.Text.Encoding.UTF8.GetBytes(text));
        if (!entry.IsOk)
            return new Refused(entry.Sentence);
        Outcome<List<Sha256Digest>> path = hashes.Digests();
        if (!path.IsOk)
            return new Refused(path.Sentence);
        LogInclusion inclusion = new(origin, entry.Value, new InclusionProof(index, size, path.Value));
        if (members["checkpoint"] is not { } checkpoint)
            return inclusion;
        Outcome<SignedCheckpoint> signed = SignedCheckpoint.Read(Jcs.Must(checkpoint).Utf8);
        return signed.IsOk ? inclusion with { Checkpoint = signed.Value } : new Refused(signed.Sentence);
    }
}
