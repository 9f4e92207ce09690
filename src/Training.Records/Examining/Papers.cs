using Microsoft.EntityFrameworkCore;
using Training.Content;
using Training.Content.Competencies;
using Training.Content.Scenarios;
using Training.Records.Accounts;
using Training.Records.Asking;
using Training.Records.Practising;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Examining;

/// <summary>
/// Papers: what one technician answers in one sitting. Nothing that these methods return before a paper is handed in says
/// what is right. Whoever looks at a paper after its end closes it first, and it is graded as it was saved in time.
/// </summary>
public sealed class Papers
{
    private const int MostSeeds = 10;

    private readonly TrainingDbContext db;
    private readonly Archive archive;
    private readonly PaperDraw draw;
    private readonly PaperClosing closing;
    private readonly PaperLines lines;
    private readonly TimeProvider clock;

    internal Papers(
        TrainingDbContext db, Archive archive, PaperDraw draw, PaperClosing closing, PaperLines lines, TimeProvider clock) =>
        (this.db, this.archive, this.draw, this.closing, this.lines, this.clock) = (db, archive, draw, closing, lines, clock);

    /// <summary>The actor's own papers, newest first.</summary>
    /// <param name="actor">Who asks.</param>
    public async Task<IReadOnlyList<PaperLine>> Mine(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await closing.CloseOverdue();
        return await lines.Of(db.Papers.Where(paper => paper.PersonId == actor.Person));
    }

