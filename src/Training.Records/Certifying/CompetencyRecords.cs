using NodaTime;
using Training.Content;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Sequencing;

namespace Training.Records.Certifying;

/// <summary>
/// Competency records: issued by the services when a paper and its runs are passed, never by hand. What happens to one
/// afterwards is added to its events; nothing is changed or deleted.
/// </summary>
public sealed class CompetencyRecords
{
    /// <summary>A person's records, newest first: one's own, or those of somebody within reach (examiners, owners, trainers, administrators).</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="person">Whose.</param>
    /// <param name="on">The day that the state is asked for; null for today in the shop's time zone.</param>
    public Task<Outcome<IReadOnlyList<RecordLine>, Refusal>> Of(Actor actor, PersonId person, LocalDate? on = null) =>
        throw new NotImplementedException();

    /// <summary>One record with its evidence and events, for those who may see its person.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="record">The record.</param>
    /// <param name="on">The day that the state is asked for; null for today in the shop's time zone.</param>
    public Task<Outcome<RecordView, Refusal>> Look(Actor actor, RecordId record, LocalDate? on = null) =>
        throw new NotImplementedException();

    /// <summary>Suspends a record (an owner in the own shop, an administrator), never one's own.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="record">The record.</param>
    /// <param name="reason">Why.</param>
    public Task<Outcome<RecordView, Refusal>> Suspend(Actor actor, RecordId record, string reason) =>
        throw new NotImplementedException();

    /// <summary>Reinstates a suspended record (an owner in the own shop, an administrator), never one's own.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="record">The record.</param>
    /// <param name="reason">Why.</param>
    public Task<Outcome<RecordView, Refusal>> Reinstate(Actor actor, RecordId record, string reason) =>
        throw new NotImplementedException();

    /// <summary>Withdraws a record for good (an administrator, an examiner of the provider), never one's own.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="record">The record.</param>
    /// <param name="reason">Why.</param>
    public Task<Outcome<RecordView, Refusal>> Withdraw(Actor actor, RecordId record, string reason) =>
        throw new NotImplementedException();
}

/// <summary>What happened to a record.</summary>
public enum RecordEventKind
{
    /// <summary>It was issued.</summary>
    Issued,

    /// <summary>It was suspended.</summary>
    Suspended,

    /// <summary>It was reinstated.</summary>
    Reinstated,

    /// <summary>It was withdrawn for good.</summary>
    Withdrawn,
}

/// <summary>A record in a list.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Person">Whose.</param>
/// <param name="Name">Their name.</param>
/// <param name="Shop">Their shop's name.</param>
/// <param name="Competency">What they can do.</param>
/// <param name="CompetencyTitle">What that is called.</param>
/// <param name="Standing">How it stands on the day that was asked for; null on a day before it was issued.</param>
/// <param name="IsNewest">Whether it is the person's newest record for the competency on that day: the one that counts.</param>
public sealed record RecordLine(
    RecordId Id,
    PersonId Person,
    string Name,
    string Shop,
    CompetencyId Competency,
    string CompetencyTitle,
    RecordStanding? Standing,
    bool IsNewest);

/// <summary>A record in full.</summary>
/// <param name="Record">The record.</param>
/// <param name="On">The day that its state was asked for.</param>
/// <param name="CompetencyHash">The hash of the competency's text that it was issued by.</param>
/// <param name="IssuedAt">When it was issued.</param>
/// <param name="Paper">The paper that was passed.</param>
/// <param name="PaperHandedInAt">When the paper was handed in.</param>
/// <param name="PaperExaminer">The name of the sitting's examiner.</param>
/// <param name="Runs">The runs that were passed.</param>
/// <param name="Judged">The procedures and scenarios that were judged by, with their hashes.</param>
/// <param name="Events">What happened to it, oldest first.</param>
public sealed record RecordView(
    RecordLine Record,
    LocalDate On,
    ContentHash CompetencyHash,
    Instant IssuedAt,
    PaperId Paper,
    Instant PaperHandedInAt,
    string PaperExaminer,
    IReadOnlyList<RecordRunView> Runs,
    IReadOnlyList<JudgedTextView> Judged,
    IReadOnlyList<RecordEventView> Events);

/// <summary>A run that a record rests on.</summary>
/// <param name="Run">The run.</param>
/// <param name="ProcedureTitle">The job.</param>
/// <param name="Chassis">Which vehicle.</param>
/// <param name="Examiner">The name of the examiner who signed.</param>
/// <param name="SignedAt">When it was signed.</param>
public sealed record RecordRunView(RunId Run, string ProcedureTitle, string Chassis, string Examiner, Instant SignedAt);

/// <summary>A text that was judged by.</summary>
/// <param name="Path">Where it stands below <c>content/</c>.</param>
/// <param name="Hash">Its hash.</param>
public sealed record JudgedTextView(string Path, ContentHash Hash);

/// <summary>Something that happened to a record.</summary>
/// <param name="Kind">What.</param>
/// <param name="At">When.</param>
/// <param name="By">Who did it.</param>
/// <param name="Reason">Why; empty for the issue.</param>
public sealed record RecordEventView(RecordEventKind Kind, Instant At, string By, string Reason);
