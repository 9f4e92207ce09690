using Microsoft.EntityFrameworkCore;
using Training.Content;
using Training.Content.Scenarios;
using Training.Content.Writing;
using Training.Records.Accounts;
using Training.Records.Ledger;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing;
using Training.Sequencing.Answers;
using Training.Sequencing.Json;

namespace Training.Records.Writing;

/// <summary>
/// Files of the content that trainers write on (trainers only). Every text that was sent is kept; one that was written on
/// an old version is kept beside the draft, so that nobody overwrites anybody.
/// </summary>
public sealed class Drafts
{
    private const int MostTries = 1_000;
    private readonly TrainingDbContext db;
    private readonly Publisher publisher;
    private readonly OpenDrafts open;
    private readonly TimeProvider clock;

    internal Drafts(TrainingDbContext db, Publisher publisher, OpenDrafts open, TimeProvider clock) =>
        (this.db, this.publisher, this.open, this.clock) = (db, publisher, open, clock);

    /// <summary>Everything on the desk.</summary>
    /// <param name="actor">Who asks.</param>
    public async Task<Outcome<DeskView, Refusal>> Desk(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer)) return Refused.NotAllowed;
        var drafts = await db.Set<Draft>().AsNoTracking().Where(draft => draft.State != DraftState.Published)
            .OrderByDescending(draft => draft.ChangedAt).ToListAsync();
        var log = await db.Set<DeskEntry>().AsNoTracking().OrderByDescending(entry => entry.Number).Take(100).ToListAsync();
        var laid = await db.Set<LaidOver>().OrderBy(file => file.Path).Select(file => file.Path).ToListAsync();
        var names = await db.NamesOf([.. drafts.Select(draft => draft.ChangedById), .. drafts.Select(draft => draft.OfferedById).OfType<PersonId>(),
            .. log.Select(entry => entry.WrittenById), .. log.Select(entry => entry.ApprovedById)]);
        var places = log.Select(entry => entry.LogIndex).OfType<long>().Distinct().ToList();
        var logged = (await db.LogEntries.AsNoTracking().Where(row => places.Contains(row.Index)).ToListAsync())
            .ToDictionary(row => row.Index, LogBook.Said);
        return new DeskView(
            [.. drafts.Where(draft => draft.State != DraftState.PutAway).Select(draft => Line(draft, names))],
            [.. drafts.Where(draft => draft.State == DraftState.PutAway).Select(draft => Line(draft, names))],
            publisher.StateNow.Changes,
            laid,
            [.. log.Select(entry => new DeskLogLine(entry.At, entry.Act, entry.Path, entry.Text, entry.PublicationNumber, names[entry.WrittenById], names[entry.ApprovedById])
            {
                LogEntry = entry.LogIndex,
                FitsLog = DeskLog.Fits(entry, logged.GetValueOrDefault(entry.LogIndex ?? -1), names) != false,
            })],
            [.. publisher.Served.Select(file => file.Path).Where(path => !path.EndsWith(".svg", StringComparison.Ordinal))]);
    }

    /// <summary>Begins a draft of a file that is served, or finds the one that somebody has begun.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="path">The file.</param>
    public async Task<Outcome<DraftId, Refusal>> Begin(Actor actor, string path)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer)) return Refused.NotAllowed;
        var file = Served(path);
        return file is null || path.EndsWith(".svg", StringComparison.Ordinal) ? Refused.NotFound : await Begin(actor, file, file.Hash);
    }

    /// <summary>Begins a new file from a small template.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="sort">Its sort.</param>
    /// <param name="id">Its name; of a module its number and name, as in <c>12-tail-lifts</c>.</param>
    /// <param name="title">What it is called.</param>
    public async Task<Outcome<DraftId, Refusal>> BeginFile(Actor actor, NewFileSort sort, string id, string title)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer)) return Refused.NotAllowed;
        var made = NewFile.Of(sort, (id ?? "").Trim(), title ?? "");
        if (!made.IsOk) return made.Fault;
        if (Served(made.Value.Path) is not null || await Active(made.Value.Path) is not null)
            return new Refusal($"There is already a file {made.Value.Path}: choose another name, or open that one.") { About = "name" };
        return await Begin(actor, made.Value, null);
    }

    /// <summary>
    /// Begins the translation of a file in the default language, with the texts as they stand on the desk or else are served;
    /// finds it where somebody has begun it.
    /// </summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="path">The file in the default language.</param>
    /// <param name="language">The language, such as <c>es</c>.</param>
    public async Task<Outcome<DraftBegun, Refusal>> BeginTranslation(Actor actor, string path, string language)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer)) return Refused.NotAllowed;
        var target = ContentFile.TranslationOf(path ?? "", language ?? "");
        if (Served(target) is not null) return new Refusal($"There is a file {target} already: take that one up.");
        if (await Active(target) is not { } active)
        {
            var made = BegunTranslation.Of(await db.FilesWithDrafts(publisher.Served), path ?? "", language ?? "");
            if (!made.IsOk) return made.Fault;
            if (!ContentFile.IsContent(made.Value.Path) || made.Value.Path.Length > DraftTables.LongestPath) return Refused.NotFound;
            var (draft, isNew) = await Begun(actor, made.Value, null);
            if (isNew) return new DraftBegun(draft.Id, null);
            active = draft;
        }

        var by = await db.Set<DraftText>().Where(text => text.DraftId == active.Id && text.Number == 1).Select(text => text.ById).SingleAsync();
        return new DraftBegun(active.Id, (await db.NamesOf([by]))[by]);
    }

    /// <summary>
    /// Begins drafts with texts from elsewhere, of a pack or of another format: all of them or none. Where somebody has begun a
    /// draft at a path, the text is kept beside it.
    /// </summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="files">The files.</param>
    public async Task<Outcome<BroughtDrafts, Refusal>> Bring(Actor actor, IReadOnlyList<ContentFile> files)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(files);
        if (!actor.Is(Roles.Trainer)) return Refused.NotAllowed;
        if (files.Select(WhyNot).FirstOrDefault(wrong => wrong is not null) is { } unfit) return unfit;
        await using var change = await db.BeginChange();
        var (drafts, beside) = (new List<DraftId>(files.Count), 0);
        foreach (var file in files)
        {
            if (await Active(file.Path) is not { } active)
            {
                drafts.Add((await Add(actor, file, Served(file.Path)?.Hash)).Id);
                continue;
            }

            var kept = await Keep(actor, active.Id, onVersion: 0, Lines(file.Text));
            if (!kept.IsOk) return kept.Fault;
            drafts.Add(active.Id);
            if (kept.Value.IsBeside) beside++;
        }

        await change.CommitAsync();
        return new BroughtDrafts(drafts, beside);
    }

    /// <summary>A draft with its newest text.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="id">The draft.</param>
    public async Task<Outcome<DraftView, Refusal>> Look(Actor actor, DraftId id)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer)) return Refused.NotAllowed;
        if (await db.Set<Draft>().AsNoTracking().SingleOrDefaultAsync(draft => draft.Id == id) is not { } draft) return Refused.NotFound;
        open.See(id, actor.Person);
        var others = open.Others(id, actor.Person);
        var text = await db.Set<DraftText>().AsNoTracking().SingleAsync(kept => kept.DraftId == id && kept.Number == draft.Version);
        var beside = await db.Set<DraftText>().AsNoTracking().Where(kept => kept.DraftId == id && kept.IsBeside && !kept.IsSettled)
            .OrderBy(kept => kept.Number).ToListAsync();
        var names = await db.NamesOf([draft.ChangedById, .. others, .. beside.Select(kept => kept.ById), .. draft.OfferedById is { } by ? new[] { by } : []]);
        var served = Served(draft.Path);
        return new DraftView(Line(draft, names), text.Text, served?.Text, served?.Hash != draft.BasedOn && draft.State != DraftState.Published)
        {
            Beside = [.. beside.Select(kept => LineOf(kept, names))],
            Others = [.. others.Select(person => names[person])],
            Way = await db.ApprovalWay(actor, draft),
        };
    }

    /// <summary>
    /// Keeps a text as the draft's next version; where the draft has moved on since <paramref name="onVersion"/>, beside it.
    /// </summary>
    /// <param name="actor">Who writes.</param>
    /// <param name="id">The draft.</param>
    /// <param name="onVersion">The version that was on the screen.</param>
    /// <param name="text">The text.</param>
    public async Task<Outcome<DraftSaved, Refusal>> Save(Actor actor, DraftId id, int onVersion, string text)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer)) return Refused.NotAllowed;
        text = Lines(text ?? "");
        if (Unfit(text) is { } unfit) return unfit;
        open.See(id, actor.Person);
        await using var change = await db.BeginChange();
        var kept = await Keep(actor, id, onVersion, text);
        if (kept.IsOk) await change.CommitAsync();
        return kept;
    }

    /// <summary>Every text that was kept of a draft, the newest first.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="id">The draft.</param>
    public async Task<Outcome<IReadOnlyList<DraftTextLine>, Refusal>> Texts(Actor actor, DraftId id)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer)) return Refused.NotAllowed;
        var kept = await db.Set<DraftText>().AsNoTracking().Where(text => text.DraftId == id).OrderByDescending(text => text.Number)
            .Select(text => new { text.Number, text.WrittenOn, text.IsBeside, text.ById, text.At }).ToListAsync();
        if (kept.Count == 0) return Refused.NotFound;
        var names = await db.NamesOf([.. kept.Select(text => text.ById)]);
        return kept.ConvertAll(text => new DraftTextLine(text.Number, text.WrittenOn, text.IsBeside, names[text.ById], text.At));
    }

    /// <summary>One text that was kept.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="id">The draft.</param>
    /// <param name="number">Its number.</param>
    public async Task<Outcome<DraftTextView, Refusal>> Text(Actor actor, DraftId id, int number)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer)) return Refused.NotAllowed;
        if (await db.Set<DraftText>().AsNoTracking().SingleOrDefaultAsync(text => text.DraftId == id && text.Number == number) is not { } kept)
            return Refused.NotFound;
        return new DraftTextView(LineOf(kept, await db.NamesOf([kept.ById])), kept.Text);
    }

    /// <summary>Says that somebody has looked at a text that was kept beside the draft and leaves the draft as it is.</summary>
    /// <param name="actor">Who decides.</param>
    /// <param name="id">The draft.</param>
    /// <param name="number">The text.</param>
    public async Task<Outcome<DraftId, Refusal>> Settle(Actor actor, DraftId id, int number)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer)) return Refused.NotAllowed;
        var settled = await db.Set<DraftText>().Where(text => text.DraftId == id && text.Number == number && text.IsBeside)
            .ExecuteUpdateAsync(set => set.SetProperty(text => text.IsSettled, true));
        return settled == 1 ? id : Refused.NotFound;
    }

    /// <summary>Puts a draft away without publishing it. Its texts are kept; whoever saves a text takes it up again.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="id">The draft.</param>
    public async Task<Outcome<DraftId, Refusal>> PutAway(Actor actor, DraftId id)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer)) return Refused.NotAllowed;
        await using var change = await db.BeginChange();
        if (await db.Set<Draft>().SingleOrDefaultAsync(known => known.Id == id) is not { } draft) return Refused.NotFound;
        if (draft.State == DraftState.Published) return new Refusal("It is published already.");
        (draft.State, draft.OfferedById, draft.OfferedAt) = (DraftState.PutAway, null, null);
        await db.SaveChangesAsync();
        await change.CommitAsync();
        return id;
    }

    /// <summary>All files as they would be with every draft on the desk published: what a draft is checked among.</summary>
    /// <param name="actor">Who asks.</param>
    public async Task<Outcome<IReadOnlyList<ContentFile>, Refusal>> Files(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer)) return Refused.NotAllowed;
        return (await db.FilesWithDrafts(publisher.Served)).ToList();
    }

    /// <summary>What is published, and the drafts on the desk beside it.</summary>
    /// <param name="actor">Who asks.</param>
    public async Task<Outcome<DeskFiles, Refusal>> OnDesk(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return actor.Is(Roles.Trainer) ? await db.OnDesk(publisher.Served) : Refused.NotAllowed;
    }

    /// <summary>
    /// The wrong order that people gave most often when they practised a procedure, whichever revision it was; null where no
    /// order was given twice.
    /// </summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="path">The procedure's file.</param>
    public async Task<Answer?> OftenGiven(Actor actor, string path)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer) || !path.StartsWith("procedures/", StringComparison.Ordinal)) return null;
        var given = await db.PracticeTries.AsNoTracking()
            .Where(attempt => !attempt.Accepted && attempt.Kind == QuestionKind.Order && attempt.ProcedureHash != null
                && db.Set<PublishedFile>().Any(file => file.Path == path && file.Hash == attempt.ProcedureHash))
            .OrderByDescending(attempt => attempt.At).Take(MostTries).Select(attempt => attempt.AnswerJson).ToListAsync();
        var often = given.CountBy(json => json).OrderByDescending(count => count.Value).FirstOrDefault();
        return often.Value > 1 && AnswerJson.Parse(often.Key) is { IsOk: true } answer ? answer.Value : null;
    }

    private async Task<Outcome<DraftId, Refusal>> Begin(Actor actor, ContentFile file, ContentHash? basedOn) =>
        (await Begun(actor, file, basedOn)).Draft.Id;

    private async Task<(Draft Draft, bool IsNew)> Begun(Actor actor, ContentFile file, ContentHash? basedOn)
    {
        await using var change = await db.BeginChange();
        if (await Active(file.Path) is { } begun) return (begun, false);
        var added = await Add(actor, file, basedOn);
        await change.CommitAsync();
        return (added, true);
    }

    /// <summary>Adds a draft that nobody has begun, within a change that the caller commits.</summary>
    private async Task<Draft> Add(Actor actor, ContentFile file, ContentHash? basedOn)
    {
        var now = clock.Instant();
        var draft = new Draft
        {
            Id = DraftId.New(now),
            Path = file.Path,
            BasedOn = basedOn,
            State = DraftState.InWork,
            Version = 1,
            ChangedById = actor.Person,
            ChangedAt = now,
        };
        db.Add(draft);
        db.Add(new DraftText { DraftId = draft.Id, Number = 1, WrittenOn = 0, IsBeside = false, ById = actor.Person, At = now, Text = Lines(file.Text) });
        await db.SaveChangesAsync();
        return draft;
    }

    /// <summary>Keeps a text of a draft, within a change that the caller commits.</summary>
    private async Task<Outcome<DraftSaved, Refusal>> Keep(Actor actor, DraftId id, int onVersion, string text)
    {
        if (await db.Set<Draft>().SingleOrDefaultAsync(known => known.Id == id) is not { } draft) return Refused.NotFound;
        var newest = await db.Set<DraftText>().AsNoTracking().SingleAsync(kept => kept.DraftId == id && kept.Number == draft.Version);
        if (newest.Text == text) return new DraftSaved(newest.Number, newest.Number, newest.At, false);
        if (draft.State is DraftState.Published or DraftState.PutAway && await Active(draft.Path) is { } other && other.Id != id)
            return new Refusal($"Somebody has begun another draft of {draft.Path} since: open that one.");
        var isBeside = onVersion != draft.Version;
        // What is sent twice, as after a lost answer, is kept once.
        if (isBeside && await db.Set<DraftText>().AsNoTracking().Where(kept => kept.DraftId == id && kept.ById == actor.Person && kept.WrittenOn == onVersion)
            .OrderByDescending(kept => kept.Number).FirstOrDefaultAsync() is { } sent && sent.Text == text)
            return new DraftSaved(sent.Number, draft.Version, sent.At, sent.IsBeside && !sent.IsSettled);
        var now = clock.Instant();
        var number = await db.Set<DraftText>().Where(kept => kept.DraftId == id).MaxAsync(kept => kept.Number) + 1;
        db.Add(new DraftText { DraftId = id, Number = number, WrittenOn = onVersion, IsBeside = isBeside, ById = actor.Person, At = now, Text = text });
        if (!isBeside) draft.MoveTo(number, actor.Person, now);
        await db.SaveChangesAsync();
        return new DraftSaved(number, draft.Version, now, isBeside);
    }

    private Task<Draft?> Active(string path) => db.Set<Draft>().AsNoTracking()
        .FirstOrDefaultAsync(draft => draft.Path == path && (draft.State == DraftState.InWork || draft.State == DraftState.Offered));

    private ContentFile? Served(string path) => publisher.Served.FirstOrDefault(file => file.Path == path);

    private static DraftLine Line(Draft draft, Dictionary<PersonId, string> names) => new(
        draft.Id, draft.Path, draft.State, draft.Version, names[draft.ChangedById], draft.ChangedAt,
        draft.OfferedById is { } by ? names[by] : null);

    private static DraftTextLine LineOf(DraftText text, Dictionary<PersonId, string> names) =>
        new(text.Number, text.WrittenOn, text.IsBeside, names[text.ById], text.At);

    // A form sends line ends as CR LF, and files have LF.
    private static string Lines(string text) => text.ReplaceLineEndings("\n");

    private static Refusal? WhyNot(ContentFile file) => file.Path.Length > DraftTables.LongestPath || !ContentFile.IsContent(file.Path)
        ? new Refusal($"No content stands at “{file.Path}”: mend the name.")
        : Unfit(file.Text);

    private static Refusal? Unfit(string text) => System.Text.Encoding.UTF8.GetByteCount(text) > ContentFile.LargestSize
        ? new Refusal("The text is larger than 1 MiB. It was not kept: take something out of it first.")
        : null;
}
