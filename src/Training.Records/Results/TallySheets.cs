using System.Security.Cryptography;
using System.Text;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Records.Results;

/// <summary>
/// The tallies in memory, and how graded work is counted into them: one law for the answer that is graded now and for
/// counting everything again. Whoever counts loads what the work touches (<see cref="Tallies"/>) or begins empty.
/// </summary>
internal sealed class TallySheets
{
    public Dictionary<(ProcedureId Procedure, Chance Chance), TallySubject> Subjects { get; } = [];

    public Dictionary<(ProcedureId, WorkSource, Cut, string Group), Tally> Tallies { get; } = [];

    public Dictionary<(PersonId, ProcedureId, WorkSource), FirstChances> People { get; } = [];

    public Dictionary<(ProcedureId, WorkSource, string Code), WrongOrder> Orders { get; } = [];

    /// <summary>Called with everything that is new on the sheets.</summary>
    public Action<object> Added { get; init; } = _ => { };

    /// <summary>The groups that a piece of work belongs to, one of each cut.</summary>
    public static IEnumerable<(Cut Cut, string Group)> GroupsOf(GradedWork work) =>
    [
        (Cut.Everybody, ""),
        (Cut.Revision, work.ProcedureHash.Hex),
        (Cut.Shop, work.Shop?.ToString() ?? ""),
        (Cut.Language, work.Language ?? ""),
        (Cut.Month, work.At.InUtc().Date.ToString("uuuu-MM", System.Globalization.CultureInfo.InvariantCulture)),
    ];

    /// <summary>Names a set of things that were got wrong; the same set has the same name.</summary>
    public static string CodeOf(IReadOnlySet<Chance> broken) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(
        string.Join('\n', broken.Select(chance => $"{chance.Kind} {chance.Subject}").Order(StringComparer.Ordinal)))))[..16];

    /// <summary>
    /// Counts a piece of work. What the person had the chance for before is not counted again, whether it was got wrong
    /// then or now: what somebody does after practice says little about what the lesson taught.
    /// </summary>
    public void Count(GradedWork work)
    {
        var person = Take(People, (work.Person, work.Procedure, work.Source), () => new()
        {
            PersonId = work.Person,
            Procedure = work.Procedure,
            Source = work.Source,
        });
        // In one order for everybody, so that the numbers of new things do not depend on chance.
        Chance[] met = [.. work.Chances.Where(chance => !IsMet(work.Procedure, chance, person))
            .OrderBy(chance => chance.Kind).ThenBy(chance => chance.Subject, StringComparer.Ordinal)];
        if (met.Length > 0)
        {
            Tally[] tallies = [.. GroupsOf(work).Select(of => TallyOf(work, of.Cut, of.Group))];
            foreach (var chance in met)
            {
                var number = NumberOf(work.Procedure, chance);
                person.Subjects.Add(number);
                foreach (var tally in tallies) tally.Count(number, work.Broken.Contains(chance));
            }
        }

        if (work.Broken.Count > 0) CountOrder(work, person);
    }

    private void CountOrder(GradedWork work, FirstChances person)
    {
        var code = work.OrderCode;
        var order = Take(Orders, (work.Procedure, work.Source, code), () => new()
        {
            Procedure = work.Procedure,
            Source = work.Source,
            Code = code,
            Subjects = [.. work.Broken.Select(chance => NumberOf(work.Procedure, chance)).Order()],
            Cost = work.Cost,
            ExampleId = work.Place.Id,
            ExampleNumber = work.Place.Number,
        });
        if (work.Cost < order.Cost) (order.Cost, order.ExampleId, order.ExampleNumber) = (work.Cost, work.Place.Id, work.Place.Number);
        if (person.Orders.Contains(code)) return;
        person.Orders.Add(code);
        order.People++;
    }

    private Tally TallyOf(GradedWork work, Cut cut, string group) => Take(Tallies, (work.Procedure, work.Source, cut, group), () => new()
    {
        Procedure = work.Procedure,
        Source = work.Source,
        Cut = cut,
        Group = group,
    });

    private bool IsMet(ProcedureId procedure, Chance chance, FirstChances person) =>
        Subjects.TryGetValue((procedure, chance), out var subject) && person.Subjects.Contains(subject.Number);

    private int NumberOf(ProcedureId procedure, Chance chance) => Take(Subjects, (procedure, chance), () => new()
    {
        Procedure = procedure,
        Number = Subjects.Keys.Count(known => known.Procedure == procedure),
        Kind = chance.Kind,
        Subject = chance.Subject,
    }).Number;

    private T Take<TKey, T>(Dictionary<TKey, T> sheets, TKey key, Func<T> make) where TKey : notnull where T : class
    {
        if (sheets.TryGetValue(key, out var known)) return known;
        var made = make();
        sheets.Add(key, made);
        Added(made);
        return made;
    }
}
