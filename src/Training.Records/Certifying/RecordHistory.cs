using NodaTime;
using Training.Content.Competencies;
using Training.Records.Accounts;

namespace Training.Records.Certifying;

/// <summary>The records of one person for one competency, oldest first, and what they are worth on any day.</summary>
/// <param name="Person">The person.</param>
/// <param name="Name">Their name.</param>
/// <param name="Shop">Their shop, whose calendar counts.</param>
/// <param name="Competency">What they can do.</param>
/// <param name="Records">The records with what the competency was called then.</param>
/// <param name="Chain">What they are worth.</param>
internal sealed record RecordHistory(
    PersonId Person,
    string Name,
    Shop Shop,
    CompetencyId Competency,
    IReadOnlyList<(RecordId Id, string CompetencyTitle)> Records,
    RecordChain Chain)
{
    /// <summary>The lines of all records as they stand on a day, newest first.</summary>
    public IEnumerable<RecordLine> Lines(LocalDate day)
    {
        for (var index = Records.Count - 1; index >= 0; index--) yield return Line(index, day);
    }

    /// <summary>The line of the record that counts on a day; null before there was one.</summary>
    public RecordLine? LineOn(LocalDate day) => Chain.NewestOn(day) is { } index ? Line(index, day) : null;

    private RecordLine Line(int index, LocalDate day) => new(
        Records[index].Id, Person, Name, Shop.Name, Competency, Records[index].CompetencyTitle,
        Chain.StateOn(index, day), Chain.NewestOn(day) == index);
}
