using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Content;
using Training.Content.Writing;
using Training.Records.Accounts;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Writing;

/// <summary>
/// Publishes drafts (trainers only). Somebody other than the writer approves; where there is no other trainer the writer
/// does, and the public log says so.
/// </summary>
public sealed class DraftPublishing
{
    private readonly TrainingDbContext db;
    private readonly Publisher publisher;
    private readonly TimeProvider clock;

    internal DraftPublishing(TrainingDbContext db, Publisher publisher, TimeProvider clock) =>
        (this.db, this.publisher, this.clock) = (db, publisher, clock);

    /// <summary>Asks another trainer to approve the newest text.</summary>
    /// <param name="actor">Who asks: whoever wrote the newest text.</param>
    /// <param name="id">The draft.</param>
    /// <param name="version">The version that was looked at.</param>
    public async Task<Outcome<DraftId, Refusal>> Offer(Actor actor, DraftId id, int version)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer)) return Refused.NotAllowed;
        if (await NotReady(id, version) is { } refusal) return refusal;
        if (await FaultTogether(actor, id) is { } fault) return fault;
        await using var change = await db.BeginChange();
        var draft = await db.Set<Draft>().SingleAsync(known => known.Id == id);
        if (draft.Version != version) return Moved;
        if (draft.State is not (DraftState.InWork or DraftState.Offered)) return new Refusal("It is published already, or put away.");
        (draft.State, draft.OfferedById, draft.OfferedAt) = (DraftState.Offered, actor.Person, clock.Instant());
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return id;
    }

    /// <summary>
    /// Publishes drafts together, as their approver or alone where there is no other trainer: a new procedure needs the
    /// lesson that teaches it. All of them or none.
    /// </summary>
    /// <param name="actor">Who approves.</param>
    /// <param name="drafts">The drafts, each with the version that was looked at.</param>
    /// <returns>The number of the publication.</returns>
    public async Task<Outcome<int, Refusal>> Publish(Actor actor, IReadOnlyList<DraftVersion> drafts)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(drafts);
        if (!actor.Is(Roles.Trainer)) return Refused.NotAllowed;
        if (drafts.Count == 0) return Refused.NotFound;
        List<ContentFile> files = [];
        foreach (var (id, version) in drafts)
        {
            if (await NotReady(id, version) is { } refusal) return refusal;
            files.Add(await (from draft in db.Set<Draft>()
                             where draft.Id == id
                             join text in db.Set<DraftText>() on new { DraftId = draft.Id, Number = version } equals new { text.DraftId, text.Number }
                             select new ContentFile(draft.Path, text.Text)).SingleAsync());
        }

        if (files.DistinctBy(file => file.Path).Count() < files.Count) return new Refusal("Two of these drafts are of one file: choose one.");
        var laid = await publisher.Lay(files, async (within, publication) =>
        {
            List<DeskText> texts = [];
            foreach (var ((id, version), file) in drafts.Zip(files))
            {
                var draft = await within.Set<Draft>().SingleAsync(known => known.Id == id);
                if (draft.Version != version) return Moved;
                var way = await within.ApprovalWay(actor, draft);
                if (way is not (ApprovalWay.Approve or ApprovalWay.Alone))
                    return new Refusal($"Somebody other than its writer has to approve {file.Path}.");
                (draft.State, draft.BasedOn) = (DraftState.Published, file.Hash);
                // Whoever publishes what somebody wrote who is no trainer any more has not published it alone.
                texts.Add(new(file.Path, file.Hash, draft.ChangedById, draft.ChangedById == actor.Person ? null : actor.Person));
            }

            await new DeskLog(within, clock).Published(publication, texts);
            return null;
        });
        return laid.IsOk ? laid.Value.Number : laid.Fault;
    }

    /// <summary>What would be wrong with the content if a draft were published alone.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="id">The draft.</param>
    public async Task<IReadOnlyList<ContentProblem>> Missing(Actor actor, DraftId id)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer)) return [];
        var file = await (from draft in db.Set<Draft>()
                          where draft.Id == id
                          join text in db.Set<DraftText>() on new { DraftId = draft.Id, Number = draft.Version } equals new { text.DraftId, text.Number }
                          select new ContentFile(draft.Path, text.Text)).SingleOrDefaultAsync();
        if (file is null) return [];
        return [.. ContentReader.Read([.. publisher.Served.Where(other => other.Path != file.Path), file]).Problems.Where(problem => problem.HoldsBack)];
    }

    /// <summary>Says that somebody has seen what is served now beside the draft, and goes on with the draft.</summary>
    /// <param name="actor">Who decides.</param>
    /// <param name="id">The draft.</param>
    public async Task<Outcome<DraftId, Refusal>> GoOn(Actor actor, DraftId id)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer)) return Refused.NotAllowed;
        if (await db.Set<Draft>().SingleOrDefaultAsync(draft => draft.Id == id) is not { } draft) return Refused.NotFound;
        draft.BasedOn = publisher.Served.FirstOrDefault(file => file.Path == draft.Path)?.Hash;
        await db.SaveChangesAsync();
        return id;
    }

    /// <summary>Serves the content folder's file again in place of the one that was published from the desk.</summary>
    /// <param name="actor">Who decides.</param>
    /// <param name="path">The file.</param>
    /// <returns>The number of the publication.</returns>
    public async Task<Outcome<int, Refusal>> TakeFolder(Actor actor, string path)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer)) return Refused.NotAllowed;
        var taken = await publisher.Unlay(path, async (within, publication) =>
        {
            await new DeskLog(within, clock).TookFolder(publication, path, actor.Person);
            return null;
        });
        return taken.IsOk ? taken.Value.Number : taken.Fault;
    }

    /// <summary>Serves on what was published from the desk, though the folder's file was changed since.</summary>
    /// <param name="actor">Who decides.</param>
    /// <param name="path">The file.</param>
    public async Task<Outcome<PublishingState, Refusal>> KeepDesk(Actor actor, string path)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return actor.Is(Roles.Trainer) ? await publisher.KeepLaid(path) : Refused.NotAllowed;
    }

    private static Refusal Moved { get; } = new("Somebody has changed the draft meanwhile: look at it again first.");

    private async Task<Refusal?> NotReady(DraftId id, int version)
    {
        if (await db.Set<Draft>().AsNoTracking().SingleOrDefaultAsync(draft => draft.Id == id) is not { } draft) return Refused.NotFound;
        if (draft.Version != version) return Moved;
        if (draft.State is DraftState.Published or DraftState.PutAway) return new Refusal("It is published already, or put away.");
        if (publisher.Served.FirstOrDefault(file => file.Path == draft.Path)?.Hash != draft.BasedOn)
            return new Refusal($"What is served of {draft.Path} was changed after the draft began: look at both first.");
        return await db.Set<DraftText>().AnyAsync(text => text.DraftId == id && text.IsBeside && !text.IsSettled)
            ? new Refusal($"A text was kept beside the draft of {draft.Path}, for two people wrote at once: decide on it first.")
            : null;
    }

    /// <summary>
    /// Why a draft could not be published together with all others; null where it could. The other drafts on the desk count as
    /// if they were published: a lesson and its procedure are offered one by one.
    /// </summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="id">The draft.</param>
    public async Task<Refusal?> FaultTogether(Actor actor, DraftId id)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer)) return Refused.NotAllowed;
        var files = await db.FilesWithDrafts(publisher.Served);
        var path = await db.Set<Draft>().Where(draft => draft.Id == id).Select(draft => draft.Path).SingleAsync();
        var problems = ContentReader.Read(files).Problems.Where(problem => problem.HoldsBack).ToList();
        if (problems.Find(problem => problem.File == path) is { } own)
            return new Refusal($"It has an error and cannot be published: line {own.Line}: {own.Sentence}");
        if (problems.Count == 0) return null;
        // What is wrong elsewhere without it, too, is for whoever wrote that. What it breaks, as a translation, would hold it back
        // at the approval: that is too late to begin with.
        var served = publisher.Served.FirstOrDefault(file => file.Path == path);
        var without = ContentReader.Read([.. files.Where(file => file.Path != path), .. served is null ? Array.Empty<ContentFile>() : [served]]).Problems.ToHashSet();
        return problems.Find(problem => !without.Contains(problem)) is { } broken
            ? new Refusal($"With it, {broken.File} would have an error in line {broken.Line}: {broken.Sentence} Take that file up on the desk, too, and mend it there: both are published together.")
            : null;
    }
}

