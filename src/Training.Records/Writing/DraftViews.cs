using NodaTime;
using Training.Content;

namespace Training.Records.Writing;

/// <summary>How far a draft has come.</summary>
public enum DraftState
{
    /// <summary>Somebody writes on it.</summary>
    InWork,

    /// <summary>Somebody asks another trainer to approve the newest text.</summary>
    Offered,

    /// <summary>Its newest text was published.</summary>
    Published,

    /// <summary>It was put away without being published; its texts are kept.</summary>
    PutAway,
}

/// <summary>What was done at the desk and changed what is served.</summary>
public enum DeskAct
{
    /// <summary>A draft was published, approved by somebody other than its writer.</summary>
    Published,

    /// <summary>A draft was published by its writer, as there was no other trainer.</summary>
    PublishedAlone,

    /// <summary>The content folder's file was taken in place of the one that was published from the desk.</summary>
    TookFolder,
}

/// <summary>A draft in the list.</summary>
/// <param name="Id">Which.</param>
/// <param name="Path">The file that it is of.</param>
/// <param name="State">How far it has come.</param>
/// <param name="Version">The number of its newest text.</param>
/// <param name="ChangedBy">Who changed it last.</param>
/// <param name="ChangedAt">When.</param>
/// <param name="OfferedBy">Who asks for it to be published; null while nobody does.</param>
public sealed record DraftLine(
    DraftId Id, string Path, DraftState State, int Version, string ChangedBy, Instant ChangedAt, string? OfferedBy);

/// <summary>A draft with its newest text.</summary>
/// <param name="Line">What the list says of it.</param>
/// <param name="Text">The newest text.</param>
/// <param name="Served">What is served at its path now; null for nothing.</param>
/// <param name="ServedMoved">Whether what is served has been changed since the draft began.</param>
public sealed record DraftView(DraftLine Line, string Text, string? Served, bool ServedMoved)
{
    /// <summary>Texts that were kept beside the draft and that nobody has decided on.</summary>
    public IReadOnlyList<DraftTextLine> Beside { get; init; } = [];

    /// <summary>Who else has it open now.</summary>
    public IReadOnlyList<string> Others { get; init; } = [];

    /// <summary>What the actor may do towards publishing it.</summary>
    public ApprovalWay Way { get; init; }
}

/// <summary>What somebody may do towards publishing a draft.</summary>
public enum ApprovalWay
{
    /// <summary>Ask another trainer to approve it.</summary>
    Offer,

    /// <summary>Approve what another trainer wrote, and publish it.</summary>
    Approve,

    /// <summary>Wait for another trainer.</summary>
    Wait,

    /// <summary>Publish it alone, as there is no other trainer.</summary>
    Alone,

    /// <summary>Nothing: it is published or put away.</summary>
    None,
}

/// <summary>A text that was kept of a draft.</summary>
/// <param name="Number">Its number within the draft.</param>
/// <param name="WrittenOn">The version that was on the screen when it was written.</param>
/// <param name="IsBeside">Whether it was written on an old version and became none itself.</param>
/// <param name="By">Who wrote it.</param>
/// <param name="At">When it was kept.</param>
public sealed record DraftTextLine(int Number, int WrittenOn, bool IsBeside, string By, Instant At);

/// <summary>A kept text with its words.</summary>
/// <param name="Line">What the list says of it.</param>
/// <param name="Text">The text.</param>
public sealed record DraftTextView(DraftTextLine Line, string Text);

/// <summary>A draft that was begun just now, or found where somebody had begun it.</summary>
/// <param name="Draft">The draft.</param>
/// <param name="BegunBy">Who had begun it before; null where it was begun just now.</param>
public sealed record DraftBegun(DraftId Draft, string? BegunBy);

/// <summary>What became of a text that was sent.</summary>
/// <param name="Number">Its number within the draft; of the newest text where it said the same.</param>
/// <param name="Version">The number of the draft's newest text.</param>
/// <param name="At">When the text was kept.</param>
/// <param name="IsBeside">Whether the draft had moved on and the text was kept beside it.</param>
public sealed record DraftSaved(int Number, int Version, Instant At, bool IsBeside);

/// <summary>The desk: everything that a trainer has to look at.</summary>
/// <param name="Drafts">Drafts in work or offered, the last changed first.</param>
/// <param name="PutAway">Drafts that were put away.</param>
/// <param name="Changes">Files that were published from the desk and changed in the folder since.</param>
/// <param name="Laid">The paths of all files that were published from the desk and stand in place of the folder's.</param>
/// <param name="Log">What was done at the desk, the last first.</param>
/// <param name="Files">The paths of all files that are served, from which a draft can begin.</param>
public sealed record DeskView(
    IReadOnlyList<DraftLine> Drafts, IReadOnlyList<DraftLine> PutAway, IReadOnlyList<FolderChange> Changes,
    IReadOnlyList<string> Laid, IReadOnlyList<DeskLogLine> Log, IReadOnlyList<string> Files);

/// <summary>An entry of the desk's log.</summary>
/// <param name="At">When.</param>
/// <param name="Act">What was done.</param>
/// <param name="Path">Of which file.</param>
/// <param name="Text">The hash of what is served there since; null for nothing.</param>
/// <param name="Publication">The publication that came of it.</param>
/// <param name="WrittenBy">Who wrote it.</param>
/// <param name="ApprovedBy">Who approved it.</param>
public sealed record DeskLogLine(
    Instant At, DeskAct Act, string Path, ContentHash? Text, int Publication, string WrittenBy, string ApprovedBy)
{
    /// <summary>The entry of the public log that says so; null for what was done before the log took such in.</summary>
    public long? LogEntry { get; init; }

    /// <summary>Whether all of this is what the public log says; true where the log says nothing of it yet.</summary>
    public bool FitsLog { get; init; } = true;
}

/// <summary>What became of files that were brought from elsewhere.</summary>
/// <param name="Drafts">The draft of each file, in the files' order.</param>
/// <param name="Beside">How many texts were kept beside a draft that somebody had begun.</param>
public sealed record BroughtDrafts(IReadOnlyList<DraftId> Drafts, int Beside);
