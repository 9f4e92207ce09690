using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.StatusLists;
using static Training.Proofs.Credentials.CredentialVerifier;

namespace Training.Proofs.Credentials;

/// <summary>Looks a credential up in the status lists that are at hand (Bitstring Status List 1.0, section 3.2).</summary>
internal static class StatusCheck
{
    public static IEnumerable<CheckResult> Of(CompetencyCredential credential, VerificationRequest request) =>
        credential.Status.Count == 0
            ? [NotChecked(Check.Status, CheckReason.NoStatus, "The credential names no list in which it would be withdrawn.")]
            : credential.Status.Select(entry => LookUp(entry, credential, request));

    private static CheckResult LookUp(StatusListEntry entry, CompetencyCredential credential, VerificationRequest request)
    {
        string address = entry.List.OriginalString;
        ReadOnlyMemory<byte>[] atHand = [.. request.StatusLists.Where(list => AddressOf(list.Span) == address)];
        if (atHand.Length == 0)
            return NotChecked(Check.Status, CheckReason.NoStatusList, $"The status list {address} is not at hand.");
        List<StatusList> believed = [];
        string doubt = "";
        foreach (ReadOnlyMemory<byte> document in atHand)
        {
            Outcome<StatusList> list = StatusList.Verify(document.Span, request.Keys, request.Now);
            if (!list.IsOk)
                doubt = list.Sentence;
            else if (list.Value.Issuer != credential.Issuer.Id)
                doubt = "Somebody else than the credential's issuer issued the list.";
            else if (list.Value.Purpose != entry.Purpose)
                doubt = "The list has another purpose than the credential says.";
            else if (entry.Index >= list.Value.Bits.Entries)
                doubt = "The list has no entry at the credential's place.";
            else
                believed.Add(list.Value);
        }
        return believed.MaxBy(list => list.ValidFrom) is { } latest
            ? Tell(entry, latest, request)
            : NotChecked(Check.Status, CheckReason.StatusListNotBelieved, $"The status list {address} is not to be believed: {doubt}");
    }

    private static CheckResult Tell(StatusListEntry entry, StatusList list, VerificationRequest request)
    {
        string day = Day(list.ValidFrom);
        // A list tells the states of one instant. A set bit always counts, even where an earlier date is asked about:
        // the list does not say since when it is set. A bit that is not set says nothing of a time after the list's.
        if (list.Bits[entry.Index])
        {
            return entry.Purpose == StatusPurpose.Revocation
                ? Failed(Check.Status, CheckReason.Withdrawn, $"The issuer's list of {day} says that the credential is withdrawn.")
                : Failed(Check.Status, CheckReason.Suspended, $"The issuer's list of {day} says that the credential is suspended.");
        }
        return (request.AsOf ?? request.Now) > list.ValidUntil
            ? NotChecked(Check.Status, CheckReason.StatusListTooOld, $"The status list is of {day} and was to be relied on until {Day(list.ValidUntil)}.")
            : Passed(Check.Status, entry.Purpose == StatusPurpose.Revocation ? $"It was not withdrawn on {day}." : $"It was not suspended on {day}.");
    }

    private static string? AddressOf(ReadOnlySpan<byte> document)
    {
        Outcome<JsonObject> read = StrictJson.ReadObject(document);
        return read.IsOk ? read.Value.TextOf("id") : null;
    }
}
