using NodaTime;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Records.Proving;
using Training.Records.Reminding;
using Training.Records.Staffing;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Staffing;

public sealed class JobsTests
{
    [Fact]
    public async Task Who_holds_on_all_the_days_is_proposed_and_who_comes_nearest_is_named()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        var sick = await world.EarnedRecord(world.ShopExaminer);
        Ok(await world.Records(records => records.Suspend(world.Owner, sick, "Sick leave.")));
        world.Clock.Set(new(2028, 2, 20, 9, 0, 0, TimeSpan.Zero));
        await world.EarnedRecord(world.Colleague);
        // Amara's record ends on 2 March 2028.
        var need = Assert.Single((await Look(world, await Make(world, people: 3))).Needs);
        Assert.Equal(["Bao Nguyen"], need.Candidates.Where(candidate => candidate.IsProposed).Select(candidate => candidate.Record.Name));
        Assert.Equal(2, need.Open);
        Assert.Equal([("Amara Okafor", Lacks.Ends), ("Leila Haddad", Lacks.Suspended)], need.Nearest.Select(miss => (miss.Record.Name, miss.Why)));
        Assert.Equal(new LocalDate(2028, 3, 2), need.Nearest[0].Record.Standing!.Until);
    }

    [Fact]
    public async Task A_crew_is_confirmed_and_kept_beside_the_ones_before_it()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        await world.EarnedRecord(world.Colleague);
        var job = await Make(world, new(2026, 3, 10), new(2026, 3, 20), 2);
        Ok(await world.Jobs(jobs => jobs.Confirm(world.Owner, job, [(RelayTrays, world.Technician.Person)])));
        world.Clock.Advance(TimeSpan.FromDays(12));
        Ok(await world.Jobs(jobs => jobs.Confirm(world.Owner, job, [(RelayTrays, world.Colleague.Person)])));
        await world.Restart();
        var view = await Look(world, job);
        Assert.Equal((2, 1, "Hollis Penrose"), (view.Job.Places, view.Job.Filled, view.Confirmed!.By));
        Assert.Equal(["Amara Okafor"], (await On(world, job, new(2026, 3, 11))).Crew.Select(line => line.Name));
        Assert.Equal(["Bao Nguyen"], (await On(world, job, new(2026, 3, 15))).Crew.Select(line => line.Name));
    }

    [Fact]
    public async Task Who_was_competent_on_a_day_follows_from_what_had_happened_by_then()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        await world.EarnedRecord(world.Colleague);
        var job = await Make(world, new(2026, 3, 10), new(2026, 3, 20), 1);
        Ok(await world.Jobs(jobs => jobs.Confirm(world.Owner, job, [(RelayTrays, world.Technician.Person)])));
        world.Clock.Set(new(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));
        Ok(await world.Records(records => records.Suspend(world.Owner, record, "To be watched first.")));
        world.Clock.Set(new(2026, 3, 16, 9, 0, 0, TimeSpan.Zero));
        Ok(await world.Records(records => records.Reinstate(world.Owner, record, "Watched.")));
        foreach (var (day, holds) in new[] { (13, true), (14, false), (15, false), (16, true) })
            Assert.Equal(holds, Assert.Single((await On(world, job, new(2026, 3, day))).Crew).Standing is { Holds: true });
        var then = await On(world, job, new(2026, 3, 14));
        Assert.True(then is { IsJobDay: true, WasConfirmed: true });
        Assert.Equal(["Bao Nguyen"], then.Others.Select(record => record.Name));
        // Somebody who did not hold in the middle of it did not hold on all the days.
        var lost = (await Look(world, job)).Needs.Single().Candidates.Single(candidate => candidate.IsConfirmed);
        Assert.False(lost.May);
        Assert.Equal(Lacks.NotAllDays, Assert.Single((await Look(world, await Make(world, new(2026, 3, 10), new(2026, 3, 20), 3))).Needs.Single().Nearest).Why);
    }

    [Fact]
    public async Task Before_any_crew_was_confirmed_the_first_one_is_shown_and_said_to_be_later()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        var job = await Make(world, new(2026, 3, 1), new(2026, 3, 20), 1);
        Assert.Null((await On(world, job, new(2026, 3, 2))).Confirmed);
        world.Clock.Advance(TimeSpan.FromDays(5));
        var later = await Make(world, new(2026, 3, 7), new(2026, 3, 20), 1);
        Ok(await world.Jobs(jobs => jobs.Confirm(world.Owner, later, [(RelayTrays, world.Technician.Person)])));
        var then = await On(world, later, new(2026, 3, 3));
        Assert.True(then is { WasConfirmed: false, Confirmed: not null, IsJobDay: false });
    }

    [Fact]
    public async Task Nobody_is_confirmed_who_does_not_hold_on_all_the_days()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        var job = await Make(world, new(2028, 2, 25), new(2028, 3, 5), 1);
        Refused(
            await world.Jobs(jobs => jobs.Confirm(world.Owner, job, [])), "Choose at least one person.");
        Refused(
            await world.Jobs(jobs => jobs.Confirm(world.Owner, job, [(RelayTrays, world.Technician.Person)])),
            "Amara Okafor may not do this on all the days, the record ends on 2028-03-02: Changing relay trays.");
        NotFound(await world.Jobs(jobs => jobs.Confirm(world.Owner, job, [(RelayTrays, world.ForeignTechnician.Person)])));
        NotFound(await world.Jobs(jobs => jobs.Confirm(world.Owner, job, [(TrayTheory, world.Technician.Person)])));
        Assert.Null((await Look(world, job)).Confirmed);
    }

    [Fact]
    public async Task Somebody_suspended_after_they_were_confirmed_cannot_be_confirmed_again()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var job = await Make(world, new(2026, 4, 1), new(2026, 4, 5), 1);
        Ok(await world.Jobs(jobs => jobs.Confirm(world.Owner, job, [(RelayTrays, world.Technician.Person)])));
        Ok(await world.Records(records => records.Suspend(world.Owner, record, "Sick leave.")));
        Refused(
            await world.Jobs(jobs => jobs.Confirm(world.Owner, job, [(RelayTrays, world.Technician.Person)])),
            "Amara Okafor may not do this on all the days, the record is suspended: Changing relay trays.");
        Assert.Equal((1, 1), ((await Line(world, job)).Filled, (await Line(world, job)).Lost));
    }

    [Fact]
    public async Task Somebody_suspended_while_the_owner_chose_is_named_with_the_reason()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        await world.EarnedRecord(world.Colleague);
        var job = await Make(world, new(2026, 4, 1), new(2026, 4, 5), 2);
        Ok(await world.Records(records => records.Suspend(world.Owner, record, "Sick leave.")));
        Refused(
            await world.Jobs(jobs => jobs.Confirm(world.Owner, job, [(RelayTrays, world.Colleague.Person), (RelayTrays, world.Technician.Person)])),
            "Amara Okafor may not do this on all the days, the record is suspended: Changing relay trays.");
        Assert.Null((await Look(world, job)).Confirmed);
    }

    [Fact]
    public async Task Who_has_left_the_trade_is_put_into_no_crew_from_that_day_on_and_past_days_stay_as_they_were()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        await world.EarnedRecord(world.Colleague);
        var past = await Make(world, new(2026, 3, 4), new(2026, 3, 6), 1);
        var open = await Make(world, new(2026, 3, 4), new(2026, 4, 1), 2);
        foreach (var job in new[] { past, open })
            Ok(await world.Jobs(jobs => jobs.Confirm(world.Owner, job, [(RelayTrays, world.Technician.Person)])));
        world.Clock.Set(new(2026, 3, 10, 9, 0, 0, TimeSpan.Zero));
        Ok(await world.With<NameRemovals, Training.Sequencing.Outcome<PersonId, Training.Sequencing.Refusal>>(
            removals => removals.Remove(world.Administrator, world.Technician.Person)));

        var need = Assert.Single((await Look(world, await Make(world, new(2026, 3, 9), new(2026, 3, 12), 3))).Needs);
        Assert.Equal(["Bao Nguyen"], need.Candidates.Select(candidate => candidate.Record.Name));
        Assert.Empty(need.Nearest);
        Assert.False((await Look(world, open)).Needs.Single().Candidates.Single(candidate => candidate.IsConfirmed).May);
        Assert.Equal(1, (await Line(world, open)).Lost);
        Refused(
            await world.Jobs(jobs => jobs.Confirm(world.Owner, open, [(RelayTrays, world.Technician.Person)])),
            "Somebody whom you ticked has left the trade; choose another: Changing relay trays.");
        foreach (var (day, may) in new[] { (9, true), (10, false), (20, false) })
            Assert.Equal(may, Assert.Single((await On(world, open, new(2026, 3, day))).Crew).May);
        Assert.True((await Look(world, past)).Needs.Single().Candidates.Single(candidate => candidate.IsConfirmed).May);
        Assert.Equal(0, (await Line(world, past)).Lost);
        Assert.Contains(
            Ok(await world.With<Reminders, Training.Sequencing.Outcome<OwnersReminders, Training.Sequencing.Refusal>>(reminders => reminders.OfShop(world.Owner))).Reminders,
            reminder => reminder is Reminder.CrewLapses lapses && lapses.Job == open && lapses.Day == new LocalDate(2026, 3, 10));
    }

    [Fact]
    public async Task A_job_that_is_sent_twice_under_its_key_is_kept_once_and_a_changed_one_is_another()
    {
        await using var world = await Create();
        var job = New(new(2026, 3, 10), new(2026, 3, 12)) with { Key = JobId.New(Instant.FromUtc(2026, 3, 2, 9, 0)) };
        var made = Ok(await world.Jobs(jobs => jobs.Make(world.Owner, job)));
        Assert.Equal(job.Key, made);
        Assert.Equal(made, Ok(await world.Jobs(jobs => jobs.Make(world.Owner, job))));
        Assert.NotEqual(made, Ok(await world.Jobs(jobs => jobs.Make(world.Owner, job with { Chassis = "K26-0143" }))));
        Assert.NotEqual(made, Ok(await world.Jobs(jobs => jobs.Make(world.ForeignOwner, job))));
        Assert.Equal(2, Ok(await world.Jobs(jobs => jobs.List(world.Owner))).Count);
    }

    [Fact]
    public async Task A_job_that_is_called_off_stays_to_be_read_and_nobody_is_reminded_of_it()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var job = await Make(world, new(2026, 4, 1), new(2026, 4, 5), 1);
        Ok(await world.Jobs(jobs => jobs.Confirm(world.Owner, job, [(RelayTrays, world.Technician.Person)])));
        Ok(await world.Records(records => records.Suspend(world.Owner, record, "Sick leave.")));
        Assert.Contains(await Reminded(), reminder => reminder is Reminder.CrewLapses);
        NotFound(await world.Jobs(jobs => jobs.CallOff(world.ForeignOwner, job)));
        NotFound(await world.Jobs(jobs => jobs.CallOff(world.Technician, job)));
        var called = Ok(await world.Jobs(jobs => jobs.CallOff(world.Owner, job)));
        Assert.Equal(("Hollis Penrose", 1), (called.CalledOffBy, called.Job.Filled));
        Assert.Equal(called.Job.CalledOffAt, Ok(await world.Jobs(jobs => jobs.CallOff(world.Owner, job))).Job.CalledOffAt);
        Assert.DoesNotContain(await Reminded(), reminder => reminder is Reminder.CrewLapses);
        Assert.Equal((0, called.Job.CalledOffAt), ((await Line(world, job)).Lost, (await Line(world, job)).CalledOffAt));
        Refused(await world.Jobs(jobs => jobs.Confirm(world.Owner, job, [(RelayTrays, world.Technician.Person)])), "The job was called off. Plan another one.");
        Refused(await Prove(world, job), "The job was called off. Plan another one.");
        Assert.Equal(["Amara Okafor"], (await On(world, job, new(2026, 4, 2))).Crew.Select(line => line.Name));
        var over = await Make(world, new(2026, 2, 1), new(2026, 2, 5), 1);
        Refused(await world.Jobs(jobs => jobs.CallOff(world.Owner, over)), "The job is over; it can no longer be called off.");

        async Task<IReadOnlyList<Reminder>> Reminded() => Ok(
            await world.With<Reminders, Training.Sequencing.Outcome<OwnersReminders, Training.Sequencing.Refusal>>(reminders => reminders.OfShop(world.Owner))).Reminders;
    }

    [Fact]
    public async Task A_job_that_wants_separate_people_takes_nobody_twice()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        await world.PassedPaper(world.Technician, TrayTheory);
        var job = Ok(await world.Jobs(jobs => jobs.Make(world.Owner, New(new(2026, 3, 10), new(2026, 3, 12)) with
        {
            Needs = new Dictionary<CompetencyId, int> { [RelayTrays] = 1, [TrayTheory] = 1 },
            SeparatePeople = true,
        })));
        var view = await Look(world, job);
        Assert.Equal(1, view.Needs.Sum(need => need.Candidates.Count(candidate => candidate.IsProposed)));
        Assert.Equal(Lacks.Elsewhere, Assert.Single(view.Needs.Single(need => need.Open == 1).Nearest).Why);
        Refused(
            await world.Jobs(jobs => jobs.Confirm(world.Owner, job, [(RelayTrays, world.Technician.Person), (TrayTheory, world.Technician.Person)])),
            "This job wants a person of its own in each place, and somebody stands in two.");
        Refused(
            await world.Jobs(jobs => jobs.Confirm(world.Owner, job, [(RelayTrays, world.Technician.Person), (RelayTrays, world.Colleague.Person)])),
            "Changing relay trays: choose at most 1.");
    }

    [Fact]
    public async Task The_proof_of_a_job_shows_its_crew_and_nobody_else()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        await world.EarnedRecord(world.Colleague);
        await world.PassedPaper(world.Technician, TrayTheory);
        var job = await Make(world, new(2026, 3, 10), new(2026, 3, 12), 1);
        Refused(await Prove(world, job), "Confirm the crew first; the proof shows it.");
        Ok(await world.Jobs(jobs => jobs.Confirm(world.Owner, job, [(RelayTrays, world.Technician.Person)])));
        var proof = Ok(await Prove(world, job));
        Assert.Equal("Larkfield Haulage: K26-0142", proof.ForWhom);
        Assert.Equal([("Amara Okafor", RelayTrays)], proof.Records.Select(record => (record.Name, record.Competency)));
    }

    [Fact]
    public async Task What_is_no_job_is_refused_with_a_sentence_and_nothing_is_kept()
    {
        await using var world = await Create();
        var right = New(new(2026, 3, 10), new(2026, 3, 12));
        foreach (var (wrong, sentence) in new (NewJob, string)[]
        {
            (right with { Customer = " " }, "Name the customer in up to 100 characters on one line."),
            (right with { Chassis = new('x', 61) }, "Name the vehicle in up to 60 characters on one line."),
            (right with { Kind = new("airship") }, "Choose the kind of chassis."),
            (right with { FirstDay = new(1, 1, 1) }, "The days of a job lie at most 10 years from today; look at the year."),
            (right with { LastDay = new(9999, 12, 31) }, "The days of a job lie at most 10 years from today; look at the year."),
            (right with { LastDay = new(2026, 3, 9) }, "The last day is before the first."),
            (right with { LastDay = new(2027, 3, 11) }, "A job lasts 366 days at most."),
            (right with { Work = "" }, "Say in up to 2000 characters what is done."),
            (right with { Needs = new Dictionary<CompetencyId, int> { [RelayTrays] = 51 } }, "A job needs from 0 to 50 people for each; write a whole number."),
            (right with { Needs = new Dictionary<CompetencyId, int> { [RelayTrays] = 0 } }, "Say for at least one competency how many people are needed."),
        })
            Refused(await world.Jobs(jobs => jobs.Make(world.Owner, wrong)), sentence);
        NotFound(await world.Jobs(jobs => jobs.Make(world.Owner, right with { Needs = new Dictionary<CompetencyId, int> { [new("no-such")] = 1 } })));
        Assert.Empty(Ok(await world.Jobs(jobs => jobs.List(world.Owner))));
    }

    [Fact]
    public async Task Only_an_owner_plans_jobs()
    {
        await using var world = await Create();
        foreach (var actor in new[] { world.Technician, world.Examiner, world.Trainer, world.Administrator })
        {
            NotAllowed(await world.Jobs(jobs => jobs.Make(actor, New(new(2026, 3, 10), new(2026, 3, 12)))));
            NotAllowed(await world.Jobs(jobs => jobs.List(actor)));
        }
    }

    private static NewJob New(LocalDate first, LocalDate last) => new(
        "Larkfield Haulage", "K26-0142", Crane, first, last, "A new body.", new Dictionary<CompetencyId, int> { [RelayTrays] = 1 }, false);

    private static async Task<JobId> Make(TestWorld world, LocalDate? first = null, LocalDate? last = null, int people = 1) =>
        Ok(await world.Jobs(jobs => jobs.Make(world.Owner, New(first ?? new(2028, 2, 25), last ?? new(2028, 3, 5)) with
        {
            Needs = new Dictionary<CompetencyId, int> { [RelayTrays] = people },
        })));

    private static async Task<JobView> Look(TestWorld world, JobId job) => Ok(await world.Jobs(jobs => jobs.Look(world.Owner, job)));

    private static async Task<JobLine> Line(TestWorld world, JobId job) => Ok(await world.Jobs(jobs => jobs.List(world.Owner))).Single(line => line.Id == job);

    private static async Task<JobDay> On(TestWorld world, JobId job, LocalDate day) => Ok(await world.Jobs(jobs => jobs.On(world.Owner, job, day)));

    private static Task<Training.Sequencing.Outcome<ProofLine, Training.Sequencing.Refusal>> Prove(TestWorld world, JobId job) =>
        world.Jobs(jobs => jobs.Prove(world.Owner, job, line => $"{line.Customer}: {line.Chassis}"));
}
