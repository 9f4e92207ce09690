using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;
using Training.Content;
using Training.Content.Competencies;
using Training.Content.Modules;
using Training.Content.Scenarios;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Covering;
using Training.Records.Examining;
using Training.Records.Learning;
using Training.Records.Ledger;
using Training.Records.Observing;
using Training.Records.Practising;
using Training.Records.Proving;
using Training.Records.Reminding;
using Training.Records.Results;
using Training.Records.Staffing;
using Training.Records.Storage;
using Training.Records.Writing;
using Training.Sequencing.Procedures;

namespace Training.Records.Interchange;

/// <summary>A part of what is held about a person.</summary>
/// <param name="Name">What it is called in the file.</param>
/// <param name="Columns">The columns that lead to the person, each as its entity and its property: a test holds that none is left out.</param>
/// <param name="Read">What it says.</param>
internal sealed record PersonFilePart(string Name, IReadOnlyList<(Type Entity, string Property)> Columns, Func<PersonId, Task<JsonNode?>> Read);

/// <summary>What is held about a person, part by part.</summary>
internal sealed class PersonFileParts(TrainingDbContext db, LogBook log)
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web) { Converters = { new AsWritten() } };

    public IReadOnlyList<PersonFilePart> All => field ??=
    [
        Part<Person>("account", [nameof(Person.Id)], async person => One(await db.Users.AsNoTracking().Where(known => known.Id == person).Select(known => new
        {
            known.Id,
            Name = known.DisplayName,
            SignIn = known.UserName,
            known.ShopId,
            known.Language,
            Mail = known.Email,
            Telephone = known.PhoneNumber,
            known.AddedAt,
            known.NameRemovedAt,
            known.HasOneTimePassword,
            FailedSignIns = known.AccessFailedCount,
            ShutOutUntil = known.LockoutEnd,
        }).SingleAsync())),
        Part<IdentityUserRole<PersonId>>("roles", [nameof(IdentityUserRole<>.UserId)], async person => Many(await (
            from held in db.UserRoles.AsNoTracking() where held.UserId == person join role in db.Roles on held.RoleId equals role.Id select role.Name).ToListAsync())),
        Part<IdentityUserClaim<PersonId>>("claims", [nameof(IdentityUserClaim<>.UserId)], async person => Many(await db.UserClaims.AsNoTracking()
            .Where(claim => claim.UserId == person).Select(claim => new { claim.ClaimType, claim.ClaimValue }).ToListAsync())),
        Part<IdentityUserLogin<PersonId>>("otherSignIns", [nameof(IdentityUserLogin<>.UserId)], async person => Many(await db.UserLogins.AsNoTracking()
            .Where(login => login.UserId == person).Select(login => login.LoginProvider).ToListAsync())),
        // Their values are secrets.
        Part<IdentityUserToken<PersonId>>("signInTokens", [nameof(IdentityUserToken<>.UserId)], async person => Many(await db.UserTokens.AsNoTracking()
            .Where(token => token.UserId == person).Select(token => token.Name).ToListAsync())),
        Part<LessonRead>("lessonsRead", [nameof(LessonRead.PersonId)], async person => Many(await db.LessonsRead.AsNoTracking()
            .Where(read => read.PersonId == person).Select(read => new { read.Module, read.Lesson, read.ReadAt }).ToListAsync())),
        Part<PracticeTry>("practice", [nameof(PracticeTry.PersonId)], async person => Many((await db.PracticeTries.AsNoTracking()
            .Where(attempt => attempt.PersonId == person).OrderBy(attempt => attempt.At).ToListAsync()).Select(attempt => new
            {
                attempt.Id,
                attempt.Scenario,
                attempt.Kind,
                attempt.At,
                attempt.Language,
                Answer = Json(attempt.AnswerJson),
                attempt.Accepted,
                attempt.Safe,
                attempt.Score,
                attempt.ScenarioHash,
                attempt.ProcedureHash,
            }))),
        Part<FirstChances>("countedInResults", [nameof(FirstChances.PersonId)], async person => Many((await db.Set<FirstChances>().AsNoTracking()
            .Where(first => first.PersonId == person).ToListAsync()).Select(first => new { first.Procedure, first.Source, first.Subjects, first.Orders }))),
        Part<Paper>("papers", [nameof(Paper.PersonId)], async person => Many(await Papers(person))),
        Part<Sitting>("sittingsOpened", [nameof(Sitting.ExaminerId)], async person => Many(await db.Sittings.AsNoTracking()
            .Where(sitting => sitting.ExaminerId == person).Select(sitting => new { sitting.Id, sitting.Competency, sitting.Place, sitting.OpenedAt, sitting.ClosedAt }).ToListAsync())),
        Part<Run>("observedRuns", [nameof(Run.TechnicianId)], async person => Many((await db.Runs.AsNoTracking().Include(run => run.Taps)
            .Where(run => run.TechnicianId == person).OrderBy(run => run.StartedAt).ToListAsync()).Select(run => new
            {
                run.Id,
                run.Competency,
                run.Procedure,
                run.ProcedureHash,
                run.Variant,
                run.Chassis,
                run.ExaminerId,
                run.PaperId,
                run.StartedAt,
                run.EndedAt,
                run.SignedAt,
                run.Note,
                run.AbandonedAt,
                run.Reason,
                run.Accepted,
                Verdict = Json(run.VerdictJson),
                Taps = run.Taps.OrderBy(tap => tap.Number).Select(tap => new { tap.Number, tap.Step, tap.Seconds, tap.ReceivedAt, tap.UndoneAt }),
            }))),
        // What was found is about the one who was watched and stands in their file.
        Part<Run>("runsWatched", [nameof(Run.ExaminerId)], async person => Many(await db.Runs.AsNoTracking()
            .Where(run => run.ExaminerId == person).Select(run => new { run.Id, run.Procedure, run.StartedAt, run.SignedAt, run.AbandonedAt }).ToListAsync())),
        Part<BesideRun>("runsWatchedBeside", [nameof(BesideRun.ExaminerId)], async person => Many(await db.Set<BesideRun>().AsNoTracking()
            .Where(beside => beside.ExaminerId == person).Select(beside => new { beside.RunId, beside.BegunAt, beside.EndedAt }).ToListAsync())),
        Part<BesideTap>("tapsBeside", [nameof(BesideTap.ExaminerId)], async person => Many(await db.Set<BesideTap>().AsNoTracking()
            .Where(tap => tap.ExaminerId == person).Select(tap => new { tap.RunId, tap.Number, tap.Step, tap.Seconds, tap.UndoneAt }).ToListAsync())),
        Part<Draft>("drafts", [nameof(Draft.ChangedById), nameof(Draft.OfferedById)], async person => Many(await db.Set<Draft>().AsNoTracking()
            .Where(draft => draft.ChangedById == person || draft.OfferedById == person)
            .Select(draft => new { draft.Id, draft.Path, draft.State, draft.ChangedAt, draft.OfferedAt }).ToListAsync())),
        // What is written there is the provider's content, not about the person.
        Part<DraftText>("draftsWritten", [nameof(DraftText.ById)], async person => Many(await db.Set<DraftText>().AsNoTracking()
            .Where(text => text.ById == person).Select(text => new { text.DraftId, text.Number, text.At }).ToListAsync())),
        Part<DeskEntry>("contentPublished", [nameof(DeskEntry.WrittenById), nameof(DeskEntry.ApprovedById)], async person => Many(await db.Set<DeskEntry>().AsNoTracking()
            .Where(entry => entry.WrittenById == person || entry.ApprovedById == person)
            .Select(entry => new { entry.Number, entry.At, entry.Act, entry.Path, LogEntry = entry.LogIndex, Wrote = entry.WrittenById == person, Approved = entry.ApprovedById == person }).ToListAsync())),
        Part<CompetencyRecord>("records", [nameof(CompetencyRecord.PersonId)], async person => Many(await Records(person))),
        Part<LogNote>("notesWrittenOnRecords", [nameof(LogNote.ById)], async person => Many(await db.LogNotes.AsNoTracking()
            .Where(note => note.ById == person).Select(note => new { note.EntryIndex, note.RecordId, note.Reason }).ToListAsync())),
        Part<ProofRecord>("proofsShownIn", [], async person => Many(await (
            from shown in db.Set<ProofRecord>().AsNoTracking()
            join record in db.CompetencyRecords on shown.RecordId equals record.Id
            where record.PersonId == person
            join proof in db.Proofs on shown.ProofId equals proof.Id
            select new { proof.Id, shown.RecordId, proof.ForWhom, proof.MadeAt, proof.EndedAt }).ToListAsync())),
        Part<Proof>("proofsMade", [nameof(Proof.MadeById)], async person => Many(await db.Proofs.AsNoTracking()
            .Where(proof => proof.MadeById == person).Select(proof => new { proof.Id, proof.ForWhom, proof.MadeAt, proof.EndedAt }).ToListAsync())),
        Part<CrewPlace>("crewPlaces", [nameof(CrewPlace.PersonId)], async person => Many(await (
            from place in db.Set<CrewPlace>().AsNoTracking()
            where place.PersonId == person
            join job in db.Set<Job>() on place.JobId equals job.Id
            select new { place.JobId, place.Number, place.Competency, job.Customer, job.Chassis, job.FirstDay, job.LastDay }).ToListAsync())),
        Part<Crew>("crewsConfirmed", [nameof(Crew.ConfirmedById)], async person => Many(await db.Set<Crew>().AsNoTracking()
            .Where(crew => crew.ConfirmedById == person).Select(crew => new { crew.JobId, crew.Number, crew.ConfirmedAt }).ToListAsync())),
        Part<Job>("jobsPlanned", [nameof(Job.MadeById)], async person => Many(await db.Set<Job>().AsNoTracking()
            .Where(job => job.MadeById == person).Select(job => new { job.Id, job.Customer, job.Chassis, job.FirstDay, job.LastDay, job.MadeAt }).ToListAsync())),
        Part<JobCancellation>("jobsCalledOff", [nameof(JobCancellation.ById)], async person => Many(await db.Set<JobCancellation>().AsNoTracking()
            .Where(cancellation => cancellation.ById == person).Select(cancellation => new { cancellation.JobId, cancellation.At }).ToListAsync())),
        Part<ShopNeed>("needsSet", [nameof(ShopNeed.SetById)], async person => Many(await db.Set<ShopNeed>().AsNoTracking()
            .Where(need => need.SetById == person).Select(need => new { need.Competency, need.People, need.SetAt }).ToListAsync())),
        Part<CalendarAddress>("calendarAddress", [nameof(CalendarAddress.PersonId)], async person => Many(await db.Set<CalendarAddress>().AsNoTracking()
            .Where(address => address.PersonId == person).Select(address => new { address.MadeAt }).ToListAsync())),
        Part<ReminderMail>("reminderMails", [nameof(ReminderMail.PersonId)], async person => Many(await db.Set<ReminderMail>().AsNoTracking()
            .Where(mail => mail.PersonId == person).Select(mail => new { mail.Week, mail.MessageId, mail.BegunAt, mail.SentAt }).ToListAsync())),
    ];

    private static PersonFilePart Part<T>(string name, IReadOnlyList<string> columns, Func<PersonId, Task<JsonNode?>> read) =>
        new(name, [.. columns.Select(column => (typeof(T), column))], read);

    private async Task<IEnumerable<object>> Papers(PersonId person)
    {
        var papers = await db.Papers.AsNoTracking().Include(paper => paper.Questions).Where(paper => paper.PersonId == person)
            .OrderBy(paper => paper.AdmittedAt).ToListAsync();
        var sittings = papers.Select(paper => paper.SittingId).ToList();
        var of = await db.Sittings.AsNoTracking().Where(sitting => sittings.Contains(sitting.Id)).ToDictionaryAsync(sitting => sitting.Id);
        return papers.Select(paper => new
        {
            paper.Id,
            paper.Competency,
            Sitting = new { of[paper.SittingId].Id, of[paper.SittingId].Place, of[paper.SittingId].ExaminerId, of[paper.SittingId].OpenedAt, of[paper.SittingId].ClosedAt },
            paper.Language,
            paper.AdmittedAt,
            paper.BegunAt,
            paper.EndsAt,
            paper.HandedInAt,
            paper.LapsedAt,
            paper.Score,
            paper.Safe,
            paper.Passed,
            Questions = paper.Questions.OrderBy(question => question.Number).Select(question => new
            {
                question.Number,
                question.Kind,
                question.Scenario,
                question.ScenarioHash,
                question.ProcedureHash,
                Answer = Json(question.AnswerJson),
                question.AnswerSavedAt,
                question.Score,
                question.Safe,
                // Neighbours in a sitting share the scenarios, so what was found is told once it is closed.
                Verdict = of[paper.SittingId].ClosedAt is null ? null : Json(question.VerdictJson),
            }),
        });
    }

    private async Task<IEnumerable<object>> Records(PersonId person)
    {
        var records = await db.CompetencyRecords.AsNoTracking().Include(record => record.Runs).Where(record => record.PersonId == person).ToListAsync();
        var ids = records.Select(record => record.Id).ToList();
        var notes = (await db.LogNotes.AsNoTracking().Where(note => ids.Contains(note.RecordId)).ToListAsync()).ToDictionary(note => note.EntryIndex);
        var history = await log.Read(db);
        return records.Select(record => new
        {
            record.Id,
            record.Competency,
            record.PaperId,
            Runs = record.Runs.Select(run => run.RunId),
            IssuedAt = history.Records.GetValueOrDefault(record.Id)?.IssuedAt,
            LogEntry = history.Records.GetValueOrDefault(record.Id)?.Index,
            Events = history.Records.GetValueOrDefault(record.Id)?.Events.Select(happened => new
            {
                happened.Kind,
                happened.At,
                LogEntry = happened.Index,
                By = notes.GetValueOrDefault(happened.Index)?.ById,
                notes.GetValueOrDefault(happened.Index)?.Reason,
            }),
        });
    }

    private static JsonNode? One<T>(T row) => JsonSerializer.SerializeToNode(row, Options);

    private static JsonNode? Many<T>(IEnumerable<T> rows) => JsonSerializer.SerializeToNode(rows.ToList(), Options);

    private static JsonNode? Json(string? text) => text is null ? null : JsonNode.Parse(text);

    /// <summary>Ids, names, hashes and kinds as they are written everywhere else; instants and days as ISO 8601 writes them.</summary>
    private sealed class AsWritten : JsonConverterFactory
    {
        private static readonly HashSet<Type> Written =
        [
            typeof(ShopId), typeof(PersonId), typeof(SittingId), typeof(PaperId), typeof(RunId), typeof(RecordId), typeof(ProofId), typeof(PracticeId), typeof(JobId), typeof(DraftId),
            typeof(Instant), typeof(LocalDate), typeof(ContentHash), typeof(CompetencyId), typeof(ModuleId), typeof(ScenarioId), typeof(ProcedureId), typeof(StepId), typeof(VariantId),
        ];

        public override bool CanConvert(Type typeToConvert) => Written.Contains(typeToConvert) || typeToConvert.IsEnum;

        public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) =>
            (JsonConverter)Activator.CreateInstance(typeof(Text<>).MakeGenericType(typeToConvert))!;

        private sealed class Text<T> : JsonConverter<T>
        {
            public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => throw new NotSupportedException("The file is written alone.");

            public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => writer.WriteStringValue(value switch
            {
                Instant at => InstantPattern.ExtendedIso.Format(at),
                LocalDate day => LocalDatePattern.Iso.Format(day),
                Enum kind => JsonNamingPolicy.KebabCaseLower.ConvertName(kind.ToString()),
                _ => value?.ToString(),
            });
        }
    }
}
