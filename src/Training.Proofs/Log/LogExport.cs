using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Signing;

namespace Training.Proofs.Log;

/// <summary>
/// A whole log as a file, one canonical JSON object a line: first the keys that its keeper says are theirs, then each
/// entry in order, and each checkpoint after the entries that it covers. The format is this project's own.
/// </summary>
/// <param name="Issuers">The key documents (did.json) of the keeper, one for each address that they ever had; told, not to be trusted.</param>
/// <param name="Entries">The entries up to the first line that cannot be read.</param>
/// <param name="Checkpoints">The checkpoints up to there.</param>
/// <param name="Fault">What is wrong with the first line that cannot be read; null where all can.</param>
public sealed record LogExport(
    IReadOnlyList<JsonObject> Issuers, IReadOnlyList<StoredEntry> Entries, IReadOnlyList<SignedCheckpoint> Checkpoints, string? Fault)
{
    private const string Type = "LogExport";

    /// <summary>The keys that the file itself names. Whoever made the file chose them: compare them with those of the keeper's address.</summary>
    public KeyRing OwnKeys => KeyDocuments.Read(Issuers);

    /// <summary>Writes the lines, without their line ends.</summary>
    /// <param name="issuers">The keeper's key documents.</param>
    /// <param name="entries">The entries, in order.</param>
    /// <param name="checkpoints">The checkpoints, in order.</param>
    public static IEnumerable<CanonicalText> Write(
        IEnumerable<JsonObject> issuers, IEnumerable<StoredEntry> entries, IEnumerable<SignedCheckpoint> checkpoints)
    {
        ArgumentNullException.ThrowIfNull(entries);
        yield return Jcs.Must(new JsonObject { ["type"] = Type, ["issuers"] = new JsonArray([.. issuers.Select(issuer => issuer.DeepClone())]) });
        Queue<SignedCheckpoint> ahead = new(checkpoints);
        long size = 0;
        foreach (StoredEntry entry in entries)
        {
            yield return Jcs.Must(new JsonObject
            {
                ["index"] = entry.Index,
                ["entry"] = System.Text.Encoding.UTF8.GetString(entry.Text.Span),
                ["hash"] = entry.LeafHash.ToString(),
            });
            size++;
            while (ahead.TryPeek(out SignedCheckpoint? next) && next.Checkpoint.Size <= size)
                yield return Line(ahead.Dequeue());
        }
        foreach (SignedCheckpoint beyond in ahead)
            yield return Line(beyond);
    }

    /// <summary>Reads the lines; stops at the first that is not one of these, and says which.</summary>
    public static Outcome<LogExport> Read(IEnumerable<ReadOnlyMemory<byte>> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        List<JsonObject>? issuers = null;
        List<StoredEntry> entries = [];
        List<SignedCheckpoint> checkpoints = [];
        int number = 0;
        foreach (ReadOnlyMemory<byte> line in lines)
        {
            number++;
            Outcome<CanonicalText> canonical = Jcs.ReadCanonical(line.Span);
            JsonObject? members = canonical.IsOk ? StrictJson.Read(line.Span).Value as JsonObject : null;
            if (issuers is null)
            {
                if (members?.TextOf("type") != Type || members["issuers"] is not JsonArray documents || documents.Any(document => document is not JsonObject))
                    return new Refused("The file is not an export of a log.");
                issuers = [.. documents.OfType<JsonObject>()];
            }
            else if (members is null || !Take(members, entries, checkpoints))
            {
                return new LogExport(issuers, entries, checkpoints, entries.Count == 0
                    ? $"Line {number}, where entry 0 should stand, was altered: it is neither an entry nor a checkpoint."
                    : $"Line {number}, the next behind entry {entries.Count - 1}, was altered: it is neither an entry nor a checkpoint.");
            }
        }
        return issuers is null ? new Refused("The file is empty.") : new LogExport(issuers, entries, checkpoints, null);
    }

    private static bool Take(JsonObject members, List<StoredEntry> entries, List<SignedCheckpoint> checkpoints)
    {
        if (members["checkpoint"] is JsonObject checkpoint && members.Count == 1)
        {
            Outcome<SignedCheckpoint> signed = SignedCheckpoint.Read(Jcs.Must(checkpoint).Utf8);
            if (signed.IsOk)
                checkpoints.Add(signed.Value);
            return signed.IsOk;
        }
        Outcome<Sha256Digest> hash = Sha256Digest.Parse(members.TextOf("hash"));
        if (members.Count != 3 || members.CountOf("index") is not { } index || members.TextOf("entry") is not { } text || !hash.IsOk)
            return false;
        entries.Add(new StoredEntry(index, System.Text.Encoding.UTF8.GetBytes(text), hash.Value));
        return true;
    }

    private static CanonicalText Line(SignedCheckpoint checkpoint) =>
        Jcs.Must(new JsonObject { ["checkpoint"] = StrictJson.ReadObject(checkpoint.Write().Utf8).Value });
}
