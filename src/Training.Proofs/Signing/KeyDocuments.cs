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

    /// <summary>
    /// What in the documents of a file does not go with keys that are trusted, in a sentence; null where nothing does. The
    /// trusted keys decide, but a file whose own keys are others has been touched.
    /// </summary>
    /// <param name="documents">The key documents of the file.</param>
    /// <param name="trusted">The trusted keys, gathered from their owner's address.</param>
    /// <param name="areAll">Whether they are all that their owners have, so that one more is one too many.</param>
    public static string? Objection(IEnumerable<JsonObject> documents, KeyRing trusted, bool areAll)
    {
        ArgumentNullException.ThrowIfNull(documents);
        ArgumentNullException.ThrowIfNull(trusted);
        foreach (JsonObject document in documents)
        {
            Outcome<KeyRing> read = Read(document);
            if (!read.IsOk)
                return $"The key document in the file cannot be read: {read.Sentence}";
            foreach (IssuerKey key in read.Value.Keys)
            {
                string name = key.Id.Value[(key.Id.Controller.Length + 1)..];
                if (trusted.Find(key.Id) is { } known ? known.PublicKey.Multikey != key.PublicKey.Multikey
                    : Ed25519PublicKey.FromMultikey(name).IsOk && name != key.PublicKey.Multikey)
                    return $"The file says that the key {key.Id} is another than it is.";
                if (areAll && trusted.Knows(key.Id.Controller) && trusted.Find(key.Id) is null)
                    return $"The file names a key that {key.Id.Controller} does not have by the document that you gave: {key.Id}. Get that document anew, and the file.";
            }
        }

        return null;
    }
}
