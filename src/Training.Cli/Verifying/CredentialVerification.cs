using Training.Proofs.CanonicalJson;
using Training.Proofs.Credentials;
using Training.Proofs.Signing;

namespace Training.Cli.Verifying;

/// <summary>Checks the credentials of a file and tells of each check how it came out.</summary>
internal static class CredentialVerification
{
    /// <returns>Whether every check of every credential passed, by keys that whoever checks gave.</returns>
    public static bool Tell(VerifyCommand command, VerifyInput input, TextWriter output, DateTimeOffset now)
    {
        var document = StrictJson.ReadObject(input.File.Span, ProofPack.MostBytes);
        if (!document.IsOk) return Not(output, document.Sentence);
        ProofPack? pack = null;
        if (ProofPack.IsPack(document.Value))
        {
            var read = ProofPack.Read(document.Value);
            if (!read.IsOk) return Not(output, read.Sentence);
            pack = read.Value;
        }

        var isProved = input.Keys is not null;
        foreach (var credential in pack?.Credentials ?? [document.Value])
        {
            // Whatever the file's own spelling, what is checked is the value.
            var text = Jcs.Canonicalize(credential);
            if (!text.IsOk) return Not(output, text.Sentence);
            var issuer = AchievementCredential.Read(credential) is { IsOk: true } read ? read.Value.Issuer.Id.ToString() : "";
            var report = CredentialVerifier.Check(text.Value.Utf8, new VerificationRequest
            {
                Now = now,
                AsOf = command.On,
                Keys = input.Keys?.For(issuer) ?? pack?.OwnKeys ?? KeyRing.Empty,
                StatusLists = [.. input.Status, .. Lists(pack)],
                Checkpoint = input.Checkpoint ?? pack?.Checkpoint,
                PersonName = command.Name,
            });
            Tell(report, output);
            isProved &= report.State == CheckState.Passed;
        }

        if (pack?.Job is { } job) isProved &= JobVerification.Tell(job, input.Keys, pack.OwnKeys, output, now);
        if (input.Keys is null) TellKeys(pack?.OwnKeys, output);
        output.WriteLine(isProved ? "Proved: every check passed." : "Not proved.");
        return isProved;
    }

    private static void Tell(VerificationReport report, TextWriter output)
    {
        output.WriteLine(report.Credential is { } credential
            ? $"{(credential.Recipient is NamedRecipient person ? person.Name : "(name hidden)")}, {credential.Shop}: {credential.Title}"
            : "A credential that cannot be read");
        foreach (var result in report.Results)
        {
            var word = result.State switch { CheckState.Passed => "yes", CheckState.Failed => "no", _ => "not checked" };
            output.WriteLine($"  {word,-12}{Subject(result.Check),-11}{result.Sentence}");
        }

        output.WriteLine();
    }

    private static void TellKeys(KeyRing? own, TextWriter output)
    {
        output.WriteLine("  not checked whose key  No key was given with --key, so nothing says that the keys are those of the issuer.");
        foreach (var key in own?.Keys ?? [])
            output.WriteLine($"              The file itself names {key.Id}; compare it with {Address(key.Id.Controller)}");
        output.WriteLine();
    }

    private static string Address(string controller) =>
        DidWeb.Parse(controller) is { IsOk: true } did ? did.Value.DocumentUrl.ToString() : controller;

    private static IEnumerable<ReadOnlyMemory<byte>> Lists(ProofPack? pack)
    {
        foreach (var list in pack?.StatusLists ?? [])
            if (Jcs.Canonicalize(list) is { IsOk: true } text) yield return text.Value.Utf8.ToArray();
    }

    private static string Subject(Check check) => check switch
    {
        Check.Shape => "form",
        Check.IssuerKey => "key",
        Check.Signature => "signature",
        Check.Status => "status",
        Check.ValidFrom => "begin",
        Check.ValidUntil => "end",
        Check.Person => "person",
        _ => "log",
    };

    private static bool Not(TextWriter output, string sentence)
    {
        output.WriteLine($"Not proved. {sentence}");
        return false;
    }
}
