using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Credentials;
using Training.Proofs.Signing;

namespace Training.Cli.Verifying;

/// <summary>Checks the credentials of a file and tells of each check how it came out.</summary>
internal static class CredentialVerification
{
    // Beyond that a last line would be a page.
    private const int MostNamed = 5;

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

        var credentials = pack?.Credentials ?? [document.Value];
        var issuer = AchievementCredential.Read(credentials[0]) is { IsOk: true } first ? first.Value.Issuer.Id.ToString() : "";
        var whole = pack?.CheckWhole(input.Keys?.For(issuer) ?? pack.OwnKeys, now);
        var telling = new Telling(output);
        List<CompetencyCredential> told = [];
        foreach (var credential in credentials)
        {
            // Whatever the file's own spelling, what is checked is the value.
            var text = Jcs.Canonicalize(credential);
            if (!text.IsOk) return Not(output, text.Sentence);
            var named = AchievementCredential.Read(credential) is { IsOk: true } read ? read.Value : null;
            var report = CredentialVerifier.Check(text.Value.Utf8, new VerificationRequest
            {
                Now = now,
                On = command.On,
                Keys = input.Keys?.For(named?.Issuer.Id.ToString() ?? "") ?? pack?.OwnKeys ?? KeyRing.Empty,
                StatusLists = [.. input.Status, .. Lists(pack)],
                Checkpoint = input.Checkpoint ?? pack?.Checkpoint,
                Consistency = input.Extension,
                History = whole is { IsOk: true } ? History(pack, named) : null,
                PersonName = command.Name,
            });
            Tell(report, telling);
            if (report.Credential is { } readable) told.Add(readable);
        }

        if (pack is not null) TellWhole(pack, whole!.Value, input.Keys?.For(issuer), input.Keys?.AreAll == true, telling);
        if (pack?.Job is { } job) JobVerification.Tell(job, told, input.Keys, pack.OwnKeys, telling, now);
        if (input.Keys is null) TellKeys(pack?.OwnKeys, telling);
        output.WriteLine(Last(telling, told, command, now));
        return telling.AllPassed;
    }

    private static void Tell(VerificationReport report, Telling telling)
    {
        telling.Begin(report.Credential is { } credential
            ? $"{Name(credential)}, {credential.Shop}: {credential.Title}"
            : "A credential that cannot be read");
        foreach (var result in report.Results) telling.Line(result.State, Subject(result.Check), result.Sentence);
        telling.End();
    }

    private static void TellWhole(ProofPack pack, Proofs.Outcome<DateTimeOffset> whole, KeyRing? trusted, bool areAll, Telling telling)
    {
        telling.Begin("The file as a whole");
        if (!pack.IsSigned)
            telling.Line(CheckState.NotChecked, "whole", "It is not signed as a whole, so nothing says that nothing was left out of it. Download it again.");
        else if (whole.IsOk)
            telling.Line(CheckState.Passed, "whole", "The issuer signed the file as it is: nothing was left out of it or put into it.");
        else
            telling.Line(CheckState.Failed, "whole", whole.Sentence);
        if (trusted is not null && KeyDocuments.Objection([pack.Issuer], trusted, areAll) is { } objection)
            telling.Line(CheckState.Failed, "keys", objection);
        if (pack.Job is null) telling.Note("This file says nothing of a job.");
        telling.End();
    }

    private static void TellKeys(KeyRing? own, Telling telling)
    {
        telling.Line(CheckState.NotChecked, "whose key", "No key was given with --key, so nothing says that the keys are those of the issuer.");
        foreach (var key in own?.Keys ?? [])
            telling.Note($"The file itself names {key.Id}; compare it with {Address(key.Id.Controller)}");
        telling.End();
    }

    private static string Last(Telling telling, List<CompetencyCredential> told, VerifyCommand command, DateTimeOffset now)
    {
        var calendar = ShopCalendar.Of(told.FirstOrDefault()?.Log?.Entry);
        var day = ShopCalendar.Written(command.On ?? calendar.DayOf(now));
        if (telling.First is { } first) return $"Not proved for {day}. {first}";
        var named = string.Join("; ", told.Take(MostNamed).Select(credential => $"{Name(credential)}, {credential.Title}"));
        return $"Proved for {day}: every check passed. {named}{(told.Count > MostNamed ? $"; and {told.Count - MostNamed} more" : "")}.";
    }

    private static string Name(CompetencyCredential credential) => credential.Recipient is NamedRecipient person ? person.Name : "(name hidden)";

    private static string Address(string controller) =>
        DidWeb.Parse(controller) is { IsOk: true } did ? did.Value.DocumentUrl.ToString() : controller;

    private static IReadOnlyList<LogInclusion>? History(ProofPack? pack, CompetencyCredential? credential) =>
        credential is null ? null : pack?.Histories.GetValueOrDefault(credential.Id.OriginalString);

    private static IEnumerable<ReadOnlyMemory<byte>> Lists(ProofPack? pack)
    {
        foreach (JsonObject list in pack?.StatusLists ?? [])
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
