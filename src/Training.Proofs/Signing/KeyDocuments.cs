using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;

namespace Training.Proofs.Signing;

/// <summary>Key documents that came with a file, each taken at its own word about whose it is.</summary>
public static class KeyDocuments
{
    /// <summary>The keys of all documents that can be read. Nothing says that they are whose they claim to be.</summary>
    public static KeyRing Read(IEnumerable<JsonObject> documents)
    {
        ArgumentNullException.ThrowIfNull(documents);
        KeyRing ring = KeyRing.Empty;
        foreach (JsonObject document in documents)
        {
            if (Read(document) is { IsOk: true } keys)
                ring = ring.With(keys.Value);
        }
        return ring;
    }

    /// <summary>The keys of one document.</summary>
    public static Outcome<KeyRing> Read(JsonObject document)
    {
        ArgumentNullException.ThrowIfNull(document);
        Outcome<DidWeb> subject = DidWeb.Parse(document.TextOf("id"));
        Outcome<CanonicalText> text = Jcs.Canonicalize(document);
        if (!subject.IsOk)
            return new Refused(subject.Sentence);
        return text.IsOk ? DidDocument.Read(text.Value.Utf8, subject.Value) : new Refused(text.Sentence);
    }
}
