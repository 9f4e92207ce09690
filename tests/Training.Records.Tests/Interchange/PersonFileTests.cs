using System.Text;
using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Records.Interchange;
using Training.Records.Ledger;
using Training.Records.Reminding;
using Training.Sequencing;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Interchange;

public sealed class PersonFileTests
{
    [Fact]
    public async Task No_column_that_leads_to_a_person_is_left_out()
    {
        await using var world = await Create();
        var (held, told) = await world.Db(db => Task.FromResult((
            db.Model.GetEntityTypes().SelectMany(entity => entity.GetProperties().Where(LeadsToAPerson).Select(property => $"{entity.ClrType.Name}.{property.Name}")).Order().ToList(),
            new PersonFileParts(db, world.One<LogBook>()).All.SelectMany(part => part.Columns).Select(column => $"{column.Entity.Name}.{column.Property}").Order().ToList())));
        Assert.True(held.Count > 15, "The model has hardly a person in it.");
        Assert.Equal(held, told);
    }

    [Fact]
    public async Task A_technician_finds_everything_that_they_did_and_what_became_of_it()
    {
        await using var world = await Create();
        Ok(await world.Reading(reading => reading.Finish(world.Technician, new("01-trays"))));
        var record = await world.EarnedRecord(world.Technician);
        Ok(await world.Records(records => records.Suspend(world.Owner, record, "Sick leave.")));
        Ok(await world.Records(records => records.Reinstate(world.Owner, record, "Back at work.")));
        Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [record], "Larkfield Haulage")));
        var job = Ok(await world.Jobs(jobs => jobs.Make(world.Owner, new(
            "Larkfield Haulage", "L18-0427", Crane, new(2026, 3, 20), new(2026, 3, 24), "A crane on it.",
            new Dictionary<CompetencyId, int> { [RelayTrays] = 1 }, SeparatePeople: false))));
        Ok(await world.Jobs(jobs => jobs.Confirm(world.Owner, job, [(RelayTrays, world.Technician.Person)])));

        var file = await File(world, world.Technician, world.Technician.Person);
        Assert.Equal("Amara Okafor", (string?)file["account"]!["name"]);
        Assert.Equal(["technician"], file["roles"]!.AsArray().Select(role => (string?)role));
        foreach (var part in new[] { "lessonsRead", "papers", "observedRuns", "records", "proofsShownIn", "crewPlaces" })
            Assert.True(file[part]!.AsArray().Count > 0, $"Nothing is told of {part}.");
        var paper = file["papers"]![0]!;
        Assert.NotNull(paper["questions"]![0]!["answer"]);
        Assert.NotNull(paper["questions"]![0]!["verdict"]);
        Assert.Equal(["suspended", "reinstated"], file["records"]![0]!["events"]!.AsArray().Select(happened => (string?)happened!["kind"]));
        Assert.Equal("Sick leave.", (string?)file["records"]![0]!["events"]![0]!["reason"]);
        Assert.NotEmpty(file["observedRuns"]![0]!["taps"]!.AsArray());
    }

    [Fact]
    public async Task An_owner_finds_what_they_did_for_others()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        Ok(await world.Records(records => records.Suspend(world.Owner, record, "Sick leave.")));
        Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [record], "Larkfield Haulage")));
        Ok(await world.Coverage(coverage => coverage.SetNeeds(world.Owner, new Dictionary<CompetencyId, int> { [RelayTrays] = 1 })));
        var secret = Ok(await world.With<Calendars, Outcome<string, Refusal>>(calendars => calendars.Make(world.Owner)));
        var file = await File(world, world.Owner, world.Owner.Person);
        foreach (var part in new[] { "notesWrittenOnRecords", "proofsMade", "needsSet", "calendarAddress" })
            Assert.True(file[part]!.AsArray().Count > 0, $"Nothing is told of {part}.");
        Assert.DoesNotContain(secret, file.ToJsonString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_found_in_a_paper_waits_for_the_end_of_the_sitting()
    {
        await using var world = await Create();
        var open = await world.BegunPaper(world.Technician);
        Ok(await world.Papers(papers => papers.Save(world.Technician, open.Id, 1, Ways.RightAnswer(open.Questions[0].Question), 1)));
        Ok(await world.Papers(papers => papers.HandIn(world.Technician, open.Id)));
        var question = (await File(world, world.Technician, world.Technician.Person))["papers"]![0]!["questions"]![0]!;
        Assert.NotNull(question["answer"]);
        Assert.Null(question["verdict"]);
    }

    [Fact]
    public async Task No_secret_stands_in_the_file()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        var text = (await File(world, world.Administrator, world.Technician.Person)).ToJsonString();
        var (person, record, paper) = await world.Db(async db => (
            await db.Users.SingleAsync(known => known.Id == world.Technician.Person),
            await db.CompetencyRecords.SingleAsync(), await db.Papers.SingleAsync()));
        foreach (var secret in new[] { person.PasswordHash!, person.SecurityStamp!, Convert.ToBase64String(record.Salt!), Convert.ToHexStringLower(record.Salt!), $"{paper.Seed}" })
            Assert.DoesNotContain(secret, text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("Renske", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_is_for_the_person_and_for_administrators_alone()
    {
        await using var world = await Create();
        foreach (var other in new[] { world.Owner, world.Colleague, world.Examiner, world.Trainer, world.ForeignOwner })
            NotFound(await world.With<PersonFile, Outcome<byte[], Refusal>>(files => files.Write(other, world.Technician.Person)));
        NotFound(await world.With<PersonFile, Outcome<byte[], Refusal>>(files => files.Write(world.Administrator, new(Guid.NewGuid()))));
    }

    private static bool LeadsToAPerson(IProperty property)
    {
        if (property.GetContainingForeignKeys().Any(key => key.PrincipalEntityType.ClrType == typeof(Person))) return true;
        // Roles have ids of the same type, because Identity wants one.
        return Nullable.GetUnderlyingType(property.ClrType) is var bare && (bare ?? property.ClrType) == typeof(PersonId)
            && property.DeclaringType.ClrType != typeof(Role) && !property.GetContainingForeignKeys().Any(key => key.PrincipalEntityType.ClrType == typeof(Role));
    }

    private static async Task<JsonNode> File(TestWorld world, Actor actor, PersonId person) => JsonNode.Parse(Encoding.UTF8.GetString(
        Ok(await world.With<PersonFile, Outcome<byte[], Refusal>>(files => files.Write(actor, person)))))!;
}
