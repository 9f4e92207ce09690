using NodaTime;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Overviews;

namespace Training.Web.Features.People;

/// <summary>Who may do what on a day, what lapses next, and who is there.</summary>
/// <param name="Table">People by competencies.</param>
/// <param name="All">Everybody within reach.</param>
/// <param name="Form">What was typed to add somebody.</param>
public sealed record PeoplePage(CompetencyTable Table, IReadOnlyList<PersonView> All, AddPersonForm Form)
{
    private static readonly Period Soon = Period.FromMonths(3);

    /// <summary>The day that was asked for; null for today.</summary>
    public LocalDate? Asked { get; init; }

    /// <summary>The shops that somebody can be added to; null for an owner, who adds to the own shop.</summary>
    public IReadOnlyList<ShopView>? Shops { get; init; }

    /// <summary>Whether people of several shops are listed, so that each line names the shop.</summary>
    public bool IsOfManyShops => Table.Rows.Select(row => row.Shop.Id).Distinct().Count() > 1;

    /// <summary>Who is no technician and so has no line in the table.</summary>
    public IEnumerable<PersonView> Others => All.Where(person => Table.Rows.All(row => row.Person != person.Id));

    /// <summary>How many may do something on the day.</summary>
    /// <param name="column">The place of the competency.</param>
    public int HowMany(int column) => Table.Rows.Count(row => row.Records[column]?.Standing is { Holds: true });

    /// <summary>Records that hold and end within three months of the day, the first to end first; at least the very next.</summary>
    public IReadOnlyList<LapsingRecord> LapsingNext
    {
        get
        {
            var holding = Table.Rows.SelectMany(row => row.Records.Where(record => record?.Standing is { Holds: true })
                    .Select(record => new LapsingRecord(row, record!, record!.Standing!)))
                .OrderBy(item => item.Standing.Until).ThenBy(item => item.Row.Name, StringComparer.Ordinal).ToList();
            return [.. holding.Where((item, index) => index == 0 || item.Standing.Until <= item.Row.On.Plus(Soon)).Take(10)];
        }
    }
}

/// <summary>A record that holds, with the person and the day that it ends on.</summary>
/// <param name="Row">The person's line.</param>
/// <param name="Record">The record.</param>
/// <param name="Standing">How it stands.</param>
public sealed record LapsingRecord(CompetencyRow Row, RecordLine Record, RecordStanding Standing);

/// <summary>What is typed to add somebody.</summary>
public sealed class AddPersonForm
{
    /// <summary>The name that is shown and printed.</summary>
    public string? DisplayName { get; init; }

    /// <summary>The name for signing in.</summary>
    public string? UserName { get; init; }

    /// <summary>The shop; null for staff of the provider.</summary>
    public Guid? Shop { get; init; }

    /// <summary>What they may do; null where nothing is ticked. An owner's people are technicians.</summary>
    public IReadOnlyList<string>? Roles { get; init; }

    /// <summary>The key of the form; sent twice, it is answered alike.</summary>
    public Guid? Key { get; init; }

    /// <summary>Who is to be added.</summary>
    /// <param name="actor">Who adds: an owner to the own shop, an administrator anywhere.</param>
    public NewPerson Person(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return actor.Is(Training.Records.Accounts.Roles.Administrator)
            ? new(DisplayName ?? "", UserName ?? "", Shop is { } shop ? new ShopId(shop) : null, Roles ?? [])
            : new(DisplayName ?? "", UserName ?? "", actor.Shop, [Training.Records.Accounts.Roles.Technician]);
    }
}
