using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Content;
using Training.Content.Procedures;
using Training.Records.Asking;
using Training.Records.Examining;
using Training.Records.Observing;
using Training.Records.Practising;
using Training.Records.Publishing;
using Training.Records.Storage;

namespace Training.Records.Results;

/// <summary>Graded orders as they are kept, judged again by what they were judged by.</summary>
internal sealed class KeptWork(TrainingDbContext db, Archive archive, Questions questions, PaperDraw draw, RunJudging runJudging)
{
    private const string Language = ContentLibrary.DefaultLanguage;

    /// <summary>
    /// All of it, each source in the order in which it was counted: tries as they were written down (SQLite's own count
    /// of rows, which VACUUM keeps in order), papers as they were closed, runs as they were signed.
    /// </summary>
    public async IAsyncEnumerable<(Worker Worker, JudgedWork Judged, Instant At)> All()
    {
        var shops = await db.Users.AsNoTracking().ToDictionaryAsync(person => person.Id, person => person.ShopId);
        var tries = db.PracticeTries.FromSqlRaw("SELECT * FROM \"PracticeTries\" ORDER BY rowid").AsNoTracking().AsAsyncEnumerable();
        await foreach (var attempt in tries)
            if (await Again(attempt) is { } work) yield return (new(attempt.PersonId, shops[attempt.PersonId], attempt.Language), work, attempt.At);
        var papers = await db.Papers.AsNoTracking().Where(paper => paper.HandedInAt != null)
            .OrderBy(paper => paper.HandedInAt).ThenBy(paper => paper.Id).Select(paper => paper.Id).ToListAsync();
        foreach (var id in papers)
        {
            var paper = await db.Papers.AsNoTracking().Include(known => known.Questions).SingleAsync(known => known.Id == id);
            foreach (var question in paper.Questions.OrderBy(question => question.Number))
                if (await Again(paper, question) is { } work) yield return (new(paper.PersonId, paper.ShopId, paper.Language), work, paper.HandedInAt!.Value);
        }

        var runs = await db.Runs.AsNoTracking().Include(run => run.Taps).Where(run => run.SignedAt != null)
            .OrderBy(run => run.SignedAt).ThenBy(run => run.Id).ToListAsync();
        foreach (var run in runs)
            yield return (new(run.TechnicianId, run.ShopId, run.Language), await Again(run), run.SignedAt!.Value);
    }

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
        return Practice.WorkOf(attempt, question, question.Judge(attempt.AnswerJson, Language));
    }

    private async Task<JudgedWork?> Again(Paper paper, PaperQuestion kept)
    {
        if (kept.Procedure is null) return null;
        var number = await db.Sittings.Where(sitting => sitting.Id == paper.SittingId).Select(sitting => sitting.PublicationNumber).SingleAsync();
        var question = await draw.Again(await archive.Of(number), paper, kept);
        return PaperClosing.WorkOf(paper, kept, question, question.Judge(kept.AnswerJson, Language));
    }

    private async Task<JudgedWork> Again(Run run) => Runs.WorkOf(run, await runJudging.Judge(run, Language));
}
