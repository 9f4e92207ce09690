using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Content;
using Training.Content.Scenarios;
using Training.Records.Asking;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Records.Results;

/// <summary>Counts graded work into the tallies, within the change that keeps the work itself: the one is never without the other.</summary>
internal sealed class Tallies(TrainingDbContext db, Graders graders)
{
    /// <summary>Counts an order of work, if there is anything in it.</summary>
    public async Task Count(Worker worker, JudgedWork judged, Instant at)
    {
        var work = await WorkOf(worker, judged, at);
        if (!work.IsEmpty) (await Load(work)).Count(work);
    }

    /// <summary>What is counted of an order of work.</summary>
    public async Task<GradedWork> WorkOf(Worker worker, JudgedWork judged, Instant at) => new()
    {
        Source = judged.Source,
        Person = worker.Person,
        Shop = worker.Shop,
        Language = worker.Language,
        Procedure = judged.Procedure,
        ProcedureHash = judged.ProcedureHash,
        At = at,
        IsEmpty = judged.Answer.Entries.Count == 0,
        Chances = (await graders.For(judged.ProcedureHash, judged.Variant, judged.Scenario?.Absent)).Chances(judged.Answer, judged.Offered).Value,
        Broken = judged.Verdict.Findings.Select(Chance.Of).ToHashSet(),
        Cost = judged.Verdict.Cost,
        Place = judged.Place,
    };

    /// <summary>The sheets that a piece of work touches; what is new on them is added to the change.</summary>
    private async Task<TallySheets> Load(GradedWork work)
    {
        var sheets = new TallySheets { Added = made => db.Add(made) };
        // Two questions of one paper are counted in one change: what the first one added is not in the database yet.
        foreach (var subject in await Known(db.TallySubjects, subject => subject.Procedure == work.Procedure))
            sheets.Subjects.Add((subject.Procedure, subject.Chance), subject);
        foreach (var (cut, group) in TallySheets.GroupsOf(work))
            if (await db.Tallies.FindAsync(work.Source, cut, work.Procedure, group) is { } tally)
                sheets.Tallies.Add((work.Procedure, work.Source, cut, group), tally);
        if (await db.FirstChances.FindAsync(work.Person, work.Procedure, work.Source) is { } person)
            sheets.People.Add((work.Person, work.Procedure, work.Source), person);
        var code = work.OrderCode;
        if (await db.WrongOrders.FindAsync(work.Procedure, work.Source, code) is { } order)
            sheets.Orders.Add((work.Procedure, work.Source, code), order);
        return sheets;
    }

    private static async Task<IEnumerable<T>> Known<T>(DbSet<T> set, System.Linq.Expressions.Expression<Func<T, bool>> which) where T : class
    {
        await set.Where(which).LoadAsync();
        return set.Local.Where(which.Compile());
    }
}

/// <summary>Who worked.</summary>
/// <param name="Person">The person.</param>
/// <param name="Shop">Their shop; null for staff of the provider.</param>
/// <param name="Language">The language in which they answered; null where that was not noted.</param>
internal sealed record Worker(PersonId Person, ShopId? Shop, string? Language);

/// <summary>An order of work with its verdict, and where it was given.</summary>
/// <param name="Source">In practice, on a paper or at a vehicle.</param>
/// <param name="Procedure">The procedure.</param>
/// <param name="ProcedureHash">The revision that it was judged by.</param>
/// <param name="Variant">The kind of vehicle.</param>
/// <param name="Answer">The order.</param>
/// <param name="Offered">What it could be made of.</param>
/// <param name="Verdict">The verdict.</param>
/// <param name="Place">Where it is kept.</param>
internal sealed record JudgedWork(
    WorkSource Source,
    ProcedureId Procedure,
    ContentHash ProcedureHash,
    VariantId? Variant,
    Answer Answer,
    IEnumerable<StepId> Offered,
    Verdict Verdict,
    WorkPlace Place)
{
    /// <summary>The scenario that it was given in, some of whose steps may be absent; null at a vehicle.</summary>
    public Scenario? Scenario { get; private init; }

    /// <summary>What was answered to a question that asks for an order.</summary>
    public static JudgedWork Of(WorkSource source, AskedOrder question, GradedOrder order, WorkPlace place) => new(
        source, question.Written!.Id, question.Written.File.Hash, question.Variant, order.Answer, question.Offered, order.Verdict, place)
    {
        Scenario = question.Scenario,
    };

    /// <summary>What was answered to any question, as it was judged; null where something other than an order was asked for.</summary>
    public static JudgedWork? Of(WorkSource source, Question question, JudgedAnswerView judged, WorkPlace place) =>
        question is AskedOrder asked && judged is JudgedOrderView { Order: var order } ? Of(source, asked, order, place) : null;
}
