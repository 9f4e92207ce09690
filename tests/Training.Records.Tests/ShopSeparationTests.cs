using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Covering;
using Training.Records.Examining;
using Training.Records.Learning;
using Training.Records.Observing;
using Training.Records.Overviews;
using Training.Records.Practising;
using Training.Records.Proving;
using Training.Records.Staffing;
using Training.Sequencing;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests;

/// <summary>
/// Somebody of another shop, with every role that a shop's person can have, tries every method on what belongs to
/// Quillmoor Coachworks.
/// </summary>
public sealed class ShopSeparationTests
{
    private static readonly Type[] Services =
        [typeof(People), typeof(Reading), typeof(Practice), typeof(Sittings), typeof(Papers), typeof(Runs), typeof(CompetencyRecords),
            typeof(CustomerProofs), typeof(Overview), typeof(Coverage), typeof(Jobs)];

    private readonly HashSet<string> tried = [];

    [Fact]
    public async Task Nobody_of_another_shop_sees_or_touches_anything()
    {
        await using var world = await Create();
        var (amara, owner, them) = (world.Technician, world.Owner, world.ForeignExaminer);
        var record = await world.EarnedRecord(amara);
        var proof = Ok(await world.Proofs(proofs => proofs.Make(owner, [record])));
        var asked = Ok(await world.Practice(practice => practice.Draw(amara, new("tray-plain"))));
        var attempt = Ok(await world.Practice(practice => practice.HandIn(amara, new(Guid.NewGuid(), asked.Ticket, Ways.RightOrder)))).Id;
        Ok(await world.Reading(reading => reading.Finish(amara, new("01-trays"))));
        await world.PassedPaper(world.Colleague);
        var run = await world.StartRun(world.Colleague, ChangeTray, world.ShopExaminer);
        var tap = await world.Tap(run, "key-off", 1, world.ShopExaminer);
        var sitting = await world.OpenSitting(examiner: world.ShopExaminer);
        var paper = (await world.Begin(amara, await world.Admit(sitting, amara, world.ShopExaminer))).Id;
        var theirs = await world.OpenSitting(examiner: them);
        var planned = new NewJob(
            "Larkfield Haulage", "K26-0142", Crane, new(2026, 3, 1), new(2026, 3, 30), "A new body.",
            new Dictionary<Content.Competencies.CompetencyId, int> { [RelayTrays] = 1 }, false);
        var job = Ok(await world.Jobs(jobs => jobs.Make(owner, planned)));

        // What is named is not found.
        await Hidden<People>(nameof(People.Look), async people => await people.Look(them, amara.Person));
        await Hidden<People>(nameof(People.List), async people => await people.List(them, world.Quillmoor));
        await Hidden<People>(nameof(People.Add), async people => await people.Add(them, new("X", "xx", world.Quillmoor, [Roles.Technician])));
        await Hidden<People>(nameof(People.GiveOneTimePassword), async people => await people.GiveOneTimePassword(them, amara.Person));
        await Hidden<Reading>(nameof(Reading.Of), async reading => await reading.Of(them, amara.Person));
        await Hidden<Practice>(nameof(Practice.Of), async practice => await practice.Of(them, amara.Person));
        await Hidden<Practice>(nameof(Practice.Look), async practice => await practice.Look(them, attempt));
        await Hidden<Sittings>(nameof(Sittings.Look), async sittings => await sittings.Look(them, sitting));
        await Hidden<Sittings>(nameof(Sittings.Candidates), async sittings => await sittings.Candidates(them, sitting));
        await Hidden<Sittings>(nameof(Sittings.Admit), async sittings => await sittings.Admit(them, sitting, them.Person));
        await Hidden<Sittings>(nameof(Sittings.Admit), async sittings => await sittings.Admit(them, theirs, amara.Person));
        await Hidden<Sittings>(nameof(Sittings.TakeOff), async sittings => await sittings.TakeOff(them, sitting, amara.Person));
        await Hidden<Sittings>(nameof(Sittings.Close), async sittings => await sittings.Close(them, sitting));
        await Hidden<Papers>(nameof(Papers.Look), async papers => await papers.Look(them, paper));
        await Hidden<Papers>(nameof(Papers.Begin), async papers => await papers.Begin(them, paper));
        await Hidden<Papers>(nameof(Papers.Open), async papers => await papers.Open(them, paper));
        await Hidden<Papers>(nameof(Papers.Save), async papers => await papers.Save(them, paper, 1, "[]", 1));
        await Hidden<Papers>(nameof(Papers.HandIn), async papers => await papers.HandIn(them, paper));
        await Hidden<Runs>(nameof(Runs.Start), async runs => await runs.Start(them, Ways.Run(world.Colleague, StowTray)));
        await Hidden<Runs>(nameof(Runs.Look), async runs => await runs.Look(them, run));
        await Hidden<Runs>(nameof(Runs.Tap), async runs => await runs.Tap(them, run, new(Guid.NewGuid(), new("hose"), 1)));
        await Hidden<Runs>(nameof(Runs.Undo), async runs => await runs.Undo(them, run, tap.Id));
        await Hidden<Runs>(nameof(Runs.NotTapped), async runs => await runs.NotTapped(them, run));
        await Hidden<Runs>(nameof(Runs.End), async runs => await runs.End(them, run));
        await Hidden<Runs>(nameof(Runs.Sign), async runs => await runs.Sign(them, run, ""));
        await Hidden<Runs>(nameof(Runs.Abandon), async runs => await runs.Abandon(them, run, "No."));
        await Hidden<CompetencyRecords>(nameof(CompetencyRecords.Of), async records => await records.Of(them, amara.Person));
        await Hidden<CompetencyRecords>(nameof(CompetencyRecords.Look), async records => await records.Look(them, record));
        await Hidden<CompetencyRecords>(nameof(CompetencyRecords.Suspend), async records => await records.Suspend(them, record, "No."));
        await Hidden<CompetencyRecords>(nameof(CompetencyRecords.Reinstate), async records => await records.Reinstate(them, record, "No."));
        await Hidden<CompetencyRecords>(nameof(CompetencyRecords.Confirm), async records => await records.Confirm(them, record, "No."));
        await Hidden<CustomerProofs>(nameof(CustomerProofs.Make), async proofs => await proofs.Make(them, [record]));
        await Hidden<CustomerProofs>(nameof(CustomerProofs.Look), async proofs => await proofs.Look(them, proof.Id));
        await Hidden<CustomerProofs>(nameof(CustomerProofs.End), async proofs => await proofs.End(them, proof.Id));
        await Hidden<Overview>(nameof(Overview.WhatNext), async overview => await overview.WhatNext(them, amara.Person));
        await Hidden<Overview>(nameof(Overview.WhoMayDoWhat), async overview => await overview.WhoMayDoWhat(them, shop: world.Quillmoor));

        await Hidden<Jobs>(nameof(Jobs.Look), async jobs => await jobs.Look(them, job));
        await Hidden<Jobs>(nameof(Jobs.On), async jobs => await jobs.On(them, job, new(2026, 3, 2)));
        await Hidden<Jobs>(nameof(Jobs.Confirm), async jobs => await jobs.Confirm(them, job, [(RelayTrays, amara.Person)]));
        await Hidden<Jobs>(nameof(Jobs.CallOff), async jobs => await jobs.CallOff(them, job));
        await Hidden<Jobs>(nameof(Jobs.Prove), async jobs => await jobs.Prove(them, job, line => line.Customer));

        // What is listed has nothing of Quillmoor in it.
        await Without<People>(nameof(People.List), async people => Ok(await people.List(them)));
        await Without<People>(nameof(People.Shops), async people => await people.Shops(them));
        await Without<Sittings>(nameof(Sittings.List), async sittings => Ok(await sittings.List(them)));
        await Without<Sittings>(nameof(Sittings.Candidates), async sittings => Ok(await sittings.Candidates(them, theirs)));
        await Without<Papers>(nameof(Papers.Mine), async papers => await papers.Mine(them));
        await Without<Runs>(nameof(Runs.ToDo), async runs => Ok(await runs.ToDo(them)));
        await Without<Runs>(nameof(Runs.List), async runs => Ok(await runs.List(them)));
        await Without<Runs>(nameof(Runs.Mine), async runs => await runs.Mine(them));
        await Without<CustomerProofs>(nameof(CustomerProofs.List), async proofs => Ok(await proofs.List(them)));
        await Without<Overview>(nameof(Overview.WhoMayDoWhat), async overview => Ok(await overview.WhoMayDoWhat(them)));
        await Without<Jobs>(nameof(Jobs.List), async jobs => Ok(await jobs.List(them)));
        var ours = Ok(await world.Jobs(jobs => jobs.Make(them, planned)));
        await Without<Jobs>(nameof(Jobs.Look), async jobs => Ok(await jobs.Look(them, ours)));
        await Without<Coverage>(nameof(Coverage.Look), async coverage => Ok(await coverage.Look(them)));
        await Without<Coverage>(nameof(Coverage.SetNeeds), async coverage =>
            Ok(await coverage.SetNeeds(them, new Dictionary<Content.Competencies.CompetencyId, int> { [RelayTrays] = 1 })));

        // No role of a shop allows these at all.
        NotAllowed(await world.Records(records => records.Withdraw(them, record, "No.")));
        NotAllowed(await world.People(people => people.AddShop(them, "New", "Europe/London")));

        // These touch the actor's own things alone, or make new ones.
        string[] others =
        [
            "CompetencyRecords.Withdraw", "People.AddShop", "People.ChoosePassword", "People.ChooseLanguage", "Reading.Finish", "Practice.Draw",
            "Practice.HandIn", "Sittings.Open", "Jobs.Make",
        ];
        var all = Services.SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
            .Where(method => method.GetParameters().FirstOrDefault()?.ParameterType == typeof(Actor))
            .Select(method => $"{type.Name}.{method.Name}")).ToList();
        Assert.NotEmpty(all);
        Assert.Empty(all.Except(tried).Except(others));

        async Task Hidden<TService>(string name, Func<TService, Task<object>> ask) where TService : notnull
        {
            tried.Add($"{typeof(TService).Name}.{name}");
            dynamic outcome = await world.With(ask);
            Assert.False((bool)outcome.IsOk, $"{typeof(TService).Name}.{name}");
            Assert.Equal(global::Training.Records.Refused.NotFound, (Refusal)outcome.Fault);
        }

        async Task Without<TService>(string name, Func<TService, Task<object>> ask) where TService : notnull
        {
            tried.Add($"{typeof(TService).Name}.{name}");
            var json = JsonSerializer.Serialize(await world.With(ask), Json);
            foreach (var secret in new[] { "Amara", "Bao", "Leila", "Hollis", "Quillmoor", $"{amara.Person}", $"{sitting}", $"{run}", $"{paper}" })
                Assert.DoesNotContain(secret, json, StringComparison.OrdinalIgnoreCase);
        }
    }

    private static readonly JsonSerializerOptions Json = new() { ReferenceHandler = ReferenceHandler.IgnoreCycles };
}
