using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;

namespace Training.Proofs.Log;

/// <summary>An entry of the log: a JSON object in canonical form, so that it has one spelling and one hash.</summary>
public sealed class LogEntry : IEquatable<LogEntry>
{
    private LogEntry(CanonicalText text) => (Text, LeafHash) = (text, MerkleHash.Leaf(text.Utf8));

    /// <summary>The bytes that are stored and hashed.</summary>
    public CanonicalText Text { get; }

    /// <summary>The entry's hash in the tree.</summary>
    public Sha256Digest LeafHash { get; }

    /// <summary>Makes an entry; refused where the content has no canonical form.</summary>
    public static Outcome<LogEntry> Of(JsonObject content)
    {
        Outcome<CanonicalText> text = Jcs.Canonicalize(content);
        return text.IsOk ? new LogEntry(text.Value) : new Refused(text.Sentence);
    }

    /// <summary>Reads a stored entry; refused where the bytes are not a JSON object in canonical form.</summary>
    public static Outcome<LogEntry> Read(ReadOnlySpan<byte> utf8)
    {
        Outcome<CanonicalText> text = Jcs.ReadCanonical(utf8);
        if (!text.IsOk)
            return new Refused(text.Sentence);
        return text.Value.Utf8[0] == (byte)'{' ? new LogEntry(text.Value) : new Refused("The entry is not a JSON object.");
    }

    /// <summary>What the entry says; a fresh copy.</summary>
    public JsonObject Content() => StrictJson.ReadObject(Text.Utf8).Value;

    /// <inheritdoc/>
    public bool Equals(LogEntry? other) => other is not null && LeafHash == other.LeafHash;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as LogEntry);

    /// <inheritdoc/>
    public override int GetHashCode() => LeafHash.GetHashCode();

    /// <summary>The text.</summary>
    public override string ToString() => Text.ToString();
}
