using NodaTime;
using Training.Content.Competencies;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Credentials;
using Training.Proofs.Signing;
using Training.Records.Certifying;
using Training.Records.Proving;
using Training.Records.Tests.Ledger;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Proving;

/// <summary>A proof for a job answers for each of its days by what had happened by the end of that day.</summary>
public sealed class JobProofTests
{
    [Fact]
    public async Task A_suspension_that_came_and_went_is_shown_on_its_days_alone()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var token = await Proved(world, new(2026, 3, 10), new(2026, 3, 16));
        world.Clock.Set(new(2026, 3, 12, 9, 0, 0, TimeSpan.Zero));
        Ok(await world.Records(records => records.Suspend(world.Owner, record, "Sick leave.")));
        world.Clock.Set(new(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));
        Ok(await world.Records(records => records.Reinstate(world.Owner, record, "Back at work.")));
        world.Clock.Set(new(2026, 4, 20, 9, 0, 0, TimeSpan.Zero));
        var shown = await Shown(world, token);
        // The job is over, so its last day is what is asked about unless another is named.
        Assert.Equal(new LocalDate(2026, 3, 16), shown.On);
        var person = Assert.Single(shown.Job!.People);
        Assert.Equal(
            [
                new(new(2026, 3, 10), new(2026, 3, 11), true, RecordState.Current),
                new(new(2026, 3, 12), new(2026, 3, 13), false, RecordState.Suspended),
                new ShownJobSpan(new(2026, 3, 14), new(2026, 3, 16), true, RecordState.Current),
            ],
            person.Days);
        Assert.False(shown.Job.AllHeld);
    }

    [Fact]
    public async Task What_happens_after_the_job_changes_nothing_of_its_days()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var token = await Proved(world, new(2026, 3, 10), new(2026, 3, 16));
        world.Clock.Set(new(2026, 4, 1, 9, 0, 0, TimeSpan.Zero));
        Ok(await world.Records(records => records.Withdraw(world.Administrator, record, "Found out later.")));
        var shown = await Shown(world, token);
        Assert.True(shown.Job!.AllHeld);
        Assert.True(shown.AllHold);
    }

    [Fact]
    public async Task A_proof_that_was_made_for_no_job_speaks_of_none()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [record])));
        Assert.Null((await Shown(world, proof.Token)).Job);
        Assert.Null((await Pack(world, proof.Token)).Job);
    }

    [Fact]
    public async Task The_pack_says_the_days_signed_by_the_issuer()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        var token = await Proved(world, new(2026, 3, 10), new(2026, 3, 16));
        var job = (await Pack(world, token)).Job!;
        var keys = DidDocument.Read(Ok(await SigningTests.Document(world)), DidWeb.Parse("did:web:eastvale.example").Value).Value;
        var days = JobDays.Check(job, keys, world.Clock.GetUtcNow());
        Assert.True(days.IsOk, days.IsOk ? "" : days.Sentence);
        Assert.True(days.Value.AllHeld);
        Assert.Equal(("Larkfield Haulage", "K26-0142", new DateOnly(2026, 3, 10), new DateOnly(2026, 3, 16)),
            (days.Value.Customer, days.Value.Vehicle, days.Value.FirstDay, days.Value.LastDay));
        Assert.Equal("Amara Okafor", Assert.Single(days.Value.People).Name);
        var credentials = (await Pack(world, token)).Credentials.Select(credential => AchievementCredential.Read(credential).Value).ToList();
        Assert.Null(days.Value.Objection(credentials));
        job["people"]![0]!["name"] = "Bao Nguyen";
        Assert.False(JobDays.Check(job, keys, world.Clock.GetUtcNow()).IsOk);
    }

    [Fact]
    public async Task A_statement_about_a_job_is_about_the_people_of_its_own_file()
    {
        await using var world = await Create();
        var bao = await world.EarnedRecord(world.Colleague);
        await world.EarnedRecord(world.Technician);
        var days = JobDays.Read((await Pack(world, await Proved(world, new(2026, 3, 10), new(2026, 3, 16)))).Job!).Value;
        var others = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [bao])));
        var credentials = (await Pack(world, others.Token)).Credentials.Select(credential => AchievementCredential.Read(credential).Value).ToList();
        Assert.Equal("The statement about the job speaks of Amara Okafor, Changing relay trays, whose credential is not in this file.", days.Objection(credentials));
        var renamed = credentials[0] with { Id = new(days.People[0].Record) };
        Assert.EndsWith("says otherwise.", days.Objection([renamed]), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Whose_name_was_removed_is_not_in_the_job_any_more()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        var token = await Proved(world, new(2026, 3, 10), new(2026, 3, 16));
        Ok(await world.With<Training.Records.Accounts.NameRemovals, Training.Sequencing.Outcome<PersonId, Training.Sequencing.Refusal>>(
            removals => removals.Remove(world.Administrator, world.Technician.Person)));
        Assert.Empty((await Shown(world, token)).Job!.People);
    }

    private static async Task<string> Proved(TestWorld world, LocalDate first, LocalDate last)
    {
        var job = Ok(await world.Jobs(jobs => jobs.Make(world.Owner, new(
            "Larkfield Haulage", "K26-0142", Crane, first, last, "A new body.", new Dictionary<CompetencyId, int> { [RelayTrays] = 1 }, SeparatePeople: false))));
        Ok(await world.Jobs(jobs => jobs.Confirm(world.Owner, job, [(RelayTrays, world.Technician.Person)])));
        return Ok(await world.Jobs(jobs => jobs.Prove(world.Owner, job, line => line.Customer))).Token;
    }

    private static async Task<ShownProof.Shown> Shown(TestWorld world, string token) =>
        Assert.IsType<ShownProof.Shown>(Ok(await world.Proofs(proofs => proofs.Show(token))));

    private static async Task<ProofPack> Pack(TestWorld world, string token) =>
        ProofPack.Read(StrictJson.ReadObject(Ok(await ProofFilesTests.Pack(world, token))).Value).Value;
}
