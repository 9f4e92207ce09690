using System.Text.Json;
using System.Text.Json.Nodes;
using NodaTime;
using Training.Content;
using Training.Content.Competencies;
using Training.Proofs;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Credentials;
using Training.Proofs.Log;
using Training.Records.Certifying;

namespace Training.Records.Ledger;

/// <summary>Entries of the log as JSON; the form is told in docs/records/log.md.</summary>
internal static class LogEventJson
{
    private const string Record = LogInclusion.RecordMember;
    private const string Uuid = "urn:uuid:";

    private static readonly Dictionary<RecordEventKind, string> Kinds = new()
    {
        [RecordEventKind.Confirmed] = "record-confirmed",
        [RecordEventKind.Suspended] = "record-suspended",
        [RecordEventKind.Reinstated] = "record-reinstated",
        [RecordEventKind.Withdrawn] = "record-withdrawn",
    };

    /// <summary>The name of a record in the log, the same as that of its credential.</summary>
    public static string Name(RecordId record) => Uuid + record;

    /// <summary>The hash of everything that is served: of the canonical JSON of an object with each path and the hash of its text.</summary>
    public static Sha256Digest FileSet(IEnumerable<KeyValuePair<string, ContentHash>> files) => Jcs.Canonicalize(
        new JsonObject(files.Select(file => KeyValuePair.Create<string, JsonNode?>(file.Key, file.Value.Hex)))).Value.Digest;

    /// <summary>Writes an entry.</summary>
    public static LogEntry Write(LogEvent happening, Instant at)
    {
        var members = Members(happening);
        members["at"] = DateTimeStamp.Format(at.ToDateTimeOffset());
        return LogEntry.Of(members).Value;
    }

    /// <summary>Reads an entry; refused where it is none of this log's.</summary>
    public static Proofs.Outcome<(Instant At, LogEvent Happening)> Read(LogEntry entry)
    {
        try
        {
            var members = entry.Content();
            var at = DateTimeStamp.Parse(Text(members, "at"));
            return at.IsOk
                ? (Instant.FromDateTimeOffset(at.Value), Happening(members))
                : new Proofs.Refused(at.Sentence);
        }
        catch (Exception fault) when (fault is FormatException or InvalidOperationException or KeyNotFoundException)
        {
            return new Proofs.Refused($"The entry has not the members of its kind: {fault.Message}");
        }
    }

    private static JsonObject Members(LogEvent happening) => happening switch
    {
        LogEvent.Begun begun => new() { ["kind"] = "log-begun", ["log"] = begun.Log },
        LogEvent.Published published => new()
        {
            ["kind"] = "procedure-published",
            ["path"] = published.Path,
            ["text"] = published.Text.Hex,
            ["revision"] = published.Revision,
        },
        LogEvent.Issued issued => Members(issued),
        LogEvent.Happened happened => new()
        {
            ["kind"] = Kinds[happened.Kind],
            [Record] = Name(happened.Record),
            ["said"] = happened.Said.ToString(),
        },
        LogEvent.NameRemoved removed => new() { ["kind"] = "name-removed", [Record] = Name(removed.Record) },
        LogEvent.DeskPublished published => new()
        {
            ["kind"] = "desk-published",
            ["publication"] = published.Publication,
            ["files"] = published.Files.ToString(),
            ["texts"] = new JsonArray([.. published.Texts.Select(Members)]),
        },
        LogEvent.FolderTaken taken => Members(taken),
        _ => throw new InvalidOperationException($"The log does not take a {happening.GetType().Name}."),
    };

    private static JsonObject Members(LogEvent.Issued issued)
    {
        JsonObject members = new()
        {
            ["kind"] = "record-issued",
            [Record] = Name(issued.Record),
            ["competency"] = issued.Competency.Value,
            ["text"] = issued.Text.Hex,
            ["zone"] = issued.Zone,
            ["person"] = issued.Person.ToString(),
            ["shop"] = issued.Shop.ToString(),
            ["paper"] = issued.Paper.ToString(),
            ["runs"] = new JsonArray([.. issued.Runs.Select(run => JsonValue.Create(run.ToString()))]),
            ["judged"] = new JsonArray([.. issued.Judged.Select(Members)]),
        };
        if (issued.Before is { } before) members["before"] = Name(before);
        return members;
    }

    private static JsonObject Members(JudgedText judged)
    {
        JsonObject members = new() { ["path"] = judged.Path, ["text"] = judged.Text.Hex };
        if (judged.Revision is { } revision) members["revision"] = revision;
        return members;
    }

