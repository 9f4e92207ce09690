using NodaTime;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Sequencing;

namespace Training.Records.Examining;

/// <summary>Sittings: one occasion of an examination (the word of ISO/IEC 17024), opened, watched over and closed by an examiner.</summary>
public sealed class Sittings
{
    /// <summary>Opens a sitting for a competency. Everybody in it is asked from the publication that is served now.</summary>
    /// <param name="actor">The examiner.</param>
    /// <param name="competency">What is examined.</param>
    /// <param name="place">Where, in words.</param>
    public Task<Outcome<SittingId, Refusal>> Open(Actor actor, CompetencyId competency, string place) =>
        throw new NotImplementedException();

    /// <summary>The sittings within reach (examiners, administrators), open ones first, then the newest.</summary>
    /// <param name="actor">Who asks.</param>
    public Task<Outcome<IReadOnlyList<SittingLine>, Refusal>> List(Actor actor) => throw new NotImplementedException();

    /// <summary>One sitting with its papers (examiners, administrators within reach).</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="sitting">The sitting.</param>
    public Task<Outcome<SittingView, Refusal>> Look(Actor actor, SittingId sitting) => throw new NotImplementedException();

    /// <summary>The technicians within the examiner's reach, each with the reason where they cannot be admitted now.</summary>
    /// <param name="actor">The sitting's examiner.</param>
    /// <param name="sitting">The sitting.</param>
    public Task<Outcome<IReadOnlyList<CandidateView>, Refusal>> Candidates(Actor actor, SittingId sitting) =>
        throw new NotImplementedException();

    /// <summary>
    /// Admits a technician: from now on they may begin their paper. Admitting somebody again gives the same paper.
    /// Refused: the examiner themself, somebody with another open paper, somebody who failed too short a while ago, a
    /// closed sitting.
    /// </summary>
    /// <param name="actor">The sitting's examiner.</param>
    /// <param name="sitting">The sitting.</param>
    /// <param name="person">The technician.</param>
    public Task<Outcome<PaperId, Refusal>> Admit(Actor actor, SittingId sitting, PersonId person) =>
        throw new NotImplementedException();

    /// <summary>Closes a sitting (its examiner, or an administrator): open papers are graded as they were saved, papers never begun lapse.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="sitting">The sitting.</param>
    public Task<Outcome<SittingView, Refusal>> Close(Actor actor, SittingId sitting) => throw new NotImplementedException();
}

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
