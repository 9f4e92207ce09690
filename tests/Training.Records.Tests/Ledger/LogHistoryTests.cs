using NodaTime;
using Training.Proofs;
using Training.Proofs.Log;
using Training.Records.Certifying;
using Training.Records.Ledger;
using static Training.Records.Tests.Ledger.LogScript;

namespace Training.Records.Tests.Ledger;

public sealed class LogHistoryTests
{
    private static readonly LocalDate Start = new(2026, 3, 2);

    [Fact]
    public void A_sound_log_has_no_fault_and_the_head_of_its_entries()
    {
        var log = Sound();
        Assert.Null(log.History.Fault);
        Assert.Equal(TreeHead.Of(log.Entries.Select(entry => entry.LeafHash)).Root, log.History.Head.Root);
        Assert.Equal((2, Record(2)), (log.History.Records.Count, log.History.Records[Record(1)].RenewedBy!.Value));
    }

    [Fact]
    public void An_entry_whose_text_was_changed_is_named()
    {
        var entries = Sound().Entries.ToList();
        var text = entries[2].Text.ToArray();
        text[^2] ^= 1;
        entries[2] = entries[2] with { Text = text };
        Assert.Equal("Entry 2 of the log was altered.", Fault(entries));
    }

    [Fact]
    public void An_entry_that_is_missing_is_named()
    {
        var entries = Sound().Entries.ToList();
        entries.RemoveAt(2);
        Assert.Equal("Entry 2 of the log is missing.", Fault(entries));
    }

    [Fact]
    public void An_entry_that_is_dated_back_is_named() =>
        Assert.Equal(
            "Entry 5 of the log bears an earlier time than the one before it.",
            Sound().Happens(1, RecordEventKind.Suspended, Start).History.Fault);

    [Fact]
    public void A_record_is_issued_once_renewed_once_and_spoken_of_only_then()
    {
        Assert.Equal("Entry 5 issues a record a second time.", Sound().Issue(1, Start.PlusDays(9)).History.Fault);
        Assert.Equal(
            "Entry 5 renews a record that is not there or was renewed already.", Sound().Issue(3, Start.PlusDays(9), before: 1).History.Fault);
        Assert.Equal(
            "Entry 5 speaks of a record that was never issued.",
            Sound().Happens(9, RecordEventKind.Withdrawn, Start.PlusDays(9)).History.Fault);
    }

    [Fact]
    public void Only_the_first_fault_is_told_and_what_comes_after_it_is_read_on()
    {
        var log = Sound().Happens(1, RecordEventKind.Suspended, Start).Happens(2, RecordEventKind.Withdrawn, Start.PlusDays(20));
        Assert.StartsWith("Entry 5 ", log.History.Fault, StringComparison.Ordinal);
        Assert.Equal(RecordEventKind.Withdrawn, Assert.Single(log.History.Records[Record(2)].Events).Kind);
    }

    [Fact]
    public void An_entry_of_a_kind_that_is_not_known_yet_changes_no_record()
    {
        var entry = LogEntry.Of(new() { ["kind"] = "something-later", ["at"] = "2027-01-01T00:00:00Z" }).Value;
        var entries = Sound().Entries.Append(new(5, entry.Text.Utf8.ToArray(), entry.LeafHash));
        Assert.Null(Fault([.. entries]));
    }

    [Theory]
    [InlineData("""{"at":"2027-01-01T00:00:00Z","kind":"record-withdrawn","record":"urn:uuid:1","said":"00"}""")]
    [InlineData("""{"at":"2027-01-01","kind":"log-begun","log":"x"}""")]
    [InlineData("""{"at":"2027-01-01T00:00:00Z","kind":7}""")]
    [InlineData("""{"at":"2027-01-01T00:00:00Z","kind":"procedure-published","path":"p","revision":1.5,"text":"00"}""")]
    [InlineData("""{"at":"2027-01-01T00:00:00Z","files":"5feceb66ffc86f38d952786c6d696c79c2dbc239dd4e91b46729d73a27fb57e9","kind":"desk-published","publication":2,"texts":[{"path":"p","text":"5feceb66ffc86f38d952786c6d696c79c2dbc239dd4e91b46729d73a27fb57e9","writer":"5feceb66ffc86f38d952786c6d696c79c2dbc239dd4e91b46729d73a27fb57e9"}]}""")]
    [InlineData("""{"at":"2027-01-01T00:00:00Z","kind":"folder-taken","path":"p","publication":2}""")]
    public void An_entry_that_lacks_what_its_kind_says_is_named(string text)
    {
        var entry = LogEntry.Read(System.Text.Encoding.UTF8.GetBytes(text)).Value;
        Assert.StartsWith("Entry 5 of the log cannot be read:", Fault([.. Sound().Entries, new(5, entry.Text.Utf8.ToArray(), entry.LeafHash)]), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_written_is_read_back_the_same()
    {
        var at = Instant.FromUtc(2026, 3, 2, 9, 0).PlusTicks(1234567);
        LogEvent[] events =
        [
            new LogEvent.Begun("urn:uuid:x"),
            new LogEvent.Published("procedures/a.yaml", CompetencyText, 3),
            new LogEvent.Happened(Record(1), RecordEventKind.Reinstated, Sha256Digest.Of([1])),
            new LogEvent.NameRemoved(Record(1)),
            new LogEvent.FolderTaken(7, Sha256Digest.Of([3]), "modules/01-a/lesson.md", CompetencyText, Sha256Digest.Of([4])),
            new LogEvent.FolderTaken(7, Sha256Digest.Of([3]), "modules/01-a/lesson.md", null, Sha256Digest.Of([4])),
        ];
        foreach (var written in events) Assert.Equal((at, written), LogEventJson.Read(LogEventJson.Write(written, at)).Value);
        var issued = new LogEvent.Issued(
            Record(2), new("c"), CompetencyText, "Asia/Kolkata", Sha256Digest.Of([1]), Sha256Digest.Of([2]), Record(1), new(Guid.NewGuid()),
            [new(Guid.NewGuid())], [new("a", CompetencyText, null), new("b", CompetencyText, 2)]);
        var read = Assert.IsType<LogEvent.Issued>(LogEventJson.Read(LogEventJson.Write(issued, at)).Value.Happening);
        Assert.Equal(issued, read with { Runs = issued.Runs, Judged = issued.Judged });
        Assert.Equal(issued.Runs, read.Runs);
        Assert.Equal(issued.Judged, read.Judged);
        var published = new LogEvent.DeskPublished(
            7, Sha256Digest.Of([3]), [new("a", CompetencyText, Sha256Digest.Of([4]), null), new("b", CompetencyText, Sha256Digest.Of([4]), Sha256Digest.Of([5]))]);
        var again = Assert.IsType<LogEvent.DeskPublished>(LogEventJson.Read(LogEventJson.Write(published, at)).Value.Happening);
        Assert.Equal(published, again with { Texts = published.Texts });
        Assert.Equal(published.Texts, again.Texts);
    }

    private static string? Fault(IReadOnlyList<StoredEntry> entries) =>
        entries.Aggregate(LogHistory.Empty, (history, entry) => history.With(entry)).Fault;

    private static LogScript Sound() => new LogScript().Publish(1, Start).Issue(1, Start.PlusDays(1))
        .Happens(1, RecordEventKind.Confirmed, Start.PlusDays(2)).Issue(2, Start.PlusDays(3), before: 1);
}
