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
            var tallies = await Tallies(procedure, source, cut);
            parts.Add(cut, Divided(cut, (await Named(cut, tallies.Keys)).Select(choice => (choice, tallies[choice.Group].Of(subject)))));
        }

        return parts;
    }

    /// <summary>
    /// For one cut a way to ask for a thing and a group: whether anybody of the group had the chance, and how many of how
    /// many, null where the group does not stand alone.
    /// </summary>
    public async Task<Func<int, string, (bool IsMet, Share? Share)>> Parts(ProcedureId procedure, WorkSource source, Cut cut)
    {
        var tallies = await Tallies(procedure, source, cut);
        var choices = await Named(cut, tallies.Keys);
        // The parts of thousands of shops would be made again for each thing of the procedure.
        return (subject, group) => (
            tallies[group].Of(subject).Whole > 0,
            AreOrdered(cut)
                ? Divided(cut, choices.Select(choice => (choice, tallies[choice.Group].Of(subject))))
                    .FirstOrDefault(part => part.Keys is [var alone] && alone.Group == group)?.Share
                : SmallGroups.Alone(choices.Select(choice => (choice.Group, tallies[choice.Group].Of(subject))), group));
    }

    private static bool AreOrdered(Cut cut) => cut is Cut.Revision or Cut.Month;

    private static IReadOnlyList<Part<GroupChoice>> Divided(Cut cut, IEnumerable<(GroupChoice, Share)> groups) =>
        AreOrdered(cut) ? SmallGroups.InOrder(groups) : SmallGroups.Apart(groups);

    private Task<Dictionary<string, Tally>> Tallies(ProcedureId procedure, WorkSource source, Cut cut) => db.Tallies.AsNoTracking()
        .Where(tally => tally.Source == source && tally.Cut == cut && tally.Procedure == procedure)
        .ToDictionaryAsync(tally => tally.Group);

    private async Task<IReadOnlyList<GroupChoice>> Named(Cut cut, IEnumerable<string> groups)
    {
        switch (cut)
        {
            case Cut.Shop:
                var shops = await db.Shops.AsNoTracking().ToDictionaryAsync(shop => shop.Id.ToString(), shop => shop.Name);
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
