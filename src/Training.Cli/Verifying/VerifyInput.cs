using Training.Content;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Log;
using Training.Proofs.Signing;
using Training.Sequencing;

namespace Training.Cli.Verifying;

/// <summary>The files that a verification looks at.</summary>
/// <param name="File">What is to be verified.</param>
/// <param name="Keys">The keys that whoever checks gave; null where none were given.</param>
/// <param name="Status">The status lists that they gave.</param>
/// <param name="Checkpoint">The checkpoint that they gave.</param>
internal sealed record VerifyInput(
    ReadOnlyMemory<byte> File, TrustedKeys? Keys, IReadOnlyList<ReadOnlyMemory<byte>> Status, SignedCheckpoint? Checkpoint)
{
    public static Outcome<VerifyInput, ContentProblem> Read(VerifyCommand command)
    {
        var file = Bytes(command.File);
        if (!file.IsOk) return file.Fault;
        TrustedKeys? keys = null;
        if (command.Key is { } named)
        {
            var read = TrustedKeys.Read(named);
            if (!read.IsOk) return read.Fault;
            keys = read.Value;
        }

        List<ReadOnlyMemory<byte>> status = [];
        foreach (var path in command.Status)
        {
            var list = Bytes(path);
            if (!list.IsOk) return list.Fault;
            status.Add(list.Value);
        }

        SignedCheckpoint? checkpoint = null;
        if (command.Checkpoint is { } kept)
        {
            var bytes = Bytes(kept);
            if (!bytes.IsOk) return bytes.Fault;
            var read = SignedCheckpoint.Read(bytes.Value);
            if (!read.IsOk) return InputFile.Problem(kept, read.Sentence);
            checkpoint = read.Value;
        }

        return new VerifyInput(file.Value, keys, status, checkpoint);
    }

    internal static Outcome<byte[], ContentProblem> Bytes(string path) =>
        InputFile.Try<byte[]>(path, () => System.IO.File.ReadAllBytes(path));
}

/// <summary>Keys that whoever checks has reason to trust: those of a document, or one key for whichever issuer is named.</summary>
internal sealed record TrustedKeys(KeyRing Ring, Ed25519PublicKey? Single)
{
    public static Outcome<TrustedKeys, ContentProblem> Read(string named)
    {
        if (Ed25519PublicKey.FromMultikey(named[(named.LastIndexOf('#') + 1)..]) is { IsOk: true } single)
        {
            return KeyId.Parse(named) is { IsOk: true } id
                ? new TrustedKeys(new KeyRing([new IssuerKey(id.Value, single.Value)]), null)
                : new TrustedKeys(KeyRing.Empty, single.Value);
        }

        var bytes = VerifyInput.Bytes(named);
        if (!bytes.IsOk) return InputFile.Problem(named, "This is neither a key (z6Mk…) nor a file: name one, or the did.json of the issuer.");
        var document = StrictJson.ReadObject(bytes.Value);
        if (!document.IsOk) return InputFile.Problem(named, document.Sentence);
        var keys = KeyDocuments.Read(document.Value);
        return keys.IsOk ? new TrustedKeys(keys.Value, null) : InputFile.Problem(named, keys.Sentence);
    }

    /// <summary>The keys, a single one taken for that of an issuer.</summary>
    public KeyRing For(string issuer) =>
        Single is { } key && DidWeb.Parse(issuer) is { IsOk: true } did
            ? new KeyRing([new IssuerKey(KeyId.For(did.Value, key), key)])
            : Ring;
}
