using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.StatusLists;
using static Training.Proofs.Credentials.CredentialVerifier;

namespace Training.Proofs.Credentials;

/// <summary>
/// What happened to a record before a status list was signed, as far as the entries of the log tell it that came with
/// it. Entries are believed that stand in the log by a believed checkpoint and speak of the record.
/// </summary>
internal sealed class RecordPast
{
    private readonly ShopCalendar calendar;
    private readonly IReadOnlyList<(DateOnly Day, string Kind)>? happened;
    private readonly DateTimeOffset knownUntil;

    private RecordPast(ShopCalendar calendar, IReadOnlyList<(DateOnly, string)>? happened, DateTimeOffset knownUntil) =>
        (this.calendar, this.happened, this.knownUntil) = (calendar, happened, knownUntil);

    public static RecordPast Of(CompetencyCredential credential, VerificationRequest request, ShopCalendar calendar)
    {
        RecordPast unknown = new(calendar, null, default);
        if (request.History is not { } entries || credential.Log is not { } place
            || (place.Checkpoint ?? request.Checkpoint)?.Verify(request.Keys, request.Now) is not { IsOk: true } believed)
            return unknown;
        List<(long Index, DateOnly Day, string Kind)> happened = [];
        foreach (LogInclusion entry in entries)
        {
            JsonObject said = entry.Entry.Content();
            if (!entry.SpeaksOf(credential.Id) || entry.Origin != place.Origin || entry.Proof.LeafIndex <= place.Proof.LeafIndex
                || LogCheck.HoldAgainst(entry, believed.Value, null, calendar).State != CheckState.Passed
                || said.TextOf("kind") is not { } kind || DateTimeStamp.Parse(said.TextOf("at")) is not { IsOk: true } at)
                return unknown;
            happened.Add((entry.Proof.LeafIndex, calendar.DayOf(at.Value), kind));
        }
        return new(calendar, [.. happened.OrderBy(entry => entry.Index).Select(entry => (entry.Day, entry.Kind))], believed.Value.Time);
    }

    /// <summary>How it stood on a day before that of a list, by the end of that day.</summary>
    public CheckResult On(DateOnly day, DateTimeOffset list, StatusPurpose purpose, bool isSet)
    {
        string asked = ShopCalendar.Written(day);
        // What is withdrawn stays so: if it is not by the time of the list, it was not before.
        if (purpose == StatusPurpose.Revocation && !isSet)
            return Passed(Check.Status, $"It was not withdrawn by {calendar.Day(list)}.");
        if (happened is null || day >= calendar.DayOf(knownUntil) || (purpose == StatusPurpose.Revocation && !happened.Any(IsWithdrawal)))
        {
            return NotChecked(Check.Status, CheckReason.StatusListTooNew, purpose == StatusPurpose.Revocation
                ? $"The issuer's list of {calendar.Day(list)} says that the record is withdrawn or ended early; it does not say since when, and so not how it stood on {asked}."
                : $"The issuer's list tells {calendar.Day(list)}; whether the record was suspended on {asked} it does not say.");
        }
        List<(DateOnly Day, string Kind)> until = [.. happened.Where(entry => entry.Day <= day)];
        if (purpose == StatusPurpose.Revocation)
        {
            return until.Any(IsWithdrawal)
                ? Failed(Check.Status, CheckReason.Withdrawn, $"The log says that it was withdrawn on {ShopCalendar.Written(until.First(IsWithdrawal).Day)}.")
                : Passed(Check.Status, $"By the log it was withdrawn only after {asked}.");
        }
        (DateOnly since, string last) = until.LastOrDefault(entry => entry.Kind is "record-suspended" or "record-reinstated");
        return last == "record-suspended"
            ? Failed(Check.Status, CheckReason.Suspended, $"The log says that it was suspended on {ShopCalendar.Written(since)}, and still on {asked}.")
            : Passed(Check.Status, $"By the log it was not suspended on {asked}.");
    }

    /// <summary>Why a set bit voids the record, in the word that the issuer's own page has for it.</summary>
    public string WhyVoid(string day) =>
        happened is null ? $"The issuer's list of {day} says that the record is withdrawn, or ended early by a new revision."
        : happened.Any(IsWithdrawal) ? $"The issuer's list of {day} says that the record is withdrawn."
        : $"The issuer's list of {day} says that the record expired early: a new revision ended it.";

    private static bool IsWithdrawal((DateOnly Day, string Kind) entry) => entry.Kind == "record-withdrawn";
}
