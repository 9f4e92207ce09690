using System.Globalization;
using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;

namespace Training.Proofs.StatusLists;

/// <summary>What a set bit means (Bitstring Status List 1.0, section 2.1).</summary>
public enum StatusPurpose
{
    /// <summary>The credential is withdrawn, for good: <c>revocation</c>.</summary>
    Revocation,

    /// <summary>The credential is not to be accepted for the time being: <c>suspension</c>.</summary>
    Suspension,
}

/// <summary>Where a credential's status can be looked up: the member credentialStatus.</summary>
/// <param name="Purpose">What a set bit means.</param>
/// <param name="List">The address of the status list credential.</param>
/// <param name="Index">The credential's place in it. Draw places at random, so that they say nothing about order.</param>
public sealed record StatusListEntry(StatusPurpose Purpose, Uri List, int Index)
{
    /// <summary>The type of the entry.</summary>
    public const string Type = "BitstringStatusListEntry";

    /// <summary>The word for a purpose in documents.</summary>
    public static string Word(StatusPurpose purpose) =>
        purpose == StatusPurpose.Revocation ? "revocation" : "suspension";

    /// <summary>Writes the entry.</summary>
    public JsonObject Write() => new()
    {
        ["id"] = $"{List.OriginalString}#{Index.ToString(CultureInfo.InvariantCulture)}",
        ["type"] = Type,
        ["statusPurpose"] = Word(Purpose),
        ["statusListIndex"] = Index.ToString(CultureInfo.InvariantCulture),
        ["statusListCredential"] = List.OriginalString,
    };

    /// <summary>Reads an entry with one bit; other purposes and larger entries are refused.</summary>
    public static Outcome<StatusListEntry> Read(JsonObject entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        if (entry.TextOf("type") != Type)
            return new Refused($"A status entry is of another type than {Type}.");
        if (ReadPurpose(entry.TextOf("statusPurpose")) is not { } purpose)
            return new Refused("A status entry has a purpose other than revocation or suspension.");
        if (entry.ContainsKey("statusSize") && entry.CountOf("statusSize") != 1)
            return new Refused("A status entry has more than one bit.");
        string digits = entry.TextOf("statusListIndex") ?? "";
        if (!int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out int index) || index >= StatusBitstring.MostEntries)
            return new Refused("A status entry has no index that can be looked up.");
        return Uri.TryCreate(entry.TextOf("statusListCredential"), UriKind.Absolute, out Uri? list) && list.Scheme == Uri.UriSchemeHttps
            ? new StatusListEntry(purpose, list, index)
            : new Refused("A status entry does not name the https address of its list.");
    }

    /// <summary>The purpose that a word stands for, or null.</summary>
    internal static StatusPurpose? ReadPurpose(string? word) => word switch
    {
        "revocation" => StatusPurpose.Revocation,
        "suspension" => StatusPurpose.Suspension,
        _ => null,
    };
}
