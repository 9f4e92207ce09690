using Microsoft.EntityFrameworkCore;
using Training.Content;
using Training.Content.Procedures;
using Training.Content.Scenarios;
using Training.Records.Asking;
using Training.Records.Examining;
using Training.Records.Observing;
using Training.Records.Practising;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing.Procedures;

namespace Training.Records.Results;

/// <summary>Graded orders as they are kept, judged again by what they were judged by.</summary>
internal sealed class KeptWork(TrainingDbContext db, Archive archive, Questions questions, PaperDraw draw, RunJudging runJudging, Tallies tallies)
{
    private const string Language = ContentLibrary.DefaultLanguage;

    private readonly Dictionary<(int Publication, ScenarioId, QuestionKind), AskedOrder> asked = [];
    private readonly OrdersJudgedOnce once = new(tallies);

    /// <summary>Tries in the order in which they were written down: SQLite's own count of rows, which VACUUM keeps in order.</summary>
    public async IAsyncEnumerable<KeptOrder> Tries()
    {
        var shops = await db.Users.AsNoTracking().ToDictionaryAsync(person => person.Id, person => person.ShopId);
        // A query that is put together further would lose its order.
        var tries = db.PracticeTries.FromSql(
            $"""SELECT * FROM "PracticeTries" WHERE "Kind" IN ({nameof(QuestionKind.Order)}, {nameof(QuestionKind.Finish)}) ORDER BY rowid""")
            .AsNoTracking().AsAsyncEnumerable();
        await foreach (var attempt in tries)
        {
            var question = await Asked(attempt.PublicationNumber, attempt.Scenario, attempt.Kind);
            var worker = new Worker(attempt.PersonId, shops[attempt.PersonId], attempt.Language);
            yield return once.Order(WorkSource.Practice, question, attempt.AnswerJson, worker, attempt.At, new(attempt.Id.Value, 0));
        }
    }

    /// <summary>Closed papers with their questions, in the order in which they were closed.</summary>
    public IAsyncEnumerable<Paper> Papers() => db.Papers.AsNoTracking().Include(paper => paper.Questions)
        .Where(paper => paper.HandedInAt != null).OrderBy(paper => paper.HandedInAt).ThenBy(paper => paper.Id).AsAsyncEnumerable();

    /// <summary>The orders that were given on a paper.</summary>
    /// <param name="paper">The paper, closed.</param>
    /// <param name="publication">The publication that its sitting drew from.</param>
    public async IAsyncEnumerable<KeptOrder> OrdersOf(Paper paper, int publication)
    {
        var worker = new Worker(paper.PersonId, paper.ShopId, paper.Language);
        foreach (var question in paper.Questions.OrderBy(question => question.Number))
        {
            if (question.Kind is not (QuestionKind.Order or QuestionKind.Finish)) continue;
            yield return once.Order(
                WorkSource.Paper, await Asked(publication, question.Scenario, question.Kind), question.AnswerJson, worker,
                paper.HandedInAt!.Value, new(paper.Id.Value, question.Number));
        }
    }

    /// <summary>Signed runs with their taps, in the order in which they were signed.</summary>
    public IAsyncEnumerable<Run> Runs() => db.Runs.AsNoTracking().Include(run => run.Taps)
        .Where(run => run.SignedAt != null).OrderBy(run => run.SignedAt).ThenBy(run => run.Id).AsAsyncEnumerable();

    /// <summary>The order of a run.</summary>
    /// <param name="run">The run, signed.</param>
    public KeptOrder OrderOf(Run run) => new(run.Procedure, async () => await tallies.WorkOf(
        new(run.TechnicianId, run.ShopId, run.Language), await Again(run), run.SignedAt!.Value));

    /// <summary>The work at a place; null where an order of work is not what is there.</summary>
    public async Task<JudgedWork?> At(WorkSource source, WorkPlace place) => source switch
    {
        WorkSource.Practice => await Again(await db.PracticeTries.AsNoTracking().SingleAsync(known => known.Id == new PracticeId(place.Id))),
        WorkSource.Paper => await Of(await db.Papers.AsNoTracking().Include(known => known.Questions)
            .SingleAsync(known => known.Id == new PaperId(place.Id)), place.Number),
        _ => await Again(await db.Runs.AsNoTracking().Include(known => known.Taps).SingleAsync(known => known.Id == new RunId(place.Id))),
    };

    /// <summary>A procedure as a text of it said, with its translations.</summary>
    public async Task<WrittenProcedure> Procedure(ContentHash text) =>
        (await archive.Holding(text)).Content.Procedures.First(procedure => procedure.File.Hash == text);

    private Task<JudgedWork?> Of(Paper paper, int number) => Again(paper, paper.Questions.Single(question => question.Number == number));

    private async Task<JudgedWork?> Again(PracticeTry attempt)
    {
        var question = (await questions.Draw(await archive.Of(attempt.PublicationNumber), attempt.Scenario, attempt.Kind, new(attempt.Seed))).Value;
        return JudgedWork.Of(WorkSource.Practice, question, question.Judge(attempt.AnswerJson, Language), new(attempt.Id.Value, 0));
    }

    private async Task<JudgedWork?> Again(Paper paper, PaperQuestion kept)
    {
        if (kept.Procedure is null) return null;
        var number = await db.Sittings.Where(sitting => sitting.Id == paper.SittingId).Select(sitting => sitting.PublicationNumber).SingleAsync();
        var question = await draw.Again(await archive.Of(number), paper, kept);
        return JudgedWork.Of(WorkSource.Paper, question, question.Judge(kept.AnswerJson, Language), new(paper.Id.Value, kept.Number));
    }

    private async Task<JudgedWork> Again(Run run) => Observing.Runs.WorkOf(run, await runJudging.Judge(run, Language));

    /// <summary>What was asked. Lots only shuffle what is offered, which changes nothing in a verdict, so it is drawn once for all of them.</summary>
    private async ValueTask<AskedOrder> Asked(int publication, ScenarioId scenario, QuestionKind kind)
    {
        if (asked.TryGetValue((publication, scenario, kind), out var known)) return known;
        var drawn = (AskedOrder)(await questions.Draw(await archive.Of(publication), scenario, kind, new(0))).Value;
        asked.Add((publication, scenario, kind), drawn);
        return drawn;
    }
}

/// <summary>An order of work as it is kept, to be judged.</summary>
/// <param name="Procedure">The procedure.</param>
/// <param name="Judge">Judges it; null where nothing stands in it. May be called beside the reading of others.</param>
internal readonly record struct KeptOrder(ProcedureId Procedure, Func<ValueTask<GradedWork?>> Judge);
