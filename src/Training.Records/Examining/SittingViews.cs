using NodaTime;
using Training.Content.Competencies;
using Training.Sequencing;

namespace Training.Records.Examining;

/// <summary>A sitting in a list.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Competency">What is examined.</param>
/// <param name="CompetencyTitle">What that is called.</param>
/// <param name="Examiner">The examiner.</param>
/// <param name="ExaminerName">The examiner's name.</param>
/// <param name="Place">Where.</param>
/// <param name="OpenedAt">When it was opened.</param>
/// <param name="ClosedAt">When it was closed; null while it is open.</param>
/// <param name="Papers">How many people were admitted.</param>
public sealed record SittingLine(
    SittingId Id,
    CompetencyId Competency,
    string CompetencyTitle,
    PersonId Examiner,
    string ExaminerName,
    string Place,
    Instant OpenedAt,
    Instant? ClosedAt,
    int Papers);

/// <summary>A sitting with its papers.</summary>
/// <param name="Sitting">The sitting.</param>
/// <param name="Time">How long each paper lasts.</param>
/// <param name="PassMark">The score that is needed, in percent.</param>
/// <param name="Papers">The papers within reach, by the technicians' names.</param>
public sealed record SittingView(SittingLine Sitting, NodaTime.Duration Time, int PassMark, IReadOnlyList<PaperLine> Papers);

/// <summary>Somebody who may or may not be admitted to a sitting.</summary>
/// <param name="Person">The technician.</param>
/// <param name="Name">Their name.</param>
/// <param name="Shop">Their shop's name.</param>
/// <param name="Paper">Their paper in this sitting, where they were admitted.</param>
/// <param name="Refusal">Why they cannot be admitted now; null where they can.</param>
public sealed record CandidateView(PersonId Person, string Name, string Shop, PaperId? Paper, Refusal? Refusal);
