using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Examining;

/// <summary>Sittings: one occasion of an examination (the word of ISO/IEC 17024), opened, watched over and closed by an examiner.</summary>
public sealed class Sittings
{
    private readonly TrainingDbContext db;
    private readonly Library library;
    private readonly Archive archive;
    private readonly PaperClosing closing;
    private readonly PaperLines lines;
    private readonly TimeProvider clock;

    internal Sittings(
        TrainingDbContext db, Library library, Archive archive, PaperClosing closing, PaperLines lines, TimeProvider clock) =>
        (this.db, this.library, this.archive, this.closing, this.lines, this.clock) = (db, library, archive, closing, lines, clock);

    /// <summary>Opens a sitting for a competency. Everybody in it is asked from the publication that is served now.</summary>
    /// <param name="actor">The examiner.</param>
    /// <param name="competency">What is examined.</param>
    /// <param name="place">Where, in words.</param>
    public async Task<Outcome<SittingId, Refusal>> Open(Actor actor, CompetencyId competency, string place)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Examiner)) return Refused.NotAllowed;
        var where = place?.Trim() ?? "";
        if (where.Length is < 1 or > 200) return new Refusal("Say in up to 200 characters where the sitting is.") { About = "Place" };
        var served = library.Current;
        if (served.Content.FindCompetency(competency) is not { } found) return Refused.NotFound;
        await using var change = await db.BeginChange();
        var now = clock.Instant();
        var sitting = new Sitting
        {
            Id = SittingId.New(now),
            Competency = competency,
            CompetencyHash = found.File.Hash,
            PublicationNumber = served.Number,
            ExaminerId = actor.Person,
            ShopId = actor.Shop,
            Place = where,
            OpenedAt = now,
        };
        db.Add(sitting);
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return sitting.Id;
    }

    /// <summary>The sittings within reach (examiners, administrators), open ones first, then the newest.</summary>
    /// <param name="actor">Who asks.</param>
    public async Task<Outcome<IReadOnlyList<SittingLine>, Refusal>> List(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!MaySee(actor)) return Refused.NotAllowed;
        var sittings = await WithinReach(actor).OrderBy(sitting => sitting.ClosedAt != null)
            .ThenByDescending(sitting => sitting.OpenedAt).ToListAsync();
        return await Lines(sittings);
    }

    /// <summary>One sitting with its papers (examiners, administrators within reach).</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="sitting">The sitting.</param>
    public async Task<Outcome<SittingView, Refusal>> Look(Actor actor, SittingId sitting)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!MaySee(actor)) return Refused.NotAllowed;
        await closing.CloseOverdue();
        var found = await WithinReach(actor).SingleOrDefaultAsync(known => known.Id == sitting);
        return found is null ? Refused.NotFound : await View(found);
    }

    /// <summary>The technicians within the examiner's reach, each with the reason where they cannot be admitted now.</summary>
    /// <param name="actor">The sitting's examiner.</param>
    /// <param name="sitting">The sitting.</param>
    public async Task<Outcome<IReadOnlyList<CandidateView>, Refusal>> Candidates(Actor actor, SittingId sitting)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Examiner)) return Refused.NotAllowed;
        await closing.CloseOverdue();
        var found = await WithinReach(actor).SingleOrDefaultAsync(known => known.Id == sitting);
        if (found is null) return Refused.NotFound;
        var papers = await db.Papers.AsNoTracking().Where(paper => paper.SittingId == sitting)
            .ToDictionaryAsync(paper => paper.PersonId, paper => paper.Id);
        var shops = await db.Shops.AsNoTracking().ToDictionaryAsync(shop => shop.Id);
        var technicians = await db.Users.AsNoTracking().WithinReach(actor).Technicians(db)
            .Where(person => person.ShopId != null).ToListAsync();
        var candidates = new List<CandidateView>();
        foreach (var person in technicians)
        {
            PaperId? paper = papers.TryGetValue(person.Id, out var admitted) ? admitted : null;
            var shop = shops[person.ShopId!.Value];
            candidates.Add(new(person.Id, person.DisplayName, shop.Name, paper, paper is null ? await WhyNot(found, person, shop) : null));
        }

        return candidates.OrderBy(person => person.Shop, StringComparer.Ordinal)
            .ThenBy(person => person.Name, StringComparer.Ordinal).ToList();
    }

    /// <summary>
    /// Admits a technician: from now on they may begin their paper. Admitting somebody again gives the same paper.
    /// Refused: the examiner themself, somebody with another open paper, somebody who failed too short a while ago, a
    /// closed sitting.
    /// </summary>
    /// <param name="actor">The sitting's examiner.</param>
    /// <param name="sitting">The sitting.</param>
    /// <param name="person">The technician.</param>
    public async Task<Outcome<PaperId, Refusal>> Admit(Actor actor, SittingId sitting, PersonId person)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Examiner)) return Refused.NotAllowed;
        await closing.CloseOverdue();
        await using var change = await db.BeginChange();
        var found = await WithinReach(actor).SingleOrDefaultAsync(known => known.Id == sitting);
        if (found is null) return Refused.NotFound;
        if (found.ExaminerId != actor.Person) return new Refusal("Only the examiner who opened the sitting admits to it.");
        var technician = await db.Users.AsNoTracking().WithinReach(actor).SingleOrDefaultAsync(known => known.Id == person);
        if (technician is null) return Refused.NotFound;
        var admitted = await db.Papers.SingleOrDefaultAsync(paper => paper.SittingId == sitting && paper.PersonId == person);
        if (admitted is not null) return admitted.Id;
        if (technician.ShopId is not { } shop || !await db.Users.Where(known => known.Id == person).Technicians(db).AnyAsync())
            return new Refusal("Only technicians of a shop sit papers.");
        if (await WhyNot(found, technician, await db.Shops.SingleAsync(known => known.Id == shop)) is { } wrong) return wrong;
        var now = clock.Instant();
        var paper = new Paper
        {
            Id = PaperId.New(now),
            SittingId = sitting,
            PersonId = person,
            ShopId = shop,
            Competency = found.Competency,
            AdmittedAt = now,
        };
        db.Add(paper);
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return paper.Id;
    }

    /// <summary>
    /// Takes somebody off the sitting who was admitted and has not begun: as if they had never been admitted. Once their
    /// time runs it is refused. Taking off whom nobody admitted changes nothing.
    /// </summary>
    /// <param name="actor">The sitting's examiner.</param>
    /// <param name="sitting">The sitting.</param>
    /// <param name="person">The technician.</param>
    public async Task<Outcome<SittingView, Refusal>> TakeOff(Actor actor, SittingId sitting, PersonId person)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Examiner)) return Refused.NotAllowed;
        await using var change = await db.BeginChange();
        var found = await WithinReach(actor).SingleOrDefaultAsync(known => known.Id == sitting);
        if (found is null) return Refused.NotFound;
        if (found.ExaminerId != actor.Person) return new Refusal("Only the examiner who opened the sitting takes somebody off it.");
        var paper = await db.Papers.SingleOrDefaultAsync(known => known.SittingId == sitting && known.PersonId == person);
        if (paper is not null)
        {
            if (paper.State == PaperState.Lapsed) return new Refusal("The sitting is closed; who was admitted to it stays on its list.");
            if (paper.State != PaperState.Admitted)
                return new Refusal($"{(await db.NamesOf([person]))[person]} has begun the paper and cannot be taken off the sitting any more.");
            db.Remove(paper);
            await db.SaveChangesAsync();
            await change.CommitAsync();
        }

        return await View(found);
    }

    /// <summary>Closes a sitting (its examiner, or an administrator): open papers are graded as they were saved, papers never begun lapse.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="sitting">The sitting.</param>
    public async Task<Outcome<SittingView, Refusal>> Close(Actor actor, SittingId sitting)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!MaySee(actor)) return Refused.NotAllowed;
        await closing.CloseOverdue();
        await using var change = await db.BeginChange();
        var found = await WithinReach(actor).AsTracking().SingleOrDefaultAsync(known => known.Id == sitting);
        if (found is null) return Refused.NotFound;
        if (found.ExaminerId != actor.Person && !actor.Is(Roles.Administrator))
            return new Refusal("Only the examiner who opened the sitting, or an administrator, closes it.");
        if (found.ClosedAt is null)
        {
            var now = clock.Instant();
            found.ClosedAt = now;
            var open = await db.Papers.Include(paper => paper.Questions)
                .Where(paper => paper.SittingId == sitting && paper.HandedInAt == null && paper.LapsedAt == null).ToListAsync();
            foreach (var paper in open)
                if (paper.State == PaperState.Admitted) paper.LapsedAt = now;
                else if (paper.IsOverdue(now)) await closing.Close(paper, found, PaperEnd.ByTime, paper.EndsAt!.Value);
                else await closing.Close(paper, found, PaperEnd.BySitting, now);
            await db.SaveChangesAsync();
            await change.CommitAsync();
        }

        return await View(found);
    }

    private static bool MaySee(Actor actor) => actor.Is(Roles.Examiner) || actor.Is(Roles.Administrator);

    private IQueryable<Sitting> WithinReach(Actor actor)
    {
        var sittings = db.Sittings.AsNoTracking();
        return actor.Shop is { } shop ? sittings.Where(sitting => sitting.ShopId == shop) : sittings;
    }

    private async Task<Refusal?> WhyNot(Sitting sitting, Person person, Shop shop)
    {
        if (sitting.ClosedAt is not null) return new("The sitting is closed; open a new one.");
        if (sitting.ExaminerId == person.Id) return new("Nobody examines themself.");
        if (await db.Papers.AnyAsync(paper => paper.PersonId == person.Id && paper.HandedInAt == null && paper.LapsedAt == null))
            return new($"{person.DisplayName} has an open paper in another sitting; close that one first.");
        var competency = await archive.Competency(sitting.CompetencyHash);
        return await closing.NotBefore(person.Id, sitting.Competency, competency.Paper.WaitAfterFailed, shop) is { } notBefore &&
            clock.Instant() < notBefore
            ? new($"{person.DisplayName} failed this paper and may sit it again from {notBefore.InZone(DateTimeZoneProviders.Tzdb[shop.TimeZone]):uuuu-MM-dd HH:mm}.")
            : null;
    }

    private async Task<SittingView> View(Sitting sitting)
    {
        var blueprint = (await archive.Competency(sitting.CompetencyHash)).Paper;
        var papers = await lines.Of(db.Papers.Where(paper => paper.SittingId == sitting.Id));
        return new((await Lines([sitting]))[0], blueprint.Time.ToNoda(), blueprint.PassMark,
            [.. papers.OrderBy(paper => paper.Name, StringComparer.Ordinal)]);
    }

    private async Task<List<SittingLine>> Lines(IReadOnlyList<Sitting> sittings)
    {
        var ids = sittings.Select(sitting => sitting.Id).ToList();
        var names = await db.NamesOf(sittings.Select(sitting => sitting.ExaminerId));
        var papers = await db.Papers.Where(paper => ids.Contains(paper.SittingId)).GroupBy(paper => paper.SittingId)
            .Select(of => new { of.Key, Count = of.Count() }).ToDictionaryAsync(of => of.Key, of => of.Count);
        var list = new List<SittingLine>();
        foreach (var sitting in sittings)
        {
            var title = (await archive.Competency(sitting.CompetencyHash)).Title;
            list.Add(new(sitting.Id, sitting.Competency, title, sitting.ExaminerId, names[sitting.ExaminerId], sitting.Place,
                sitting.OpenedAt, sitting.ClosedAt, papers.GetValueOrDefault(sitting.Id)));
        }

        return list;
    }
}