    /// <summary>
    /// How a paper stands and, once it is closed, its result. The answers with their verdicts come with it for examiners
    /// and administrators once it is handed in, for the technician once the sitting is closed; a shop's owner sees the result alone.
    /// </summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="language">The language of the texts.</param>
    public async Task<Outcome<PaperView, Refusal>> Look(
        Actor actor, PaperId paper, string language = ContentLibrary.DefaultLanguage)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await closing.CloseOverdue();
        var found = await db.Papers.AsNoTracking().Include(known => known.Questions).SingleOrDefaultAsync(known => known.Id == paper);
        if (found is null) return Refused.NotFound;
        var isOwn = found.PersonId == actor.Person;
        var isExaminer = actor.Is(Roles.Examiner) || actor.Is(Roles.Administrator);
        if (!isOwn && !(actor.Reaches(found.ShopId) && (isExaminer || actor.Is(Roles.Owner)))) return Refused.NotFound;
        var sitting = await db.Sittings.AsNoTracking().SingleAsync(known => known.Id == found.SittingId);
        var blueprint = (await archive.Competency(sitting.CompetencyHash)).Paper;
        var areAnswersShown = found.State == PaperState.HandedIn && (isOwn ? sitting.ClosedAt is not null : isExaminer);
        return new PaperView(
            (await lines.Of(db.Papers.Where(known => known.Id == paper)))[0],
            blueprint.Time.ToNoda(),
            blueprint.Questions.Sum(draw => draw.Count),
            sitting.ClosedAt,
            areAnswersShown ? await Judged(found, sitting, language) : null);
    }

    /// <summary>Begins the actor's own paper: the questions are drawn and the time runs. Beginning again gives the same paper.</summary>
    /// <param name="actor">The technician.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="language">The language of the texts.</param>
    public async Task<Outcome<OpenPaper, Refusal>> Begin(
        Actor actor, PaperId paper, string language = ContentLibrary.DefaultLanguage)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await closing.CloseOverdue();
        await using (var change = await db.BeginChange())
        {
            var found = await Own(actor, paper);
            if (found is null) return Refused.NotFound;
            if (found.State == PaperState.Admitted)
            {
                var sitting = await db.Sittings.SingleAsync(known => known.Id == found.SittingId);
                var blueprint = (await archive.Competency(sitting.CompetencyHash)).Paper;
                var drawn = await Fresh(await archive.Of(sitting.PublicationNumber), blueprint, await Neighbours(found));
                if (!drawn.IsOk) return drawn.Fault;
                found.Seed = drawn.Value.Seed;
                found.Questions.AddRange(drawn.Value.Questions);
                found.Language = language;
                found.BegunAt = clock.Instant();
                found.EndsAt = found.BegunAt + blueprint.Time.ToNoda();
                await db.SaveChangesAsync();
                await change.CommitAsync();
            }
        }

        return await Open(actor, paper, language);
    }

    /// <summary>The actor's own open paper with what was saved; refused where it is not begun or closed.</summary>
    /// <param name="actor">The technician.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="language">The language of the texts.</param>
    public async Task<Outcome<OpenPaper, Refusal>> Open(
        Actor actor, PaperId paper, string language = ContentLibrary.DefaultLanguage)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await closing.CloseOverdue();
        db.ChangeTracker.Clear();
        var found = await Own(actor, paper);
        if (found is null) return Refused.NotFound;
        if (WhyNotOpen(found) is { } wrong) return wrong;
        var sitting = await db.Sittings.AsNoTracking().SingleAsync(known => known.Id == found.SittingId);
        var library = await archive.Of(sitting.PublicationNumber);
        var left = found.EndsAt!.Value - clock.Instant();
        var questions = new List<OpenQuestion>();
        foreach (var kept in found.Questions.OrderBy(question => question.Number))
        {
            var question = await draw.Again(library, found, kept);
            questions.Add(new(kept.Number, question.View(language), SavedOf(kept, question)));
        }

        return new OpenPaper(
            paper,
            library.Content.FindCompetency(found.Competency)!.Title,
            found.EndsAt.Value,
            left < NodaTime.Duration.Zero ? NodaTime.Duration.Zero : left,
            questions);
    }

    /// <summary>
    /// Saves an answer while the paper is open. A save changes nothing where its counter is not above that of the save that is
    /// held, so that a late older one never overwrites a newer one, and where what is held is none of those that it was made
    /// from, so that of two pages at one question neither overwrites the other unseen.
    /// </summary>
    /// <param name="actor">The technician.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="number">The question's number, from 1.</param>
    /// <param name="answerJson">The answer, finished or not, in the form of its kind (<see cref="SavedAnswerView"/>).</param>
    /// <param name="counter">Counted up by the browser with each save of this question, from 1.</param>
    /// <param name="madeFrom">
    /// The counters of the saves that the answer may have been made from: the one that its page showed (0 for none), and those
    /// that the page sent since without hearing of them. Null where there is no page.
    /// </param>
    /// <returns>What is held now; another answer than this one where it was not saved (<see cref="SavedAnswerView.IsAnother"/>).</returns>
    public async Task<Outcome<SavedAnswerView, Refusal>> Save(
        Actor actor, PaperId paper, int number, string answerJson, long counter, IReadOnlyCollection<long>? madeFrom = null)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await closing.CloseOverdue();
        await using var change = await db.BeginChange();
        var found = await Own(actor, paper);
        if (found is null) return Refused.NotFound;
        if (WhyNotOpen(found) is { } wrong) return wrong;
        var now = clock.Instant();
        // The clock went on while the change waited for its turn.
        if (found.IsOverdue(now)) return TimeIsOver;
        var question = found.Questions.SingleOrDefault(known => known.Number == number);
        if (question is null) return new Refusal($"The paper has no question {number}.");
        if (counter < 1) return new Refusal("Saves are counted from 1; load the page again.");
        var sitting = await db.Sittings.SingleAsync(known => known.Id == found.SittingId);
        var asked = await draw.Again(await archive.Of(sitting.PublicationNumber), found, question);
        var answer = asked.Read(answerJson);
        if (!answer.IsOk) return answer.Fault;
        if (question.AnswerJson == answer.Value.Json) return SavedOf(question, asked)!;
        if (counter > question.AnswerCounter && madeFrom?.Contains(question.AnswerCounter) != false)
        {
            question.AnswerJson = answer.Value.Json;
            (question.AnswerCounter, question.AnswerSavedAt) = (counter, now);
            await db.SaveChangesAsync();
            await change.CommitAsync();
            return SavedOf(question, asked)!;
        }

        return SavedOf(question, asked)! with { IsAnother = true };
    }

    /// <summary>Hands the actor's own paper in. A second time gives the same result.</summary>
    /// <param name="actor">The technician.</param>
    /// <param name="paper">The paper.</param>
    public async Task<Outcome<PaperResult, Refusal>> HandIn(Actor actor, PaperId paper)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await closing.CloseOverdue();
        await using var change = await db.BeginChange();
        var found = await Own(actor, paper);
        if (found is null) return Refused.NotFound;
        if (found.State != PaperState.HandedIn && WhyNotOpen(found) is { } wrong) return wrong;
        var sitting = await db.Sittings.SingleAsync(known => known.Id == found.SittingId);
        if (found.State == PaperState.Open)
        {
            var now = clock.Instant();
            if (found.IsOverdue(now)) await closing.Close(found, sitting, PaperEnd.ByTime, found.EndsAt!.Value);
            else await closing.Close(found, sitting, PaperEnd.ByHand, now);
            await change.CommitAsync();
        }

        return PaperLines.ResultOf(found, (await archive.Competency(sitting.CompetencyHash)).Paper.PassMark)!;
    }

    /// <summary>Closes every paper whose time is over; the host calls it every minute.</summary>
    /// <returns>How many were closed.</returns>
    public Task<int> CloseOverdue() => closing.CloseOverdue();

    private static Refusal TimeIsOver { get; } = new("The time is over; what was saved before is graded.");

    private static Refusal? WhyNotOpen(Paper paper) => paper.State switch
    {
        PaperState.Admitted => new("The paper is not begun yet."),
        PaperState.Lapsed => new("The sitting was closed before the paper was begun."),
        PaperState.HandedIn when paper.End == PaperEnd.ByTime => TimeIsOver,
        PaperState.HandedIn when paper.End == PaperEnd.BySitting => new("The sitting is closed; what was saved before is graded."),
        PaperState.HandedIn => new("The paper is handed in."),
        _ => null,
    };

    private static SavedAnswerView? SavedOf(PaperQuestion kept, Question question) => kept.AnswerJson is { } json
        ? new(json, kept.AnswerCounter, kept.AnswerSavedAt!.Value, question.Read(json).Value.Parts)
        : null;

    /// <summary>How often the other papers of the sitting ask about a scenario in a way.</summary>
    private async Task<IReadOnlyDictionary<(QuestionKind, ScenarioId), int>> Neighbours(Paper paper)
    {
        var asked = await db.Papers.Where(other => other.SittingId == paper.SittingId && other.Id != paper.Id)
            .SelectMany(other => other.Questions).Select(question => new { question.Kind, question.Scenario }).ToListAsync();
        return asked.CountBy(question => (question.Kind, question.Scenario)).ToDictionary();
    }

    /// <summary>Questions from a seed that nobody knows.</summary>
    private async Task<Outcome<(long Seed, List<PaperQuestion> Questions), Refusal>> Fresh(
        PublishedLibrary library, PaperBlueprint blueprint, IReadOnlyDictionary<(QuestionKind, ScenarioId), int> neighbours)
    {
        // The reader has tried every kind on every scenario; should one seed have no question, another has.
        for (var attempt = 1; ; attempt++)
        {
            var seed = Practice.FreshSeed();
            var drawn = await draw.Draw(library, blueprint, seed, neighbours);
            if (drawn.IsOk) return (seed, drawn.Value);
            if (attempt == MostSeeds) return drawn.Fault;
        }
    }

    private Task<Paper?> Own(Actor actor, PaperId paper) => db.Papers.Include(known => known.Questions)
        .SingleOrDefaultAsync(known => known.Id == paper && known.PersonId == actor.Person);

    private async Task<List<JudgedAnswerView>> Judged(Paper paper, Sitting sitting, string language)
    {
        var library = await archive.Of(sitting.PublicationNumber);
        var judged = new List<JudgedAnswerView>();
        foreach (var kept in paper.Questions.OrderBy(question => question.Number))
        {
            var question = await draw.Again(library, paper, kept);
            judged.Add(question.Judge(kept.AnswerJson, language));
        }

        return judged;
    }
}
