using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Training.Content;
using Training.Content.Scenarios;
using Training.Records.Accounts;
using Training.Records.Asking;
using Training.Records.Publishing;
using Training.Records.Results;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Practising;

/// <summary>Practice: as often as wanted, graded at once, with the reason for every fault.</summary>
public sealed class Practice
{
    private readonly TrainingDbContext db;
    private readonly Library library;
    private readonly Archive archive;
    private readonly Questions questions;
    private readonly Tallies tallies;
    private readonly TimeProvider clock;

    internal Practice(
        TrainingDbContext db, Library library, Archive archive, Questions questions, Tallies tallies, TimeProvider clock) =>
        (this.db, this.library, this.archive, this.questions, this.tallies, this.clock) = (db, library, archive, questions, tallies, clock);

    /// <summary>Draws a question about a scenario, as it is served now.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="scenario">The scenario.</param>
    /// <param name="kind">How it is put; one of the scenario's kinds.</param>
    /// <param name="seed">The seed of the order in which things are offered; null draws a fresh one.</param>
    /// <param name="language">The language of the texts; what is not translated comes in the default language.</param>
    public async Task<Outcome<PracticeQuestion, Refusal>> Draw(
        Actor actor,
        ScenarioId scenario,
        QuestionKind kind = QuestionKind.Order,
        long? seed = null,
        string language = ContentLibrary.DefaultLanguage)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var served = library.Current;
        var ticket = new PracticeTicket(scenario, kind, served.Number, seed ?? FreshSeed());
        var question = await Draw(ticket);
        return question.IsOk ? new PracticeQuestion(ticket, question.Value.View(language)) : question.Fault;
    }

    /// <summary>Why an answer could not be handed in as it stands, or null; nothing is graded and nothing kept.</summary>
    /// <param name="ticket">The question, as it was drawn.</param>
    /// <param name="answerJson">The answer.</param>
    public async Task<Refusal?> WhyNot(PracticeTicket ticket, string answerJson)
    {
        ArgumentNullException.ThrowIfNull(ticket);
        var drawn = await Draw(ticket);
        if (!drawn.IsOk) return drawn.Fault;
        var answer = drawn.Value.Read(answerJson);
        return answer.IsOk ? drawn.Value.Lacks(answer.Value) : answer.Fault;
    }

    /// <summary>Grades an answer and keeps it. The same key again gives the same result and counts once.</summary>
    /// <param name="actor">Who answers.</param>
    /// <param name="handIn">What they hand in.</param>
    /// <param name="language">The language of the texts.</param>
    public async Task<Outcome<PracticeResult, Refusal>> HandIn(
        Actor actor, PracticeHandIn handIn, string language = ContentLibrary.DefaultLanguage)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(handIn);
        if (handIn.Key == Guid.Empty) return new Refusal("A try needs a key of its own; load the page again.");
        var drawn = await Draw(handIn.Ticket);
        if (!drawn.IsOk) return drawn.Fault;
        var question = drawn.Value;
        var answer = question.Read(handIn.AnswerJson);
        if (!answer.IsOk) return answer.Fault;
        if (question.Lacks(answer.Value) is { } lacking) return lacking;
        var judged = question.Judge(answer.Value.Json, language);

        await using var change = await db.BeginChange();
        var known = await db.PracticeTries.SingleOrDefaultAsync(attempt => attempt.PersonId == actor.Person && attempt.Key == handIn.Key);
        if (known is not null) return await Result(known, language);
        if (!await db.Users.AnyAsync(person => person.Id == actor.Person)) return Refused.NotFound;
        var now = clock.Instant();
        var attempt = new PracticeTry
        {
            Id = PracticeId.New(now),
            PersonId = actor.Person,
            Key = handIn.Key,
            Scenario = handIn.Ticket.Scenario,
            Kind = handIn.Ticket.Kind,
            PublicationNumber = handIn.Ticket.Publication,
            Seed = handIn.Ticket.Seed,
            ScenarioHash = question.Scenario.Text.File.Hash,
            ProcedureHash = question.Written?.File.Hash,
            AnswerJson = answer.Value.Json,
            Accepted = judged.Accepted,
            Safe = judged.Safe,
            Score = judged.Score,
            At = now,
            Language = language,
        };
        db.Add(attempt);
        if (JudgedWork.Of(WorkSource.Practice, question, judged, new(attempt.Id.Value, 0)) is { } work) await tallies.Count(new(actor.Person, actor.Shop, language), work, now);
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return await Result(attempt, language);
    }

    /// <summary>A try that was handed in, with its verdict: one's own, or that of somebody within reach (trainers, examiners, owners, administrators).</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="id">The try.</param>
    /// <param name="language">The language of the texts.</param>
    public async Task<Outcome<PracticeResult, Refusal>> Look(
        Actor actor, PracticeId id, string language = ContentLibrary.DefaultLanguage)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var attempt = await db.PracticeTries.AsNoTracking().SingleOrDefaultAsync(known => known.Id == id);
        if (attempt is null || await db.PersonInSight(actor, attempt.PersonId) is null) return Refused.NotFound;
        return await Result(attempt, language);
    }

    /// <summary>A person's tries, newest first: one's own, or of somebody within reach.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="person">Whose.</param>
    public async Task<Outcome<IReadOnlyList<PracticeLine>, Refusal>> Of(Actor actor, PersonId person)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (await db.PersonInSight(actor, person) is null) return Refused.NotFound;
        return await db.PracticeTries.AsNoTracking().Where(attempt => attempt.PersonId == person)
            .OrderByDescending(attempt => attempt.At)
            .Select(attempt => new PracticeLine(
                attempt.Id, attempt.Scenario, attempt.Kind, attempt.At, attempt.Accepted, attempt.Safe, attempt.Score))
            .ToListAsync();
    }

    internal static long FreshSeed() => BitConverter.ToInt64(RandomNumberGenerator.GetBytes(sizeof(long)));

    private async Task<Outcome<Question, Refusal>> Draw(PracticeTicket ticket)
    {
        var served = library.Current;
        if (ticket.Publication != served.Number &&
            !await db.Publications.AnyAsync(publication => publication.Number == ticket.Publication)) return Refused.NotFound;
        var from = ticket.Publication == served.Number ? served : await archive.Of(ticket.Publication);
        return await questions.Draw(from, ticket.Scenario, ticket.Kind, new(ticket.Seed));
    }

    private async Task<PracticeResult> Result(PracticeTry attempt, string language)
    {
        var ticket = new PracticeTicket(attempt.Scenario, attempt.Kind, attempt.PublicationNumber, attempt.Seed);
        var question = (await Draw(ticket)).Value;
        return new(attempt.Id, ticket, attempt.At, question.Judge(attempt.AnswerJson, language));
    }
}
