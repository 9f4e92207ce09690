using NodaTime;
using Training.Content.Scenarios;
using Training.Records.Asking;

namespace Training.Records.Practising;

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
