using NodaTime;
using Training.Content.Competencies;
using Training.Records.Asking;

namespace Training.Records.Examining;

/// <summary>How far a paper has come.</summary>
public enum PaperState
{
    /// <summary>The technician may begin.</summary>
    Admitted,

    /// <summary>The time runs.</summary>
    Open,

    /// <summary>It is closed and graded.</summary>
    HandedIn,

    /// <summary>The sitting was closed before it was begun.</summary>
    Lapsed,
}

/// <summary>What closed a paper.</summary>
public enum PaperEnd
{
    /// <summary>The technician handed it in.</summary>
    ByHand,

    /// <summary>Its time was over.</summary>
    ByTime,

    /// <summary>The sitting was closed.</summary>
    BySitting,
}

/// <summary>A paper in a list.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Sitting">The sitting.</param>
/// <param name="Competency">What is examined.</param>
/// <param name="CompetencyTitle">What that is called.</param>
/// <param name="Person">The technician.</param>
/// <param name="Name">The technician's name.</param>
/// <param name="Shop">The technician's shop.</param>
/// <param name="State">How far it has come.</param>
/// <param name="AdmittedAt">When the technician was admitted.</param>
/// <param name="BegunAt">When it was begun; null where it was not.</param>
/// <param name="EndsAt">When its time is over; null where it was not begun.</param>
/// <param name="Result">The result, once it is graded.</param>
public sealed record PaperLine(
    PaperId Id,
    SittingId Sitting,
    CompetencyId Competency,
    string CompetencyTitle,
    PersonId Person,
    string Name,
    string Shop,
    PaperState State,
    Instant AdmittedAt,
    Instant? BegunAt,
    Instant? EndsAt,
    PaperResult? Result);

/// <summary>The result of a paper.</summary>
/// <param name="Score">The mean of its answers' scores, from 0 to 100, two decimals.</param>
/// <param name="Safe">Whether every answer was safe.</param>
/// <param name="Passed">Whether the score reached the pass mark and every answer was safe.</param>
/// <param name="PassMark">The pass mark.</param>
/// <param name="HandedInAt">When it was closed.</param>
/// <param name="End">What closed it.</param>
public sealed record PaperResult(decimal Score, bool Safe, bool Passed, int PassMark, Instant HandedInAt, PaperEnd End);

/// <summary>A paper, and its judged answers where the one who asks may see them now.</summary>
/// <param name="Paper">The paper.</param>
/// <param name="Time">How long it lasts.</param>
/// <param name="Questions">How many questions it asks.</param>
/// <param name="SittingClosedAt">When the sitting was closed; null while it is open.</param>
/// <param name="Answers">The answers with their verdicts, by number; null where they are not (yet) shown.</param>
public sealed record PaperView(
    PaperLine Paper, NodaTime.Duration Time, int Questions, Instant? SittingClosedAt, IReadOnlyList<JudgedAnswerView>? Answers);

/// <summary>A paper while its time runs.</summary>
/// <param name="Id">Its id.</param>
/// <param name="CompetencyTitle">What is examined.</param>
/// <param name="EndsAt">When the time is over.</param>
/// <param name="Left">How much time is left by the server's clock.</param>
/// <param name="Questions">The questions, by number from 1.</param>
public sealed record OpenPaper(
    PaperId Id, string CompetencyTitle, Instant EndsAt, NodaTime.Duration Left, IReadOnlyList<OpenQuestion> Questions);

/// <summary>A question of an open paper.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Question">What is shown.</param>
/// <param name="Saved">What was saved; null for nothing yet.</param>
public sealed record OpenQuestion(int Number, QuestionView Question, SavedAnswerView? Saved);

/// <summary>An answer as it is held.</summary>
/// <param name="AnswerJson">
/// The answer: the bare list of entries of the contract for an order, otherwise as <see cref="ChosenOptions"/> or <see cref="TypedReading"/> says.
/// </param>
/// <param name="Counter">The counter that it was saved with.</param>
/// <param name="SavedAt">When.</param>
/// <param name="Parts">How many steps, options or fields are in it; 0 for an answer with nothing in it.</param>
public sealed record SavedAnswerView(string AnswerJson, long Counter, Instant SavedAt, int Parts)
{
    /// <summary>
    /// Whether this is another answer than the one that was sent: somebody saved it, on another page or device, after what
    /// was sent had been begun. Nothing was changed.
    /// </summary>
    public bool IsAnother { get; init; }
}
