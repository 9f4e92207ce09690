using NodaTime;
using Training.Content;
using Training.Content.Competencies;

namespace Training.Records.Certifying;

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

    /// <summary>Somebody confirmed that the person still does the work.</summary>
    Confirmed,
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
    bool IsNewest)
{
    /// <summary>When the name of its person was removed; null while it is there.</summary>
    public Instant? NameRemovedAt { get; init; }
}

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
    IReadOnlyList<RecordEventView> Events)
{
    /// <summary>The confirmations so far, oldest first.</summary>
    public IEnumerable<RecordEventView> Confirmations => Events.Where(entry => entry.Kind == RecordEventKind.Confirmed);
}

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
public sealed record RecordEventView(RecordEventKind Kind, Instant At, string By, string Reason)
{
    /// <summary>Its place in the log, where the hash stands that binds who did it and why.</summary>
    public required long Entry { get; init; }
}
