using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.StatusLists;
using static Training.Proofs.Credentials.CredentialVerifier;

namespace Training.Proofs.Credentials;

/// <summary>
/// Looks a credential up in the status lists that are at hand (Bitstring Status List 1.0, section 3.2). A list tells the
/// states of one instant. Of days before it says what cannot be taken back: what is not withdrawn at that instant was
/// not withdrawn before. Anything else about those days only the record's own history tells.
/// </summary>
internal static class StatusCheck
{
    public static IEnumerable<CheckResult> Of(CompetencyCredential credential, VerificationRequest request, ShopCalendar calendar)
    {
        if (credential.Status.Count == 0)
            return [NotChecked(Check.Status, CheckReason.NoStatus, "The credential names no list in which it would be withdrawn.")];
        RecordPast past = RecordPast.Of(credential, request, calendar);
        return credential.Status.Select(entry => LookUp(entry, credential, request, calendar, past));
    }

    private static CheckResult LookUp(
        StatusListEntry entry, CompetencyCredential credential, VerificationRequest request, ShopCalendar calendar, RecordPast past)
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
            ? Tell(entry, latest, request, calendar, past)
            : NotChecked(Check.Status, CheckReason.StatusListNotBelieved, $"The status list {address} is not to be believed: {doubt}");
    }

    private static CheckResult Tell(StatusListEntry entry, StatusList list, VerificationRequest request, ShopCalendar calendar, RecordPast past)
    {
        bool isSet = list.Bits[entry.Index];
        if (request.On is { } on && on < calendar.DayOf(list.ValidFrom))
            return past.On(on, list.ValidFrom, entry.Purpose, isSet);
        string day = calendar.Day(list.ValidFrom);
        if (isSet)
        {
            return entry.Purpose == StatusPurpose.Suspension
                ? Failed(Check.Status, CheckReason.Suspended, $"The issuer's list of {day} says that the record is suspended.")
                : Failed(Check.Status, CheckReason.Withdrawn, past.WhyVoid(day));
        }
        return IsTooOld(list, request, calendar)
            ? NotChecked(Check.Status, CheckReason.StatusListTooOld, $"The status list is of {day} and was to be relied on until {calendar.Day(list.ValidUntil)}; it does not say what happened since.")
            : Passed(Check.Status, entry.Purpose == StatusPurpose.Revocation ? $"It was not withdrawn on {day}." : $"It was not suspended on {day}.");
    }

    /// <summary>Whether the list's time is over before the time asked about is. Of its own day it may speak for the whole.</summary>
    private static bool IsTooOld(StatusList list, VerificationRequest request, ShopCalendar calendar)
    {
        DateOnly today = calendar.DayOf(request.Now);
        if (request.On is not { } on || on == today)
            return request.Now > list.ValidUntil;
        return on > today || (on != calendar.DayOf(list.ValidFrom) && on >= calendar.DayOf(list.ValidUntil));
    }

    private static string? AddressOf(ReadOnlySpan<byte> document)
    {
        Outcome<JsonObject> read = StrictJson.ReadObject(document);
        return read.IsOk ? read.Value.TextOf("id") : null;
    }
}
