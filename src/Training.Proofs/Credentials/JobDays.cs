using System.Globalization;
using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.DataIntegrity;
using Training.Proofs.Signing;

namespace Training.Proofs.Credentials;

/// <summary>
/// Who was competent on the days of a job: a statement that the issuer signs and puts into a pack. The form is this
/// project's own; the signature is that of the credentials.
/// </summary>
/// <param name="Issuer">The issuer.</param>
/// <param name="Shop">The shop that did the work.</param>
/// <param name="Customer">For whom.</param>
/// <param name="Vehicle">Which vehicle.</param>
/// <param name="FirstDay">The first day, by the shop's calendar.</param>
/// <param name="LastDay">The last day.</param>
/// <param name="AsOf">The day up to which it is known what happened; of later days it says what follows if nothing happens.</param>
/// <param name="People">The people, each with what they did the work by.</param>
public sealed record JobDays(
    string Issuer, string Shop, string Customer, string Vehicle, DateOnly FirstDay, DateOnly LastDay, DateOnly AsOf, IReadOnlyList<JobPerson> People)
{
    private const string Type = "JobDays";
    private const string Day = "yyyy-MM-dd";

    /// <summary>Whether everybody was competent on every day.</summary>
    public bool AllHeld => People.Count > 0 && People.All(person => person.Held);

    /// <summary>Writes the statement, to be signed.</summary>
    public JsonObject Write() => new()
    {
        ["type"] = Type,
        ["issuer"] = Issuer,
        ["shop"] = Shop,
        ["customer"] = Customer,
        ["vehicle"] = Vehicle,
        ["firstDay"] = Written(FirstDay),
        ["lastDay"] = Written(LastDay),
        ["asOf"] = Written(AsOf),
        ["people"] = new JsonArray([.. People.Select(person => new JsonObject
        {
            ["record"] = person.Record,
            ["name"] = person.Name,
            ["competency"] = person.Competency,
            ["days"] = new JsonArray([.. person.Days.Select(span => new JsonObject
            {
                ["from"] = Written(span.From), ["to"] = Written(span.To), ["holds"] = span.Holds, ["state"] = span.State,
            })]),
        })]),
    };

    /// <summary>Reads a signed statement and checks that its issuer signed it.</summary>
    /// <param name="secured">The statement with its proof.</param>
    /// <param name="keys">The keys that are trusted.</param>
    /// <param name="now">The instant of checking.</param>
    public static Outcome<JobDays> Check(JsonObject secured, KeyRing keys, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(secured);
        Outcome<DataIntegrityProof> proof = EddsaJcs2022.Verify(secured, keys, now);
        if (!proof.IsOk)
            return new Refused(proof.Sentence);
        Outcome<JobDays> read = Read(secured);
        return read.IsOk && read.Value.Issuer != proof.Value.Key.Controller
            ? new Refused("The statement about the job is signed by somebody else than the issuer that it names.")
            : read;
    }

    /// <summary>Reads a statement, signed or not; refused where a member is missing or the days of somebody leave a gap.</summary>
    /// <param name="members">The statement.</param>
    public static Outcome<JobDays> Read(JsonObject members)
    {
        ArgumentNullException.ThrowIfNull(members);
        if (members.TextOf("type") != Type || members.TextOf("issuer") is not { } issuer || members.TextOf("shop") is not { } shop
            || members.TextOf("customer") is not { } customer || members.TextOf("vehicle") is not { } vehicle
            || DayOf(members, "firstDay") is not { } first || DayOf(members, "lastDay") is not { } last || DayOf(members, "asOf") is not { } asOf
            || members["people"] is not JsonArray { Count: > 0 } people)
            return Malformed;
        List<JobPerson> read = [];
        foreach (JsonNode? item in people)
        {
            if (PersonOf(item) is not { } person || !Covers(person.Days, first, last))
                return Malformed;
            read.Add(person);
        }

        return new JobDays(issuer, shop, customer, vehicle, first, last, asOf, read);
    }

    /// <summary>
    /// What in the statement is not about the credentials beside it, in a sentence; null where each of its people is somebody
    /// of theirs. A statement that was taken out of another file is signed as well.
    /// </summary>
    /// <param name="credentials">The credentials that came with it.</param>
    public string? Objection(IEnumerable<CompetencyCredential> credentials)
    {
        ArgumentNullException.ThrowIfNull(credentials);
        Dictionary<string, CompetencyCredential> known = [];
        foreach (CompetencyCredential credential in credentials)
            known.TryAdd(credential.Id.OriginalString, credential);
        foreach (JobPerson person in People)
        {
            if (!known.TryGetValue(person.Record, out CompetencyCredential? credential))
                return $"The statement about the job speaks of {person.Name}, {person.Competency}, whose credential is not in this file.";
            if (!credential.Recipient.IsFor(person.Name) || credential.Title != person.Competency
                || credential.Shop != Shop || credential.Issuer.Id.ToString() != Issuer)
                return $"The statement about the job says {person.Name}, {person.Competency}; the credential of that record in this file says otherwise.";
        }

        return null;
    }

    private static Refused Malformed { get; } = new("The statement about the job is not whole.");

    private static JobPerson? PersonOf(JsonNode? item)
    {
        if (item is not JsonObject person || person.TextOf("record") is not { } record || person.TextOf("name") is not { } name
            || person.TextOf("competency") is not { } competency || person["days"] is not JsonArray days)
            return null;
        List<JobSpan> spans = [];
        foreach (JsonNode? day in days)
        {
            if (day is not JsonObject span || DayOf(span, "from") is not { } from || DayOf(span, "to") is not { } to
                || span.TextOf("state") is not { } state || span["holds"] is not JsonValue holds || !holds.TryGetValue(out bool isHeld))
                return null;
            spans.Add(new(from, to, isHeld, state));
        }

        return new(record, name, competency, spans);
    }

    private static bool Covers(IReadOnlyList<JobSpan> spans, DateOnly first, DateOnly last)
    {
        DateOnly next = first;
        foreach (JobSpan span in spans)
        {
            if (span.From != next || span.To < span.From || span.To > last)
                return false;
            next = span.To.AddDays(1);
        }

        return next == last.AddDays(1);
    }

    private static string Written(DateOnly day) => day.ToString(Day, CultureInfo.InvariantCulture);

    private static DateOnly? DayOf(JsonObject members, string name) =>
        DateOnly.TryParseExact(members.TextOf(name), Day, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day : null;
}

/// <summary>Somebody of a job's crew.</summary>
/// <param name="Record">The record by which they are in the proof, as its credential is named.</param>
/// <param name="Name">The person.</param>
/// <param name="Competency">What they stand for.</param>
/// <param name="Days">How they stood, from the first day of the job to the last, without a gap.</param>
public sealed record JobPerson(string Record, string Name, string Competency, IReadOnlyList<JobSpan> Days)
{
    /// <summary>Whether they were competent on every day.</summary>
    public bool Held => Days.Count > 0 && Days.All(span => span.Holds);
}

/// <summary>Days on which somebody stood alike.</summary>
/// <param name="From">The first.</param>
/// <param name="To">The last.</param>
/// <param name="Holds">Whether they might do the work.</param>
/// <param name="State">How the record stood: <c>holds</c>, <c>none</c>, <c>expired</c>, <c>suspended</c>, <c>withdrawn</c> or <c>doubtful</c>.</param>
public sealed record JobSpan(DateOnly From, DateOnly To, bool Holds, string State);
