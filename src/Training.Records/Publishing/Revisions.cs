using Microsoft.EntityFrameworkCore;
using Training.Content;
using Training.Content.Comparing;
using Training.Records.Accounts;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Publishing;

/// <summary>
/// What was published of each file, from the first to the newest, to be read and compared for ever (trainers and
/// examiners: who asks by a procedure must know what has changed in it).
/// </summary>
public sealed class Revisions
{
    private readonly TrainingDbContext db;
    private readonly Library library;

    internal Revisions(TrainingDbContext db, Library library) => (this.db, this.library) = (db, library);

    /// <summary>Every file that ever changed or went, the newest change first.</summary>
    /// <param name="actor">Who asks.</param>
    public async Task<Outcome<IReadOnlyList<RevisedFile>, Refusal>> Changed(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!MayRead(actor)) return Refused.NotAllowed;
        var newest = library.Current.Number;
        var files = await db.Set<PublishedFile>().GroupBy(file => file.Path)
            .Select(same => new { Path = same.Key, Texts = same.Select(file => file.Hash).Distinct().Count(), Last = same.Max(file => file.PublicationNumber) })
            .Where(file => file.Texts > 1 || file.Last < newest).ToListAsync();
        List<RevisedFile> changed = [];
        foreach (var file in files)
        {
            var revisions = await Of(file.Path);
            changed.Add(new(file.Path, revisions.Count, revisions[0].At, IsServed: file.Last == newest));
        }

        return Listed(changed.OrderByDescending(file => file.At).ThenBy(file => file.Path, StringComparer.Ordinal));
    }

    /// <summary>The revisions of a file, the newest first.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="path">The file.</param>
    public async Task<Outcome<IReadOnlyList<Revision>, Refusal>> Of(Actor actor, string path)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!MayRead(actor)) return Refused.NotAllowed;
        var revisions = await Of(path);
        return revisions.Count == 0 ? Refused.NotFound : Listed(revisions);
    }

    /// <summary>Two revisions of a file held against each other.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="path">The file.</param>
    /// <param name="before">The older text.</param>
    /// <param name="after">The newer text.</param>
    public async Task<Outcome<ComparedRevisions, Refusal>> Compare(Actor actor, string path, ContentHash before, ContentHash after)
    {
        var revisions = await Of(actor, path);
        if (!revisions.IsOk) return revisions.Fault;
        var (old, now) = (revisions.Value.FirstOrDefault(one => one.Text == before), revisions.Value.FirstOrDefault(one => one.Text == after));
        if (old is null || now is null) return Refused.NotFound;
        var texts = await db.PublishedTexts.Where(text => text.Hash == before || text.Hash == after).ToDictionaryAsync(text => text.Hash, text => text.Text);
        var comparison = FileComparison.Of(new(path, texts[before]), new(path, texts[after]));
        return new ComparedRevisions(old, now, comparison, await CountJudged(before));
    }

    /// <summary>What was judged by a text: how many records rest on it, and what else is kept that names it.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="text">The text of a procedure, a scenario or a competency.</param>
    public async Task<Outcome<JudgedCounts, Refusal>> JudgedBy(Actor actor, ContentHash text)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return MayRead(actor) ? await CountJudged(text) : Refused.NotAllowed;
    }

    private async Task<JudgedCounts> CountJudged(ContentHash text)
    {
        // A text is of one sort, so only one of the three is ever found.
        var papers = db.Papers.Where(paper =>
            paper.Questions.Any(question => question.ProcedureHash == text || question.ScenarioHash == text)
            || db.Sittings.Any(sitting => sitting.Id == paper.SittingId && sitting.CompetencyHash == text));
        var runs = db.Runs.Where(run => run.AbandonedAt == null && (run.ProcedureHash == text
            || db.Papers.Any(paper => paper.Id == run.PaperId && db.Sittings.Any(sitting => sitting.Id == paper.SittingId && sitting.CompetencyHash == text))));
        return new(
            await db.CompetencyRecords.CountAsync(record =>
                papers.Any(paper => paper.Id == record.PaperId) || record.Runs.Any(rests => runs.Any(run => run.Id == rests.RunId))),
            await papers.CountAsync(paper => paper.BegunAt != null),
            await runs.CountAsync(),
            await db.PracticeTries.CountAsync(attempt => attempt.ProcedureHash == text || attempt.ScenarioHash == text));
    }

    // A text that went and came back is a revision again: what was served on a day must be found by that day.
    private async Task<List<Revision>> Of(string path)
    {
        var stood = await (from publication in db.Publications
                           orderby publication.Number
                           select new
                           {
                               publication.Number,
                               publication.At,
                               Text = publication.Files.Where(file => file.Path == path).Select(file => (ContentHash?)file.Hash).FirstOrDefault(),
                           }).ToListAsync();
        List<Revision> revisions = [];
        ContentHash? last = null;
        foreach (var one in stood)
        {
            if (one.Text != last && revisions.Count > 0 && last is not null) revisions[^1] = revisions[^1] with { Until = one.At };
            if (one.Text is { } text && text != last) revisions.Add(new(text, one.Number, one.At, null));
            last = one.Text;
        }

        revisions.Reverse();
        return revisions;
    }

    private static bool MayRead(Actor actor) => actor.Is(Roles.Trainer) || actor.Is(Roles.Examiner);

    private static Outcome<IReadOnlyList<T>, Refusal> Listed<T>(IEnumerable<T> found) => found.ToList();
}
