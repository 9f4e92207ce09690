using Microsoft.EntityFrameworkCore;
using Training.Content.Procedures;
using Training.Content.Scenarios;
using Training.Records.Accounts;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Records.Results;

/// <summary>
/// What people get wrong: for each rule, decoy and step of a procedure, how many people of how many who had the chance
/// (<see cref="Chance"/>). A person counts once for each source, at the first chance. Staff of the provider (trainers,
/// examiners, administrators) see all shops; somebody of a shop (its owner, its examiners) sees that shop's people as a
/// whole. Groups of fewer than five people are not shown (<see cref="SmallGroups"/>).
/// </summary>
public sealed class RuleResults
{
    private const int MostOrders = 10;

    private readonly TrainingDbContext db;
    private readonly Library library;
    private readonly ResultGroups groups;
    private readonly KeptWork kept;

    internal RuleResults(TrainingDbContext db, Library library, ResultGroups groups, KeptWork kept) =>
        (this.db, this.library, this.groups, this.kept) = (db, library, groups, kept);

    /// <summary>What is got wrong most surely in all procedures, by <see cref="ResultLine.AtLeast"/>; what nobody got wrong is not among it.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="source">Where the orders were given.</param>
    /// <param name="most">How many lines at most.</param>
    public async Task<Outcome<IReadOnlyList<ProcedureResultLine>, Refusal>> Worst(Actor actor, WorkSource source, int most)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!MaySee(actor)) return Refused.NotAllowed;
        return (from written in library.Current.Content.Procedures.Zip(await LinesOfAll(actor, source))
                from line in written.Second
                where line.Share is { Part: > 0 }
                orderby line.AtLeast descending
                select new ProcedureResultLine(written.First, line)).Take(most).ToList();
    }

    /// <summary>All procedures that are served, each with what is got wrong in it most surely.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="source">Where the orders were given.</param>
    public async Task<Outcome<IReadOnlyList<ProcedureOverview>, Refusal>> Overview(Actor actor, WorkSource source)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!MaySee(actor)) return Refused.NotAllowed;
        return library.Current.Content.Procedures.Zip(await LinesOfAll(actor, source), (written, lines) => new ProcedureOverview(
            written, lines.Max(line => line.Share?.Whole), lines.FirstOrDefault(line => line.Share is { Part: > 0 }))).ToList();
    }

    /// <summary>The results of a procedure.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="procedure">The procedure.</param>
    /// <param name="source">Where the orders were given.</param>
    /// <param name="group">Whose; null for everybody whom the actor may see. Staff of the provider may ask for a group.</param>
    public async Task<Outcome<ProcedureResults, Refusal>> Of(
        Actor actor, ProcedureId procedure, WorkSource source, GroupAsked? group = null)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!MaySee(actor)) return Refused.NotAllowed;
        if (library.Current.Content.FindProcedure(procedure) is not { } written) return Refused.NotFound;
        if (actor.Shop is not null)
            return group is null ? new ProcedureResults(written, source, null, await Lines(actor, written, source), [], []) : Refused.NotFound;
        var choices = await groups.Of(procedure, source);
        var chosen = group is null ? null : choices.FirstOrDefault(choice => choice.Cut == group.Cut && choice.Group == group.Group);
        if (group is not null && chosen is null) return Refused.NotFound;
        return new ProcedureResults(
            written, source, chosen,
            chosen is null ? await Lines(actor, written, source) : await LinesOf(written, source, chosen),
            chosen is null ? await Orders(procedure, source) : [],
            choices);
    }

    /// <summary>The results of one rule, decoy or step of a procedure, told apart by revision, shop, language and month for staff of the provider.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="procedure">The procedure.</param>
    /// <param name="what">The rule, decoy or step.</param>
    /// <param name="source">The source by which people are told apart.</param>
    public async Task<Outcome<SubjectResults, Refusal>> Of(Actor actor, ProcedureId procedure, Chance what, WorkSource source)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!MaySee(actor)) return Refused.NotAllowed;
        if (library.Current.Content.FindProcedure(procedure) is not { } written) return Refused.NotFound;
        var subject = await db.TallySubjects.AsNoTracking()
            .SingleOrDefaultAsync(known => known.Procedure == procedure && known.Kind == what.Kind && known.Subject == what.Subject);
        if (subject is null && !IsOf(written.Procedure, what)) return Refused.NotFound;
        var number = subject?.Number ?? int.MaxValue;
        var sources = new List<(WorkSource, Share?)>();
        foreach (var one in Enum.GetValues<WorkSource>()) sources.Add((one, Shown((await Tally(actor, procedure, one))?.Of(number) ?? new(0, 0))));
        var results = new SubjectResults(written, what, sources, source);
        if (actor.Shop is not null || subject is null) return results;
        var parts = await groups.Parts(procedure, source, number);
        return results with
        {
            Revisions = parts[Cut.Revision],
            Shops = parts[Cut.Shop],
            Languages = parts[Cut.Language],
            Months = parts[Cut.Month],
        };
    }

    /// <summary>Wrong orders with an example (staff of the provider alone: of a shop one could guess who gave it).</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="procedure">The procedure.</param>
    /// <param name="source">Where the orders were given.</param>
    /// <param name="code">Names the orders.</param>
    /// <param name="language">The language of the texts.</param>
    public async Task<Outcome<WrongOrderView, Refusal>> Look(Actor actor, ProcedureId procedure, WorkSource source, string code, string language)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!MaySee(actor)) return Refused.NotAllowed;
        if (actor.Shop is not null || library.Current.Content.FindProcedure(procedure) is not { } written) return Refused.NotFound;
        var order = await db.WrongOrders.AsNoTracking().SingleOrDefaultAsync(known =>
            known.Procedure == procedure && known.Source == source && known.Code == code && known.People >= SmallGroups.Fewest);
        if (order is null) return Refused.NotFound;
        var work = await kept.At(source, new(order.ExampleId, order.ExampleNumber))
            ?? throw new InvalidOperationException($"{order.ExampleId} is no order of work any more.");
        var judgedBy = await kept.Procedure(work.ProcedureHash);
        if (work.Scenario is { } scenario) judgedBy = scenario.JobOf(judgedBy);
        return new WrongOrderView(
            written, Line(order, await Subjects(procedure)), new(work.Answer, work.Verdict, judgedBy.In(language)), work.Variant);
    }

    private static bool MaySee(Actor actor) => actor.AnswersForOthers;

    private static Share? Shown(Share share) => share.Whole >= SmallGroups.Fewest ? share : null;

    private static bool IsOf(Procedure procedure, Chance what) => what.Kind switch
    {
        ChanceKind.Rule => procedure.Rules.Any(rule => rule.Id.Value == what.Subject),
        ChanceKind.Decoy => procedure.Decoys.Any(decoy => decoy.Id.Value == what.Subject),
        _ => procedure.Steps.Any(step => step.Id.Value == what.Subject),
    };

    private static (Cut Cut, string Group) Own(Actor actor) => actor.Shop is { } shop ? (Cut.Shop, shop.ToString()) : (Cut.Everybody, "");

    private static WrongOrderLine Line(WrongOrder order, IReadOnlyDictionary<int, TallySubject> subjects) =>
        new(order.Code, order.People, [.. order.Subjects.Select(number => subjects[number].Chance)], order.Cost);

    private static List<ResultLine> Sorted(IEnumerable<ResultLine> lines) =>
        [.. lines.OrderByDescending(line => line.AtLeast).ThenBy(line => line.What.Kind).ThenBy(line => line.What.Subject, StringComparer.Ordinal)];

    private static List<ResultLine> Lines(Tally? tally, IEnumerable<TallySubject> subjects) => tally is null ? [] : Sorted(
        subjects.Select(subject => (subject.Chance, Share: tally.Of(subject.Number))).Where(line => line.Share.Whole > 0)
            .Select(line => new ResultLine(line.Chance, Shown(line.Share))));

    private async Task<Tally?> Tally(Actor actor, ProcedureId procedure, WorkSource source)
    {
        var (cut, group) = Own(actor);
        return await db.Tallies.AsNoTracking().SingleOrDefaultAsync(tally =>
            tally.Source == source && tally.Cut == cut && tally.Procedure == procedure && tally.Group == group);
    }

    private async Task<Dictionary<int, TallySubject>> Subjects(ProcedureId procedure) => await db.TallySubjects.AsNoTracking()
        .Where(subject => subject.Procedure == procedure).ToDictionaryAsync(subject => subject.Number);

    private async Task<List<ResultLine>> Lines(Actor actor, WrittenProcedure written, WorkSource source) =>
        Lines(await Tally(actor, written.Id, source), (await Subjects(written.Id)).Values);

    /// <summary>The lines of each procedure that is served, in their order.</summary>
    private async Task<List<List<ResultLine>>> LinesOfAll(Actor actor, WorkSource source)
    {
        var (cut, group) = Own(actor);
        var served = library.Current.Content.Procedures.Select(written => written.Id).ToList();
        var tallies = await db.Tallies.AsNoTracking().Where(tally =>
                tally.Source == source && tally.Cut == cut && served.Contains(tally.Procedure) && tally.Group == group)
            .ToDictionaryAsync(tally => tally.Procedure);
        var subjects = (await db.TallySubjects.AsNoTracking().ToListAsync()).ToLookup(subject => subject.Procedure);
        return [.. served.Select(id => Lines(tallies.GetValueOrDefault(id), subjects[id]))];
    }

    /// <summary>The lines of a group: a number is shown only where the group stands alone in the division of its people.</summary>
    private async Task<List<ResultLine>> LinesOf(WrittenProcedure written, WorkSource source, GroupChoice group)
    {
        var lines = new List<ResultLine>();
        var parts = await groups.Parts(written.Id, source, group.Cut);
        foreach (var subject in (await Subjects(written.Id)).Values)
        {
            var (isMet, share) = parts(subject.Number, group.Group);
            if (isMet) lines.Add(new(subject.Chance, share));
        }

        return Sorted(lines);
    }

    private async Task<List<WrongOrderLine>> Orders(ProcedureId procedure, WorkSource source)
    {
        var orders = await db.WrongOrders.AsNoTracking()
            .Where(order => order.Procedure == procedure && order.Source == source && order.People >= SmallGroups.Fewest)
            .OrderByDescending(order => order.People).Take(MostOrders).ToListAsync();
        var subjects = await Subjects(procedure);
        return [.. orders.OrderByDescending(order => order.People).ThenBy(order => order.Cost).ThenBy(order => order.Code, StringComparer.Ordinal)
            .Select(order => Line(order, subjects))];
    }
}
