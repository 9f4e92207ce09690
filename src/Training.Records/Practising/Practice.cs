using NodaTime;
using Training.Content;
using Training.Content.Scenarios;
using Training.Records.Accounts;
using Training.Records.Asking;
using Training.Sequencing;

namespace Training.Records.Practising;

/// <summary>Practice: as often as wanted, graded at once, with the reason for every fault.</summary>
public sealed class Practice
{
    /// <summary>Draws a question about a scenario, as it is served now.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="scenario">The scenario.</param>
    /// <param name="kind">How it is put; one of the scenario's kinds.</param>
    /// <param name="seed">The seed of the order in which things are offered; null draws a fresh one.</param>
    /// <param name="language">The language of the texts; what is not translated comes in the default language.</param>
    public Task<Outcome<PracticeQuestion, Refusal>> Draw(
        Actor actor,
        ScenarioId scenario,
        QuestionKind kind = QuestionKind.Order,
        long? seed = null,
        string language = ContentLibrary.DefaultLanguage) => throw new NotImplementedException();

    /// <summary>Grades an answer and keeps it. The same key again gives the same result and counts once.</summary>
    /// <param name="actor">Who answers.</param>
    /// <param name="handIn">What they hand in.</param>
    public Task<Outcome<PracticeResult, Refusal>> HandIn(Actor actor, PracticeHandIn handIn) => throw new NotImplementedException();

    /// <summary>A try that was handed in, with its verdict: one's own, or that of somebody within reach (trainers, examiners, owners, administrators).</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="id">The try.</param>
    public Task<Outcome<PracticeResult, Refusal>> Look(Actor actor, PracticeId id) => throw new NotImplementedException();

    /// <summary>A person's tries, newest first: one's own, or of somebody within reach.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="person">Whose.</param>
    public Task<Outcome<IReadOnlyList<PracticeLine>, Refusal>> Of(Actor actor, PersonId person) => throw new NotImplementedException();
}

/// <summary>
/// What names a practice question fully: drawn again from it, the question is the same. It goes to the browser with the
/// question and comes back with the answer; nothing in it is secret.
/// </summary>
/// <param name="Scenario">The scenario.</param>
/// <param name="Kind">How it is put.</param>
/// <param name="Publication">The publication that it was drawn from.</param>
/// <param name="Seed">The seed of the order in which things are offered.</param>
public sealed record PracticeTicket(ScenarioId Scenario, QuestionKind Kind, int Publication, long Seed);

/// <summary>A drawn practice question.</summary>
/// <param name="Ticket">What names it.</param>
/// <param name="Question">What is shown.</param>
public sealed record PracticeQuestion(PracticeTicket Ticket, QuestionView Question);

/// <summary>A practice answer that is handed in.</summary>
/// <param name="Key">A GUID that the browser made for this try, so that a try sent twice counts once.</param>
/// <param name="Ticket">The question, as it was drawn.</param>
/// <param name="AnswerJson">The answer: the bare list of entries of the contract, <c>[{"step":"key-off"},{"step":"rest","seconds":60}]</c>.</param>
public sealed record PracticeHandIn(Guid Key, PracticeTicket Ticket, string AnswerJson);

/// <summary>A practice try and what is said of it.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Ticket">The question, as it was drawn.</param>
/// <param name="At">When it was handed in.</param>
/// <param name="Judged">The question, the answer and the verdict.</param>
public sealed record PracticeResult(PracticeId Id, PracticeTicket Ticket, Instant At, JudgedAnswerView Judged);

/// <summary>A practice try in a list.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Scenario">The scenario.</param>
/// <param name="Kind">How it was put.</param>
/// <param name="At">When it was handed in.</param>
/// <param name="Accepted">Whether the order was right.</param>
/// <param name="Safe">Whether nothing could have hurt somebody.</param>
/// <param name="Score">From 0 to 100.</param>
public sealed record PracticeLine(PracticeId Id, ScenarioId Scenario, QuestionKind Kind, Instant At, bool Accepted, bool Safe, decimal Score);
