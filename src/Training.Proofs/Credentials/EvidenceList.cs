using System.Buffers.Text;
using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Signing;

namespace Training.Proofs.Credentials;

/// <summary>
/// Writes and reads the Evidence of Open Badges 3.0 with that standard's own members alone: what was judged is named
/// by its hash as an RFC 6920 name, the place in the log is a data URI, which the standard allows for.
/// </summary>
internal static class EvidenceList
{
    private const string NamedHash = "ni:///sha-256;";
    private const string DataUri = "data:application/json;base64,";
    private const string LogGenre = "log inclusion";

    public static JsonArray Write(CompetencyCredential credential)
    {
        JsonArray evidence = [];
        foreach (JudgedMatter judged in credential.Judged)
            evidence.Add(Item(NamedHash + Base64Url.EncodeToString(judged.Digest.Bytes), judged.Genre, judged.Name));
        if (credential.Log is { } log)
        {
            string id = DataUri + Convert.ToBase64String(log.Write().Utf8);
            evidence.Add(Item(id, LogGenre, "The record's place in the log, with its Merkle inclusion proof (RFC 9162)"));
        }
        return evidence;
    }

    /// <summary>Reads the items that this project writes; evidence of other kinds is left alone.</summary>
    public static Outcome<(IReadOnlyList<JudgedMatter> Judged, LogInclusion? Log)> Read(IReadOnlyList<JsonNode?> evidence)
    {
        List<JudgedMatter> judged = [];
        LogInclusion? log = null;
        foreach (JsonNode? node in evidence)
        {
            if (node is not JsonObject item || !item.Names("type", "Evidence"))
                return new Refused("A piece of evidence is not of the type Evidence.");
            string id = item.TextOf("id") ?? "";
            if (id.StartsWith(NamedHash, StringComparison.Ordinal))
            {
                Outcome<JudgedMatter> matter = ReadJudged(item, id);
                if (!matter.IsOk)
                    return new Refused(matter.Sentence);
                judged.Add(matter.Value);
            }
            else if (item.TextOf("genre") == LogGenre)
            {
                Outcome<LogInclusion> read = ReadLog(id);
                if (!read.IsOk || log is not null)
                    return new Refused(read.IsOk ? "The place in the log is given twice." : read.Sentence);
                log = read.Value;
            }
        }
        return (judged, log);
    }

    private static JsonObject Item(string id, string genre, string name) => new()
    {
        ["id"] = id,
        ["type"] = new JsonArray("Evidence"),
        ["name"] = name,
        ["genre"] = genre,
    };

    private static Outcome<JudgedMatter> ReadJudged(JsonObject item, string id)
    {
        Outcome<byte[]> digest = Multibase.DecodeBase64Url("u" + id[NamedHash.Length..]);
        return digest.IsOk && digest.Value.Length == Sha256Digest.Length
            && item.TextOf("genre") is { } genre && item.TextOf("name") is { } name
                ? new JudgedMatter(genre, name, Sha256Digest.FromBytes(digest.Value))
                : new Refused("A piece of evidence has no name, no genre or no readable hash.");
    }

    private static Outcome<LogInclusion> ReadLog(string id)
    {
        byte[] json = new byte[id.Length];
        return id.StartsWith(DataUri, StringComparison.Ordinal)
            && Convert.TryFromBase64String(id[DataUri.Length..], json, out int length)
                ? LogInclusion.Read(json.AsSpan(0, length))
                : new Refused("The place in the log cannot be read.");
    }
}
