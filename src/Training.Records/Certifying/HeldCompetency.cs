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
internal sealed record HeldCompetency(
    PersonId Person,
    string Name,
    Shop Shop,
    CompetencyId Competency,
    IReadOnlyList<(RecordId Id, string CompetencyTitle)> Records,
    RecordChain Chain)
{
    /// <summary>The day on which the person's name was removed: they have left the trade; null while it is there.</summary>
    public LocalDate? LeftOn { get; init; }

    /// <summary>Whether the person has left the trade by the end of a day.</summary>
    public bool HasLeftOn(LocalDate day) => day >= LeftOn;

    /// <summary>Whether the person may do the work on a day: the record holds, and they have not left the trade.</summary>
    public bool MayOn(LocalDate day) => !HasLeftOn(day) && LineOn(day)?.Standing is { Holds: true };

    /// <summary>The line of the record that counts on a day; null before there was one.</summary>
    public RecordLine? LineOn(LocalDate day) => Chain.NewestOn(day) is { } index
        ? new(
            Records[index].Id, Person, Name, Shop.Name, Competency, Records[index].CompetencyTitle,
            Chain.StateOn(index, day), IsNewest: true)
        : null;
}
