using Training.Records.Certifying;
using Training.Records.Overviews;
using Training.Records.Proving;

namespace Training.Web.Features.Proofs;

/// <summary>The proofs that were made, and the form that makes one.</summary>
/// <param name="Proofs">The proofs, newest first.</param>
/// <param name="Table">The shop's people and what they may do.</param>
/// <param name="Form">What was ticked and typed.</param>
public sealed record ProofsPage(IReadOnlyList<ProofLine> Proofs, CompetencyTable Table, MakeProofForm Form)
{
    /// <summary>What is wrong with what was typed, if anything.</summary>
    public string? Wrong { get; init; }

    /// <summary>Whether a record is ticked: as it was, or because it holds and the page was opened for its competency.</summary>
    /// <param name="record">The record.</param>
    public bool IsTicked(RecordLine record)
    {
        ArgumentNullException.ThrowIfNull(record);
        return Form.Records?.Contains(record.Id.Value)
            ?? (Form.Of is not null && record.Competency.Value == Form.Of && record.Standing is { Holds: true });
    }

    /// <summary>What can be chosen: people with their records that count, those that hold first.</summary>
    public IReadOnlyList<RecordLine> Choices { get; } =
    [
        .. Table.Rows.SelectMany(row => row.Records).OfType<RecordLine>()
            .OrderByDescending(record => record.Standing is { Holds: true }).ThenBy(record => record.Name, StringComparer.Ordinal),
    ];
}

/// <summary>What is ticked and typed to make a proof.</summary>
public sealed class MakeProofForm
{
    /// <summary>The chosen records; null where none is ticked. A list that is already there is not filled by the binder.</summary>
    public IReadOnlyList<Guid>? Records { get; init; }

    /// <summary>The competency whose people are ticked while nothing else is chosen; null for none.</summary>
    public string? Of { get; init; }

    /// <summary>The customer, in words.</summary>
    public string? ForWhom { get; init; }
}
