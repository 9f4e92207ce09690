using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Content;
using Training.Records.Accounts;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Writing;

/// <summary>
/// Publishes drafts (trainers only). Somebody other than the writer approves; where there is no other trainer the writer
/// does, and the desk's log says so.
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
        if (await Checked(id, version) is { } refusal) return refusal;
        await using var change = await db.BeginChange();
        var draft = await db.Set<Draft>().SingleAsync(known => known.Id == id);
        if (draft.Version != version) return Moved;
        if (draft.State is not (DraftState.InWork or DraftState.Offered)) return new Refusal("It is published already, or put away.");
        (draft.State, draft.OfferedById, draft.OfferedAt) = (DraftState.Offered, actor.Person, clock.Instant());
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return id;
    }

    /// <summary>Publishes a draft: as its approver, or alone where there is no other trainer.</summary>
    /// <param name="actor">Who approves.</param>
    /// <param name="id">The draft.</param>
    /// <param name="version">The version that was looked at.</param>
    /// <returns>The number of the publication.</returns>
    public async Task<Outcome<int, Refusal>> Publish(Actor actor, DraftId id, int version)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer)) return Refused.NotAllowed;
        if (await Checked(id, version) is { } refusal) return refusal;
        var seen = await db.Set<Draft>().AsNoTracking().SingleAsync(draft => draft.Id == id);
        var text = await db.Set<DraftText>().AsNoTracking().Where(kept => kept.DraftId == id && kept.Number == version).Select(kept => kept.Text).SingleAsync();
        var file = new ContentFile(seen.Path, text);
        var laid = await publisher.Lay(file, async (within, publication) =>
        {
            var draft = await within.Set<Draft>().SingleAsync(known => known.Id == id);
            if (draft.Version != version) return Moved;
            var way = await within.ApprovalWay(actor, draft);
            if (way is not (ApprovalWay.Approve or ApprovalWay.Alone))
                return new Refusal("Somebody other than its writer has to approve it.");
            (draft.State, draft.BasedOn) = (DraftState.Published, file.Hash);
            await Write(within, way == ApprovalWay.Alone ? DeskAct.PublishedAlone : DeskAct.Published, file.Path, file.Hash, publication, draft.ChangedById, actor.Person);
            return null;
        });
        return laid.IsOk ? laid.Value.Number : laid.Fault;
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
            var hash = await within.Set<PublishedFile>().Where(file => file.PublicationNumber == publication && file.Path == path)
                .Select(file => (ContentHash?)file.Hash).SingleOrDefaultAsync();
            await Write(within, DeskAct.TookFolder, path, hash, publication, actor.Person, actor.Person);
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

    private async Task<Refusal?> Checked(DraftId id, int version)
    {
        if (await db.Set<Draft>().AsNoTracking().SingleOrDefaultAsync(draft => draft.Id == id) is not { } draft) return Refused.NotFound;
        if (draft.Version != version) return Moved;
        if (draft.State is DraftState.Published or DraftState.PutAway) return new Refusal("It is published already, or put away.");
        if (publisher.Served.FirstOrDefault(file => file.Path == draft.Path)?.Hash != draft.BasedOn)
            return new Refusal("What is served of this file was changed after the draft began: look at both first.");
        if (await db.Set<DraftText>().AnyAsync(text => text.DraftId == id && text.IsBeside && !text.IsSettled))
            return new Refusal("A text was kept beside this draft, for two people wrote at once: decide on it first.");
        var text = await db.Set<DraftText>().AsNoTracking().Where(kept => kept.DraftId == id && kept.Number == version).Select(kept => kept.Text).SingleAsync();
        var reading = ContentReader.Read([.. publisher.Served.Where(file => file.Path != draft.Path), new(draft.Path, text)]);
        return reading.Problems.FirstOrDefault(problem => problem.HoldsBack) is { } problem
            ? new Refusal($"It has an error and cannot be published: {problem.File}, line {problem.Line}: {problem.Sentence}")
            : null;
    }

    private async Task Write(
        TrainingDbContext within, DeskAct act, string path, ContentHash? text, int publication, PersonId writer, PersonId approver) =>
        within.Add(new DeskEntry
        {
            Number = (await within.Set<DeskEntry>().MaxAsync(entry => (int?)entry.Number) ?? 0) + 1,
            At = clock.Instant(),
            Act = act,
            Path = path,
            Text = text,
            PublicationNumber = publication,
            WrittenById = writer,
            ApprovedById = approver,
        });
}

/// <summary>Who may publish a draft.</summary>
internal static class Approvals
{
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
