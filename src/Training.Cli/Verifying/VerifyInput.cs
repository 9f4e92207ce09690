using System.Text;
using Training.Content;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Log;
using Training.Proofs.Signing;
using Training.Proofs.StatusLists;
using Training.Sequencing;

namespace Training.Cli.Verifying;

/// <summary>The files that a verification looks at.</summary>
/// <param name="File">What is to be verified.</param>
/// <param name="Keys">The keys that whoever checks gave; null where none were given.</param>
/// <param name="Status">The status lists that they gave.</param>
/// <param name="Checkpoint">The checkpoint that they gave.</param>
/// <param name="Extension">What they gave to show that the log was only added to up to that checkpoint.</param>
internal sealed record VerifyInput(
    ReadOnlyMemory<byte> File, TrustedKeys? Keys, IReadOnlyList<ReadOnlyMemory<byte>> Status, SignedCheckpoint? Checkpoint,
    ConsistencyProof? Extension)
{
    public static Outcome<VerifyInput, ContentProblem> Read(VerifyCommand command, TextReader standardInput)
    {
        var file = Bytes(command.File, standardInput);
        if (!file.IsOk) return file.Fault;
        TrustedKeys? keys = null;
        if (command.Key is { } named)
        {
            var read = TrustedKeys.Read(named, standardInput);
            if (!read.IsOk) return read.Fault;
            keys = read.Value;
        }

        List<ReadOnlyMemory<byte>> status = [];
        foreach (var path in command.Status)
        {
            // A list that cannot be read must not pass for none: whoever gave it believes that it was looked at.
            var list = Read<byte[]>(path, standardInput, bytes => StatusList.Read(bytes) is { IsOk: false } read ? new Proofs.Refused(read.Sentence) : bytes);
            if (!list.IsOk) return list.Fault;
            status.Add(list.Value);
        }

        var checkpoint = Read(command.Checkpoint, standardInput, bytes => SignedCheckpoint.Read(bytes));
        if (!checkpoint.IsOk) return checkpoint.Fault;
        var extension = Read(command.Extension, standardInput, bytes => ConsistencyProof.Read(bytes));
        if (!extension.IsOk) return extension.Fault;
        return new VerifyInput(file.Value, keys, status, checkpoint.Value, extension.Value);
    }

    internal static Outcome<byte[], ContentProblem> Bytes(string path, TextReader standardInput)
    {
        var read = path == InputFile.Dash
            ? Encoding.UTF8.GetBytes(standardInput.ReadToEnd())
            : InputFile.Try<byte[]>(path, () => System.IO.File.ReadAllBytes(path));
        // Editors put a mark in front that says UTF-8 and is no part of the text.
        return read.IsOk && read.Value.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? read.Value[Encoding.UTF8.Preamble.Length..] : read;
    }

    private static Outcome<T?, ContentProblem> Read<T>(string? path, TextReader standardInput, Func<byte[], Proofs.Outcome<T>> read)
        where T : class
    {
        if (path is null) return (T?)null;
        var bytes = Bytes(path, standardInput);
        if (!bytes.IsOk) return bytes.Fault;
        var value = read(bytes.Value);
        return value.IsOk ? value.Value : InputFile.Problem(path, value.Sentence);
    }
}

/// <summary>Keys that whoever checks has reason to trust: those of a document, or one key for whichever issuer is named.</summary>
internal sealed record TrustedKeys(KeyRing Ring, Ed25519PublicKey? Single)
{
    /// <summary>Whether they are all keys of their owner, by its own document.</summary>
    public bool AreAll { get; private init; }

    public static Outcome<TrustedKeys, ContentProblem> Read(string named, TextReader standardInput)
    {
        if (Ed25519PublicKey.FromMultikey(named[(named.LastIndexOf('#') + 1)..]) is { IsOk: true } single)
        {
            return KeyId.Parse(named) is { IsOk: true } id
                ? new TrustedKeys(new KeyRing([new IssuerKey(id.Value, single.Value)]), null)
                : new TrustedKeys(KeyRing.Empty, single.Value);
        }

        var bytes = VerifyInput.Bytes(named, standardInput);
        if (!bytes.IsOk) return InputFile.Problem(named, "This is neither a key (z6Mk…) nor a file: name one, or the did.json of the issuer.");
        var document = StrictJson.ReadObject(bytes.Value);
        if (!document.IsOk) return InputFile.Problem(named, document.Sentence);
        var keys = KeyDocuments.Read(document.Value);
        return keys.IsOk ? new TrustedKeys(keys.Value, null) { AreAll = true } : InputFile.Problem(named, keys.Sentence);
    }

    /// <summary>The keys, a single one taken for that of an issuer.</summary>
    public KeyRing For(string issuer) =>
        Single is { } key && DidWeb.Parse(issuer) is { IsOk: true } did
            ? new KeyRing([new IssuerKey(KeyId.For(did.Value, key), key)])
            : Ring;
}
