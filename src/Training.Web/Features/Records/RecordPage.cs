using Training.Records.Certifying;
using Training.Records.Examining;
using Training.Records.Observing;
using Training.Records.Practising;

namespace Training.Web.Features.Records;

/// <summary>A technician's own records and what they did for them.</summary>
/// <param name="Records">The records, newest first.</param>
/// <param name="Papers">The papers, newest first.</param>
/// <param name="Runs">The observed runs, newest first.</param>
/// <param name="Zone">The time zone that times are told in.</param>
public sealed record OwnRecordsPage(
    IReadOnlyList<RecordLine> Records, IReadOnlyList<PaperLine> Papers, IReadOnlyList<RunLine> Runs, string Zone)
{
    /// <summary>The practice tries, newest first.</summary>
    public IReadOnlyList<TryLine> Tries { get; init; } = [];

    /// <summary>The records that count: the newest for each competency.</summary>
    public IEnumerable<RecordLine> Counting => Records.Where(record => record.IsNewest);

    /// <summary>Records that a newer one has taken the place of.</summary>
    public IReadOnlyList<RecordLine> Earlier => [.. Records.Where(record => !record.IsNewest)];
}

/// <summary>A practice try in the list.</summary>
/// <param name="Try">The try.</param>
/// <param name="Title">What its scenario is called; null where it is no longer served.</param>
public sealed record TryLine(PracticeLine Try, string? Title);

/// <summary>A record with what it rests on.</summary>
/// <param name="View">The record.</param>
/// <param name="IsOwn">Whether it is the reader's own.</param>
/// <param name="Zone">The time zone that times are told in.</param>
public sealed record RecordPage(RecordView View, bool IsOwn, string Zone);
