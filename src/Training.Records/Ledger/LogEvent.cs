using Training.Content;
using Training.Content.Competencies;
using Training.Proofs;
using Training.Records.Certifying;

namespace Training.Records.Ledger;

/// <summary>
/// What an entry of the log says, its time aside. It holds ids, kinds, dates and hashes alone: no name, no reason, no
/// user's id. What people wrote and are called stands beside the log and is bound to it by salted hashes.
/// </summary>
internal abstract record LogEvent
{
    private LogEvent()
    {
    }

    /// <summary>The log begins. Its name never changes, whatever address the provider moves to.</summary>
    public sealed record Begun(string Log) : LogEvent;

    /// <summary>Another revision of a procedure is served from now on.</summary>
    public sealed record Published(string Path, ContentHash Text, int Revision) : LogEvent;

    /// <summary>A record is issued; it renews the one before it, where it names one.</summary>
    public sealed record Issued(
        RecordId Record, CompetencyId Competency, ContentHash Text, string Zone, Sha256Digest Person, Sha256Digest Shop,
        RecordId? Before, PaperId Paper, IReadOnlyList<RunId> Runs, IReadOnlyList<JudgedText> Judged) : LogEvent;

    /// <summary>Something happened to a record. Who did it and why is hashed in <see cref="Said"/>.</summary>
    public sealed record Happened(RecordId Record, RecordEventKind Kind, Sha256Digest Said) : LogEvent;

    /// <summary>The name of a record's person was removed.</summary>
    public sealed record NameRemoved(RecordId Record) : LogEvent;

    /// <summary>
    /// Texts were published together from the desk. <see cref="Files"/> is the hash of everything that is served since
    /// (<see cref="LogEventJson.FileSet"/>).
    /// </summary>
    public sealed record DeskPublished(int Publication, Sha256Digest Files, IReadOnlyList<LoggedText> Texts) : LogEvent;

    /// <summary>The content folder's file, or none where it has none, is served again in place of the desk's.</summary>
    public sealed record FolderTaken(int Publication, Sha256Digest Files, string Path, ContentHash? Text, Sha256Digest By) : LogEvent;

    /// <summary>Something that a later version of this program wrote; it changes no record that this one knows of.</summary>
    public sealed record Unknown(string Kind) : LogEvent;
}

/// <summary>A text that a record was judged by.</summary>
/// <param name="Path">Where it stands below <c>content/</c>.</param>
/// <param name="Text">Its hash.</param>
/// <param name="Revision">Its revision where it is a procedure; null for others.</param>
internal sealed record JudgedText(string Path, ContentHash Text, int? Revision);

/// <summary>A text that was published from the desk.</summary>
/// <param name="Path">Where it stands below <c>content/</c>.</param>
/// <param name="Text">Its hash.</param>
/// <param name="Writer">The salted hash of its writer's name.</param>
/// <param name="Approver">The salted hash of the name of whoever approved it; null where its writer published it alone.</param>
internal sealed record LoggedText(string Path, ContentHash Text, Sha256Digest Writer, Sha256Digest? Approver);
