using System.Text.Json;
using System.Text.Json.Nodes;

namespace Training.Proofs.CanonicalJson;

/// <summary>Looks at members of JSON that others wrote: a member of another kind than expected is as if absent.</summary>
internal static class JsonMembers
{
    /// <summary>The text of a value that is a text.</summary>
    public static string? AsText(this JsonNode? node) =>
        node is JsonValue value && value.GetValueKind() == JsonValueKind.String && value.TryGetValue(out string? text)
            ? text
            : null;

    /// <summary>The text of a member that is a text.</summary>
    public static string? TextOf(this JsonObject members, string name) => members[name].AsText();

    /// <summary>The value of a member that is a whole number from 0 to 2^53.</summary>
    public static long? CountOf(this JsonObject members, string name) =>
        members[name] is JsonValue value && value.TryGetValue(out double number)
        && number is >= 0 and <= 9007199254740992 && Math.Floor(number) == number
            ? (long)number
            : null;

    /// <summary>The instant of a member; null where there is none.</summary>
    public static Outcome<DateTimeOffset?> InstantOf(this JsonObject members, string name)
    {
        if (!members.ContainsKey(name))
            return (DateTimeOffset?)null;
        Outcome<DateTimeOffset> instant = DateTimeStamp.Parse(members.TextOf(name));
        return instant.IsOk ? (DateTimeOffset?)instant.Value : new Refused($"\"{name}\": {instant.Sentence}");
    }

    /// <summary>The items of a member that may be one value or an array of them (JSON-LD 1.1, section 4.1).</summary>
    public static IReadOnlyList<JsonNode?> OneOrMore(this JsonObject members, string name) => members[name] switch
    {
        null => [],
        JsonArray items => [.. items],
        { } one => [one],
    };

    /// <summary>The hashes of an array; refused where an item is none.</summary>
    public static Outcome<List<Sha256Digest>> Digests(this JsonArray items)
    {
        List<Sha256Digest> digests = [];
        foreach (JsonNode? item in items)
        {
            Outcome<Sha256Digest> digest = Sha256Digest.Parse(item.AsText());
            if (!digest.IsOk)
                return new Refused(digest.Sentence);
            digests.Add(digest.Value);
        }
        return digests;
    }

    /// <summary>Whether a member is this text, or an array that holds it.</summary>
    public static bool Names(this JsonObject members, string name, string text) =>
        members.OneOrMore(name).Any(item => item.AsText() == text);
}
