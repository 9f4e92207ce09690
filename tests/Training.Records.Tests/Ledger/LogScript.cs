using NodaTime;
using Training.Content;
using Training.Content.Competencies;
using Training.Proofs.Log;
using Training.Records.Certifying;
using Training.Records.Ledger;

namespace Training.Records.Tests.Ledger;

/// <summary>Writes a log entry by entry, without a database, as the program writes it.</summary>
internal sealed class LogScript
{
    public static readonly ContentHash CompetencyText = ContentHash.Of("the competency");
    private static readonly ContentHash ProcedureText = ContentHash.Of("the procedure");
    private static readonly byte[] Salt = new byte[32];

    private readonly List<StoredEntry> entries = [];

    public LogScript(string zone = "Europe/Berlin")
    {
        Zone = zone;
        Add(Instant.FromUtc(2009, 1, 1, 0, 0), new LogEvent.Begun("urn:uuid:7f1c0b1e-0000-4000-8000-000000000001"));
    }

    public string Zone { get; }

    public IReadOnlyList<StoredEntry> Entries => entries;

    public LogHistory History => entries.Aggregate(LogHistory.Empty, (history, entry) => history.With(entry));

    public static RecordId Record(int number) => new(new Guid(number, 0, 0x7000, 0x80, 0, 0, 0, 0, 0, 0, 0));

    /// <summary>Noon of a day in the log's zone.</summary>
    public Instant Noon(LocalDate day) => day.At(new(12, 0)).InZoneLeniently(DateTimeZoneProviders.Tzdb[Zone]).ToInstant();

    public LogScript Issue(int record, LocalDate on, int? before = null) => Issue(record, Noon(on), before);

    public LogScript Issue(int record, Instant at, int? before = null) => Add(at, new LogEvent.Issued(
        Record(record), new("relay-trays"), CompetencyText, Zone, Salted.Name("Amara Okafor", Salt), Salted.Shop(default, Salt),
        before is { } earlier ? Record(earlier) : null, default, [], [new("procedures/stow-tray.yaml", ProcedureText, 1)]));

    public LogScript Happens(int record, RecordEventKind kind, LocalDate on) =>
        Add(Noon(on), new LogEvent.Happened(Record(record), kind, Salted.Said(default, "why", Salt)));

    public LogScript Publish(int revision, LocalDate on) =>
        Add(Noon(on), new LogEvent.Published("procedures/stow-tray.yaml", ContentHash.Of($"revision {revision}"), revision));

    public LogScript Add(Instant at, LogEvent happening)
    {
        var entry = LogEventJson.Write(happening, at);
        entries.Add(new(entries.Count, entry.Text.Utf8.ToArray(), entry.LeafHash));
        return this;
    }

    public RecordStanding? StateOn(int record, LocalDate day, Competency competency) =>
        History.StateOn(Record(record), day, text => text == CompetencyText ? competency : throw new InvalidOperationException("Another text."));

    public static Competency Competency(string validFor, string renewFrom = "P1D", string? confirmEvery = null, string? renewWithin = null) =>
        new(new("relay-trays"), "Relay trays", new ContentFile("competencies/relay-trays.yaml", "the competency"))
        {
            Modules = [],
            Paper = null!,
            ValidFor = Of(validFor),
            RenewFrom = Of(renewFrom),
            ConfirmEvery = confirmEvery is null ? null : Of(confirmEvery),
            OnNewRevision = renewWithin is null ? new RevisionRule.Keep() : new RevisionRule.Renew(Of(renewWithin)),
        };

    private static Content.Competencies.Period Of(string text) =>
        Content.Competencies.Period.TryParse(text, out var period) ? period : throw new ArgumentException(text);
}
