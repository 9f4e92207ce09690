using System.Globalization;
using Training.Records.Certifying;
using Training.Records.Overviews;
using Training.Records.Proving;

namespace Training.Web.Features.Proofs;

/// <summary>The proofs that were made, and the form that makes one.</summary>
public sealed class ProofsPage
{
    private const int MostAtAGlance = 12;
    private readonly Func<string, string> titled;

    /// <summary>The page.</summary>
    /// <param name="proofs">The proofs, newest first.</param>
    /// <param name="table">The shop's people and what they may do.</param>
    /// <param name="form">What was ticked and typed.</param>
    /// <param name="titled">A competency's title in the reader's language.</param>
    public ProofsPage(IReadOnlyList<ProofLine> proofs, CompetencyTable table, MakeProofForm form, Func<string, string> titled)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(form);
        (Proofs, Form, this.titled) = (proofs, form, titled);
        var all = table.Rows.SelectMany(row => row.Records).OfType<RecordLine>().ToList();
        IsEmpty = all.Count == 0;
        IsLong = all.Count > MostAtAGlance;
        string[] wanted = [.. (form.Find ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];
        var shown = all.Where(record => form.Ticks(record) || wanted.Length == 0 || wanted.Any(word => Fits(record, word))).ToList();
        FitsNobody = wanted.Length > 0 && shown.TrueForAll(form.Ticks);
        Holding = ByPerson(shown.Where(record => record.Standing is { Holds: true } || form.Ticks(record)));
        Others = ByPerson(shown.Where(record => record.Standing is not { Holds: true } && !form.Ticks(record)));
    }

    /// <summary>The proofs, newest first.</summary>
    public IReadOnlyList<ProofLine> Proofs { get; }

    /// <summary>What was ticked and typed.</summary>
    public MakeProofForm Form { get; }

    /// <summary>Whether nobody has a record.</summary>
    public bool IsEmpty { get; }

    /// <summary>Whether there are more records than are seen at a glance, so that some are looked for.</summary>
    public bool IsLong { get; }

    /// <summary>Whether nothing but what is ticked is left of the people.</summary>
    public bool FitsNobody { get; }

    /// <summary>People with their records that hold, and with any that is ticked; who is ticked stands first.</summary>
    public IReadOnlyList<PersonChoice> Holding { get; }

    /// <summary>People with their records that do not hold.</summary>
    public IReadOnlyList<PersonChoice> Others { get; }

    private List<PersonChoice> ByPerson(IEnumerable<RecordLine> records) =>
    [
        .. records.GroupBy(record => record.Person)
            .Select(of => new PersonChoice(of.First().Name, [.. of.Select(record => (record, Form.Ticks(record)))]))
            .OrderByDescending(person => person.Records.Any(choice => choice.IsTicked)).ThenBy(person => person.Name, StringComparer.Ordinal),
    ];

    private bool Fits(RecordLine record, string word) => Holds(record.Name, word) || Holds(titled(record.CompetencyTitle), word);

    // Nobody types every accent.
    private static bool Holds(string text, string word) =>
        CultureInfo.InvariantCulture.CompareInfo.IndexOf(text, word, CompareOptions.IgnoreCase | CompareOptions.IgnoreNonSpace) >= 0;
}

/// <summary>Somebody who can be chosen, with what they can be chosen for.</summary>
/// <param name="Name">Their name.</param>
/// <param name="Records">Their records, and whether each is ticked.</param>
public sealed record PersonChoice(string Name, IReadOnlyList<(RecordLine Record, bool IsTicked)> Records);

/// <summary>What is ticked and typed to make a proof.</summary>
public sealed class MakeProofForm
{
    /// <summary>The chosen records; null where none is ticked. A list that is already there is not filled by the binder.</summary>
    public IReadOnlyList<Guid>? Records { get; init; }

    /// <summary>The competency whose people are ticked while nothing else is chosen; null for none.</summary>
    public string? Of { get; init; }

    /// <summary>The customer, in words.</summary>
    public string? ForWhom { get; init; }

    /// <summary>Whom to show: names or competencies, with commas between them; empty for all.</summary>
    public string? Find { get; init; }

    /// <summary>Whether a record is ticked: as it was, or because it holds and the page was opened for its competency.</summary>
    /// <param name="record">The record.</param>
    public bool Ticks(RecordLine record)
    {
        ArgumentNullException.ThrowIfNull(record);
        return Records?.Contains(record.Id.Value) ?? (Of is not null && record.Competency.Value == Of && record.Standing is { Holds: true });
    }
}