    private static JsonObject Members(LoggedText text)
    {
        JsonObject members = new() { ["path"] = text.Path, ["text"] = text.Text.Hex, ["writer"] = text.Writer.ToString() };
        if (text.Approver is { } approver) members["approver"] = approver.ToString();
        else members["alone"] = true;
        return members;
    }

    private static JsonObject Members(LogEvent.FolderTaken taken)
    {
        JsonObject members = new()
        {
            ["kind"] = "folder-taken",
            ["publication"] = taken.Publication,
            ["files"] = taken.Files.ToString(),
            ["path"] = taken.Path,
            ["by"] = taken.By.ToString(),
        };
        if (taken.Text is { } text) members["text"] = text.Hex;
        return members;
    }

    private static LogEvent Happening(JsonObject members)
    {
        var kind = Text(members, "kind");
        switch (kind)
        {
            case "log-begun": return new LogEvent.Begun(Text(members, "log"));
            case "procedure-published":
                return new LogEvent.Published(Text(members, "path"), Hash(members, "text"), Number(members["revision"]));
            case "record-issued": return Issued(members);
            case "desk-published":
                return new LogEvent.DeskPublished(Number(members["publication"]), Digest(members, "files"), [.. Items(members, "texts")
                    .Select(item => item as JsonObject ?? throw Lacks("texts")).Select(Published)]);
            case "folder-taken":
                return new LogEvent.FolderTaken(
                    Number(members["publication"]), Digest(members, "files"), Text(members, "path"),
                    members.ContainsKey("text") ? Hash(members, "text") : null, Digest(members, "by"));
            case "name-removed": return new LogEvent.NameRemoved(RecordNamed(members, Record));
            default:
                foreach (var (known, word) in Kinds)
                    if (word == kind) return new LogEvent.Happened(RecordNamed(members, Record), known, Digest(members, "said"));
                return new LogEvent.Unknown(kind);
        }
    }

    private static LogEvent.Issued Issued(JsonObject members)
    {
        var zone = Text(members, "zone");
        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) is null) throw new FormatException($"There is no time zone \"{zone}\".");
        return new(
            RecordNamed(members, Record),
            new CompetencyId(Text(members, "competency")),
            Hash(members, "text"),
            zone,
            Digest(members, "person"),
            Digest(members, "shop"),
            members.ContainsKey("before") ? RecordNamed(members, "before") : null,
            new PaperId(Guid.ParseExact(Text(members, "paper"), "D")),
            [.. Items(members, "runs").Select(run => new RunId(Guid.ParseExact(run!.GetValue<string>(), "D")))],
            [.. Items(members, "judged").Select(item => item!.AsObject()).Select(item => new JudgedText(
                Text(item, "path"), Hash(item, "text"), item.ContainsKey("revision") ? Number(item["revision"]) : null))]);
    }

    // Either somebody approved it, or it says itself that nobody did: what is left out must not read as "alone".
    private static LoggedText Published(JsonObject text) => new(
        Text(text, "path"), Hash(text, "text"), Digest(text, "writer"),
        (text.ContainsKey("approver"), text["alone"]) switch
        {
            (true, null) => Digest(text, "approver"),
            (false, JsonValue alone) when alone.GetValueKind() == JsonValueKind.True => null,
            _ => throw Lacks("approver"),
        });

    private static JsonArray Items(JsonObject members, string name) => members[name] as JsonArray ?? throw Lacks(name);

    private static string Text(JsonObject members, string name) =>
        members[name] is JsonValue value && value.GetValueKind() == JsonValueKind.String ? value.GetValue<string>() : throw Lacks(name);

    // What StrictJson read is a double, as every number of JSON is.
    private static int Number(JsonNode? node) =>
        node is JsonValue value && value.TryGetValue(out double number) && number is >= 0 and <= int.MaxValue && Math.Floor(number) == number
            ? (int)number
            : throw new FormatException("Revisions and publications are whole numbers.");

    private static ContentHash Hash(JsonObject members, string name) =>
        ContentHash.TryParse(Text(members, name), out var hash) ? hash : throw Lacks(name);

    private static Sha256Digest Digest(JsonObject members, string name) => Sha256Digest.Parse(Text(members, name)).Value;

    private static RecordId RecordNamed(JsonObject members, string name)
    {
        var text = Text(members, name);
        return text.StartsWith(Uuid, StringComparison.Ordinal) && RecordId.TryParse(text[Uuid.Length..], null, out var record)
            ? record
            : throw Lacks(name);
    }

    private static FormatException Lacks(string name) => new($"\"{name}\" is missing or is written otherwise.");
}
