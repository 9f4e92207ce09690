using Microsoft.EntityFrameworkCore;
using Training.Content;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing.Procedures;

namespace Training.Records.Results;

/// <summary>The groups that the results of a procedure can be told apart by.</summary>
internal sealed class ResultGroups(TrainingDbContext db, Archive archive)
{
    private static readonly Cut[] Cuts = [Cut.Revision, Cut.Shop, Cut.Language, Cut.Month];

    /// <summary>The groups that there are: revisions by age, shops by name, languages, months by age.</summary>
    public async Task<IReadOnlyList<GroupChoice>> Of(ProcedureId procedure, WorkSource source)
    {
        var choices = new List<GroupChoice>();
        foreach (var cut in Cuts)
        {
            var names = await db.Tallies.Where(tally => tally.Source == source && tally.Cut == cut && tally.Procedure == procedure)
                .Select(tally => tally.Group).ToListAsync();
            choices.AddRange(await Named(cut, names));
        }

        return choices;
    }

    /// <summary>For one thing of a procedure how many of how many in each part, for every cut.</summary>
    public async Task<IReadOnlyDictionary<Cut, IReadOnlyList<Part<GroupChoice>>>> Parts(ProcedureId procedure, WorkSource source, int subject)
    {
        var parts = new Dictionary<Cut, IReadOnlyList<Part<GroupChoice>>>();
        foreach (var cut in Cuts)
        {
            var rows = await Rows(procedure, source, cut);
            var choices = await Named(cut, rows.Select(row => row.Group));
            parts.Add(cut, AreOrdered(cut)
                ? InOrder(choices, rows, subject)
                : Named(SmallGroups.Apart(rows.Select(row => (row.Group, row.Of(subject)))), choices));
        }

        return parts;
    }

    /// <summary>
    /// For one cut a way to ask for a thing and a group: whether anybody of the group had the chance, and how many of how
    /// many, null where the group does not stand alone.
    /// </summary>
    public async Task<Func<int, string, (bool IsMet, Share? Share)>> Parts(ProcedureId procedure, WorkSource source, Cut cut)
    {
        var rows = await Rows(procedure, source, cut);
        var numbers = rows.Index().ToDictionary(row => row.Item.Group, row => row.Index);
        if (AreOrdered(cut))
        {
            var choices = await Named(cut, numbers.Keys);
            return (subject, group) => (
                rows[numbers[group]].Of(subject).Whole > 0,
                InOrder(choices, rows, subject).FirstOrDefault(part => part.Keys is [var alone] && alone.Group == group)?.Share);
        }

        // The parts of thousands of shops would be made again for each thing of the procedure.
        var lone = new LoneGroups(rows.Max(row => row.PeopleOfAll.Length));
        foreach (var (number, row) in rows.Index()) lone.Add(number, row.PeopleOfAll);
        return (subject, group) =>
        {
            var share = rows[numbers[group]].Of(subject);
            return (share.Whole > 0, lone.IsAlone(numbers[group], subject, share.Whole) ? share : null);
        };
    }

    private static bool AreOrdered(Cut cut) => cut is Cut.Revision or Cut.Month;

    private static IReadOnlyList<Part<GroupChoice>> InOrder(IReadOnlyList<GroupChoice> choices, List<TallyRow> rows, int subject)
    {
        var byGroup = rows.ToDictionary(row => row.Group);
        return SmallGroups.InOrder(choices.Select(choice => (choice, byGroup[choice.Group].Of(subject))));
    }

    private static IReadOnlyList<Part<GroupChoice>> Named(IReadOnlyList<Part<string>> parts, IReadOnlyList<GroupChoice> choices)
    {
        var names = choices.ToDictionary(choice => choice.Group);
        return [.. parts.Select(part => new Part<GroupChoice>([.. part.Keys.Select(key => names[key])], part.Share))];
    }

    /// <summary>
    /// The tallies of all groups of a cut, in the order of their keys, so that every page makes the same parts of them. Of
    /// thousands of shops the lists are read as they are written: to make entities of them takes ten times as long.
    /// </summary>
    private Task<List<TallyRow>> Rows(ProcedureId procedure, WorkSource source, Cut cut)
    {
        var (from, by, of) = (source.ToString(), cut.ToString(), procedure.Value);
        return db.Database.SqlQuery<TallyRow>(
            $"""SELECT "Group", "People", "Wrong" FROM "Tallies" WHERE "Source" = {from} AND "Cut" = {by} AND "Procedure" = {of} ORDER BY "Group" """).ToListAsync();
    }

    private async Task<IReadOnlyList<GroupChoice>> Named(Cut cut, IEnumerable<string> groups)
    {
        switch (cut)
        {
            case Cut.Shop:
                var shops = (await db.Shops.AsNoTracking().Select(shop => new { shop.Id, shop.Name }).ToListAsync())
                    .ToDictionary(shop => shop.Id.ToString(), shop => shop.Name);
                return [.. groups.Select(group => new GroupChoice(cut, group, shops.GetValueOrDefault(group, "")))
                    .OrderBy(choice => choice.Name, StringComparer.Ordinal)];
            case Cut.Revision:
                var revisions = new List<(int Publication, GroupChoice Choice)>();
                foreach (var group in groups) revisions.Add(await Revision(group));
                return [.. revisions.OrderBy(revision => revision.Publication).Select(revision => revision.Choice)];
            default:
                return [.. groups.Order(StringComparer.Ordinal).Select(group => new GroupChoice(cut, group, group))];
        }
    }

    private async Task<(int, GroupChoice)> Revision(string hex)
    {
        var hash = ContentHash.TryParse(hex, out var known) ? known : throw new InvalidOperationException($"{hex} is no hash of a revision.");
        var first = await archive.Holding(hash);
        var revision = first.Content.Procedures.First(written => written.File.Hash == hash).Procedure.Revision;
        return (first.Number, new(Cut.Revision, hex, revision.ToString(System.Globalization.CultureInfo.InvariantCulture)) { Since = first.PublishedAt });
    }
}

/// <summary>A tally as it is written.</summary>
internal sealed class TallyRow
{
    private int[]? people;
    private int[]? wrong;

    /// <summary>Which group.</summary>
    public required string Group { get; init; }

    /// <summary>How many had the chance, as a list in JSON.</summary>
    public required string People { get; init; }

    /// <summary>How many of them got it wrong.</summary>
    public required string Wrong { get; init; }

    /// <summary>How many had the chance, by the numbers of the things.</summary>
    public int[] PeopleOfAll => people ??= Numbers(People);

    /// <summary>How many of how many got a thing wrong.</summary>
    public Share Of(int subject)
    {
        wrong ??= Numbers(Wrong);
        return subject < PeopleOfAll.Length ? new(wrong[subject], PeopleOfAll[subject]) : new(0, 0);
    }

    private static int[] Numbers(string list)
    {
        var numbers = new int[list.AsSpan().Count(',') + 1];
        var at = 0;
        foreach (var letter in list)
        {
            if (char.IsAsciiDigit(letter)) numbers[at] = (numbers[at] * 10) + (letter - '0');
            else if (letter == ',') at++;
        }

        return numbers;
    }
}
