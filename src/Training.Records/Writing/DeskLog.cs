using Microsoft.EntityFrameworkCore;
using Training.Content;
using Training.Proofs;
using Training.Records.Accounts;
using Training.Records.Ledger;
using Training.Records.Publishing;
using Training.Records.Storage;

namespace Training.Records.Writing;

/// <summary>
/// Writes down what was done at the desk, within the change that does it: in the public log what was published and whether
/// somebody else approved it, beside it who that was.
/// </summary>
internal sealed class DeskLog(TrainingDbContext db, TimeProvider clock)
{
    /// <summary>Drafts were published together: one entry of the log, and a row beside it for each file.</summary>
    public async Task Published(int publication, IReadOnlyList<DeskText> texts)
    {
        var names = await db.NamesOf([.. texts.Select(text => text.Writer), .. texts.Select(text => text.Approver).OfType<PersonId>()]);
        var salted = texts.Select(text => (Text: text, Writer: Salted.NewSalt(), Approver: text.Approver is null ? null : Salted.NewSalt())).ToList();
        var index = await Add(new LogEvent.DeskPublished(publication, await FileSet(publication), [.. salted.Select(item => new LoggedText(
            item.Text.Path, item.Text.Hash, Salted.Name(names[item.Text.Writer], item.Writer),
            item.Text.Approver is { } approver ? Salted.Name(names[approver], item.Approver!) : null))]));
        var number = await NextNumber();
        foreach (var (text, writer, approver) in salted)
        {
            db.Add(new DeskEntry
            {
                Number = number++,
                At = clock.Instant(),
                Act = text.Approver is null ? DeskAct.PublishedAlone : DeskAct.Published,
                Path = text.Path,
                Text = text.Hash,
                PublicationNumber = publication,
                WrittenById = text.Writer,
                ApprovedById = text.Approver ?? text.Writer,
                LogIndex = index,
                WriterSalt = writer,
                ApproverSalt = approver,
            });
        }

        await db.SaveChangesAsync();
    }

    /// <summary>The content folder's file is served again in place of the desk's.</summary>
    public async Task TookFolder(int publication, string path, PersonId by)
    {
        var hash = await db.Set<PublishedFile>().Where(file => file.PublicationNumber == publication && file.Path == path)
            .Select(file => (ContentHash?)file.Hash).SingleOrDefaultAsync();
        var (names, salt) = (await db.NamesOf([by]), Salted.NewSalt());
        var index = await Add(new LogEvent.FolderTaken(publication, await FileSet(publication), path, hash, Salted.Name(names[by], salt)));
        db.Add(new DeskEntry
        {
            Number = await NextNumber(),
            At = clock.Instant(),
            Act = DeskAct.TookFolder,
            Path = path,
            Text = hash,
            PublicationNumber = publication,
            WrittenById = by,
            ApprovedById = by,
            LogIndex = index,
            WriterSalt = salt,
        });
        await db.SaveChangesAsync();
    }

    /// <summary>
    /// Whether what stands beside the log says what the log says; null for an act from before the log took such in. A name
    /// that was removed fits: nothing leads to it any more.
    /// </summary>
    public static bool? Fits(DeskEntry entry, LogEvent? logged, IReadOnlyDictionary<PersonId, string> names)
    {
        if (entry.LogIndex is null) return null;
        return logged switch
        {
            LogEvent.DeskPublished published when published.Publication == entry.PublicationNumber && entry.Act != DeskAct.TookFolder =>
                published.Texts.Any(text => text.Path == entry.Path && text.Text == entry.Text
                    && (text.Approver is null) == (entry.Act == DeskAct.PublishedAlone)
                    && IsOf(text.Writer, entry.WrittenById, entry.WriterSalt)
                    && (text.Approver is not { } approver || IsOf(approver, entry.ApprovedById, entry.ApproverSalt))),
            LogEvent.FolderTaken taken => entry.Act == DeskAct.TookFolder && taken.Publication == entry.PublicationNumber
                && taken.Path == entry.Path && taken.Text == entry.Text && IsOf(taken.By, entry.WrittenById, entry.WriterSalt),
            _ => false,
        };

        bool IsOf(Sha256Digest hash, PersonId person, byte[]? salt) =>
            salt is null ? names[person] == NameRemovals.InItsPlace : Salted.Name(names[person], salt) == hash;
    }

    private async Task<long> Add(LogEvent happening) => (await new LogWriter(db, clock).Add(happening)).Index;

    private async Task<int> NextNumber() => (await db.Set<DeskEntry>().MaxAsync(entry => (int?)entry.Number) ?? 0) + 1;

    private async Task<Sha256Digest> FileSet(int publication) => LogEventJson.FileSet(await db.Set<PublishedFile>()
        .Where(file => file.PublicationNumber == publication).Select(file => new KeyValuePair<string, ContentHash>(file.Path, file.Hash)).ToListAsync());
}

/// <summary>A text that is published from the desk.</summary>
/// <param name="Path">Where it stands.</param>
/// <param name="Hash">Its hash.</param>
/// <param name="Writer">Who wrote it.</param>
/// <param name="Approver">Who approved it; null where its writer published it alone.</param>
internal sealed record DeskText(string Path, ContentHash Hash, PersonId Writer, PersonId? Approver);