/// <summary>A draft with the version that somebody looked at.</summary>
/// <param name="Draft">The draft.</param>
/// <param name="Version">The version.</param>
public readonly record struct DraftVersion(DraftId Draft, int Version);

/// <summary>What is asked of drafts within the records.</summary>
internal static class DraftQuestions
{
    /// <summary>The files that are served, with the newest texts of all drafts in work or offered in place of theirs.</summary>
    public static async Task<IReadOnlyList<ContentFile>> FilesWithDrafts(this TrainingDbContext db, IReadOnlyList<ContentFile> served) =>
        (await db.OnDesk(served)).Together;

    /// <summary>The files that are served, and beside them the newest texts of all drafts in work or offered.</summary>
    public static async Task<DeskFiles> OnDesk(this TrainingDbContext db, IReadOnlyList<ContentFile> served)
    {
        var drafts = await (from draft in db.Set<Draft>()
                            where draft.State == DraftState.InWork || draft.State == DraftState.Offered
                            join text in db.Set<DraftText>() on new { DraftId = draft.Id, Number = draft.Version } equals new { text.DraftId, text.Number }
                            select new ContentFile(draft.Path, text.Text)).ToListAsync();
        return new(served, drafts);
    }

    public static async Task<ApprovalWay> ApprovalWay(this TrainingDbContext db, Actor actor, Draft draft)
    {
        if (draft.State is DraftState.Published or DraftState.PutAway) return Writing.ApprovalWay.None;
        var others = await (from held in db.UserRoles
                            join role in db.Roles on held.RoleId equals role.Id
                            join person in db.Users on held.UserId equals person.Id
                            where role.Name == Roles.Trainer && person.NameRemovedAt == null && person.Id != actor.Person
                            select person).AnyAsync();
        if (!others) return Writing.ApprovalWay.Alone;
        if (draft.State == DraftState.InWork) return Writing.ApprovalWay.Offer;
        return draft.OfferedById != actor.Person && draft.ChangedById != actor.Person ? Writing.ApprovalWay.Approve : Writing.ApprovalWay.Wait;
    }

    /// <summary>Another text is the draft's newest; nobody has approved or offered that one.</summary>
    public static void MoveTo(this Draft draft, int version, PersonId by, Instant at)
    {
        (draft.Version, draft.ChangedById, draft.ChangedAt) = (version, by, at);
        (draft.State, draft.OfferedById, draft.OfferedAt) = (DraftState.InWork, null, null);
    }
}
