using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Publishing;
using Training.Records.Results;
using Training.Records.Storage;
using Period = Training.Content.Competencies.Period;

namespace Training.Records.Examining;

/// <summary>Closes papers: grades what was saved in time and keeps the verdicts.</summary>
internal sealed class PaperClosing(
    TrainingDbContext db, Archive archive, PaperDraw draw, Issuing issuing, Tallies tallies, TimeProvider clock)
{
    /// <summary>Closes every paper whose time is over, each in a change of its own.</summary>
    public async Task<int> CloseOverdue()
    {
        var now = clock.Instant();
        var overdue = await db.Papers.AsNoTracking()
            .Where(paper => paper.HandedInAt == null && paper.LapsedAt == null && paper.EndsAt <= now)
            .Select(paper => paper.Id).ToListAsync();
        var closed = 0;
        foreach (var id in overdue)
        {
            await using var change = await db.BeginChange();
            var paper = await db.Papers.Include(known => known.Questions).SingleAsync(known => known.Id == id);
            if (!paper.IsOverdue(now)) continue;
            var sitting = await db.Sittings.SingleAsync(known => known.Id == paper.SittingId);
            await Close(paper, sitting, PaperEnd.ByTime, paper.EndsAt!.Value);
            await change.CommitAsync();
            closed++;
        }

        return closed;
    }

    /// <summary>
    /// Closes an open paper within the change that is under way. A question without a saved answer is judged as an
    /// empty answer. Where the competency asks for nothing at a vehicle, its record is issued at once.
    /// </summary>
    public async Task Close(Paper paper, Sitting sitting, PaperEnd end, Instant at)
    {
        var library = await archive.Of(sitting.PublicationNumber);
        foreach (var question in paper.Questions.OrderBy(question => question.Number))
        {
            var drawn = await draw.Again(library, paper, question);
            var judged = drawn.Judge(question.AnswerJson, Content.ContentLibrary.DefaultLanguage);
            (question.VerdictJson, question.Score, question.Safe) = (judged.ToJson(), judged.Score, judged.Safe);
            if (JudgedWork.Of(WorkSource.Paper, drawn, judged, new(paper.Id.Value, question.Number)) is { } work)
                await tallies.Count(new(paper.PersonId, paper.ShopId, paper.Language), work, at);
        }

        var competency = await archive.Competency(sitting.CompetencyHash);
        paper.Score = decimal.Round(paper.Questions.Average(question => question.Score!.Value), 2, MidpointRounding.ToZero);
        paper.Safe = paper.Questions.All(question => question.Safe!.Value);
        paper.Passed = paper.Score >= competency.Paper.PassMark && paper.Safe.Value;
        await PaperResults.Add(db, paper, sitting);
        (paper.HandedInAt, paper.End) = (at, end);
        await db.SaveChangesAsync();
        await issuing.IssueIfComplete(paper, sitting, sitting.ExaminerId, at);
    }

    /// <summary>From when on somebody may sit a paper again after failing it last; null where they did not.</summary>
    public async Task<Instant?> NotBefore(PersonId person, CompetencyId competency, Period wait, Shop shop)
    {
        var failed = await db.Papers.AsNoTracking()
            .Where(paper => paper.PersonId == person && paper.Competency == competency && paper.Passed == false)
            .MaxAsync(paper => paper.HandedInAt);
        if (failed is not { } at) return null;
        // Days and months are those of the shop's calendar: P1D is the same time of the next day.
        var zone = DateTimeZoneProviders.Tzdb[shop.TimeZone];
        return at.InZone(zone).LocalDateTime.PlusMonths(wait.Months).PlusDays(wait.Days).InZoneLeniently(zone).ToInstant();
    }
}
