using Microsoft.EntityFrameworkCore;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Ledger;
using Training.Records.Publishing;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Certifying;

public sealed class CompetencyRecordsTests
{
    [Fact]
    public async Task A_record_names_the_paper_the_runs_the_examiners_and_every_text_that_was_judged_by()
    {
        await using var world = await Create();
        var paper = await world.PassedPaper(world.Technician);
        var first = (await world.SignedRun(world.Technician, ChangeTray)).Run;
        var second = await world.EndedRun(world.Technician, StowTray, world.OtherExaminer);
        var signed = Ok(await world.Runs(runs => runs.Sign(world.OtherExaminer, second, "Well done.")));
        var view = await world.Look(signed.Record!.Value);
        Assert.Equal((paper, "Renske de Boer"), (view.Paper, view.PaperExaminer));
        Assert.Equal(
            [(first, "Change the relay tray", "Renske de Boer"), (second, "Stow the relay tray", "Mateo Quispe")],
            view.Runs.Select(run => (run.Run, run.ProcedureTitle, run.Examiner)));
        var content = world.One<Library>().Current.Content;
        Assert.Equal(content.FindCompetency(RelayTrays)!.File.Hash, view.CompetencyHash);
        foreach (var text in view.Judged) Assert.Equal(Files.Single(file => file.Path == text.Path).Hash, text.Hash);
        Assert.Contains(view.Judged, text => text.Path == "procedures/stow-tray.yaml");
        Assert.Contains(view.Judged, text => text.Path == "scenarios/tray-half.md");
        Assert.Contains(view.Judged, text => text.Path == "competencies/relay-trays.yaml");
        Assert.Equal((RecordEventKind.Issued, "Mateo Quispe"), (Assert.Single(view.Events).Kind, view.Events[0].By));
        Assert.Equal(signed.Record, Ok(await world.Runs(runs => runs.Look(world.Examiner, second))).Record);
    }

    [Fact]
    public async Task Signing_again_or_at_once_issues_one_record()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician);
        await world.SignedRun(world.Technician, ChangeTray);
        var last = await world.EndedRun(world.Technician, StowTray);
        var signed = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() =>
            world.Runs(runs => runs.Sign(world.Examiner, last, "Seen.")))));
        Assert.NotNull(Assert.Single(signed.Select(Ok).Distinct()).Record);
        Assert.Equal(1, await world.Db(db => db.CompetencyRecords.CountAsync()));
    }

    [Fact]
    public async Task Where_a_record_cannot_be_kept_the_signature_is_not_kept_either()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician);
        await world.SignedRun(world.Technician, ChangeTray);
        var last = await world.EndedRun(world.Technician, StowTray);
        await world.Db(db => db.Database.ExecuteSqlRawAsync(
            "CREATE TRIGGER DiskIsFull BEFORE INSERT ON CompetencyRecords BEGIN SELECT RAISE(ABORT, 'disk is full'); END"));
        await Assert.ThrowsAsync<DbUpdateException>(() => world.Runs(runs => runs.Sign(world.Examiner, last, "Seen.")));
        Assert.Equal(Records.Observing.RunState.Ended, Ok(await world.Runs(runs => runs.Look(world.Examiner, last))).Run.State);
        await world.Db(db => db.Database.ExecuteSqlRawAsync("DROP TRIGGER DiskIsFull"));
        Assert.NotNull(Ok(await world.Runs(runs => runs.Sign(world.Examiner, last, "Seen."))).Record);
    }

    [Fact]
    public async Task A_run_that_is_signed_after_the_last_day_brings_no_record()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician);
        await world.SignedRun(world.Technician, ChangeTray);
        var last = await world.EndedRun(world.Technician, StowTray);
        world.Clock.Advance(TimeSpan.FromDays(31));
        var signed = Ok(await world.Runs(runs => runs.Sign(world.Examiner, last, "Late.")));
        Assert.True(signed.Passed);
        Assert.Null(signed.Record);
    }

    [Fact]
    public async Task A_competency_that_asks_for_no_run_gives_its_record_with_the_paper()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician, TrayTheory);
        var record = Assert.Single(Ok(await world.Records(records => records.Of(world.Technician, world.Technician.Person))));
        Assert.Equal((TrayTheory, RecordState.Current), (record.Competency, record.Standing!.State));
        Assert.Equal(new(2026, 5, 2), record.Standing.ConfirmBy);
        Assert.Empty((await world.Look(record.Id)).Runs);
    }

    [Fact]
    public async Task The_days_of_a_record_are_those_of_its_shop()
    {
        await using var world = await Create();
        // 03:30 UTC on 3 March is still 2 March in New York.
        world.Clock.Set(new(2026, 3, 3, 3, 30, 0, TimeSpan.Zero));
        await world.PassedPaper(world.ForeignTechnician, TrayTheory);
        await world.PassedPaper(world.Technician, TrayTheory);
        Assert.Equal(new(2026, 3, 2), (await Since(world.ForeignTechnician)));
        Assert.Equal(new(2026, 3, 3), (await Since(world.Technician)));

        async Task<NodaTime.LocalDate> Since(Actor actor) =>
            Ok(await world.Records(records => records.Of(actor, actor.Person))).Single().Standing!.Since;
    }

    [Fact]
    public async Task A_renewed_record_runs_on_and_the_newest_one_counts()
    {
        await using var world = await Create();
        var first = await world.EarnedRecord(world.Technician);
        world.Clock.Set(new(2028, 1, 10, 9, 0, 0, TimeSpan.Zero));
        Assert.Equal(RecordState.Due, (await world.Look(first)).Record.Standing!.State);
        var second = await world.EarnedRecord(world.Technician);
        var lines = Ok(await world.Records(records => records.Of(world.Technician, world.Technician.Person)));
        Assert.Equal([(second, true), (first, false)], lines.Select(line => (line.Id, line.IsNewest)));
        Assert.Equal(new(2030, 3, 2), lines[0].Standing!.Until);
        var before = Ok(await world.Records(records => records.Of(world.Technician, world.Technician.Person, new(2027, 1, 1))));
        Assert.Equal([(second, false), (first, true)], before.Select(line => (line.Id, line.IsNewest)));
        Assert.Null(before[0].Standing);
    }

    [Fact]
    public async Task An_owner_suspends_and_reinstates_and_every_step_stays_to_be_read()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        Assert.Equal(RecordState.Suspended, Ok(await world.Records(records => records.Suspend(world.Owner, record, "Sick leave."))).Record.Standing!.State);
        Refused(await world.Records(records => records.Suspend(world.Owner, record, "Again.")), "The record is suspended already.");
        Assert.Equal(RecordState.Current, Ok(await world.Records(records => records.Reinstate(world.Owner, record, "Back."))).Record.Standing!.State);
        Refused(await world.Records(records => records.Reinstate(world.Owner, record, "Again.")), "The record is not suspended.");
        Assert.Equal(
            [(RecordEventKind.Issued, ""), (RecordEventKind.Suspended, "Sick leave."), (RecordEventKind.Reinstated, "Back.")],
            (await world.Look(record)).Events.Select(entry => (entry.Kind, entry.Reason)));
    }

    [Fact]
    public async Task A_withdrawn_record_stays_withdrawn()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        NotAllowed(await world.Records(records => records.Withdraw(world.Owner, record, "No.")));
        NotAllowed(await world.Records(records => records.Withdraw(world.ShopExaminer, record, "No.")));
        Ok(await world.Records(records => records.Withdraw(world.Examiner, record, "The paper was copied.")));
        const string Sentence = "The record is withdrawn for good.";
        Refused(await world.Records(records => records.Withdraw(world.Administrator, record, "No.")), Sentence);
        Refused(await world.Records(records => records.Suspend(world.Owner, record, "No.")), Sentence);
        Refused(await world.Records(records => records.Reinstate(world.Owner, record, "No.")), Sentence);
    }

    [Fact]
    public async Task An_expired_record_is_neither_suspended_nor_reinstated()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        world.Clock.Set(new(2029, 1, 1, 9, 0, 0, TimeSpan.Zero));
        const string Sentence = "The record has expired; it can only be earned again.";
        Refused(await world.Records(records => records.Suspend(world.Owner, record, "No.")), Sentence);
        Refused(await world.Records(records => records.Reinstate(world.Owner, record, "No.")), Sentence);
    }

    [Fact]
    public async Task Nobody_decides_about_their_own_record()
    {
        await using var world = await Create();
        var foreman = await world.Add("Fa'afetai Leota", "fetai", world.Quillmoor, Roles.Owner, Roles.Technician);
        var record = await world.EarnedRecord(foreman);
        const string Sentence = "Nobody decides about their own record.";
        Refused(await world.Records(records => records.Suspend(foreman, record, "No.")), Sentence);
        Refused(await world.Records(records => records.Reinstate(foreman, record, "No.")), Sentence);
        Refused(await world.Records(records => records.Confirm(foreman, record, "Yes.")), Sentence);
        Ok(await world.Records(records => records.Suspend(world.Owner, record, "Yes.")));
    }

    [Fact]
    public async Task What_happens_to_a_record_has_a_reason_and_comes_from_somebody_who_may()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        Refused(await world.Records(records => records.Suspend(world.Owner, record, " ")), "Say in up to 500 characters why.");
        NotAllowed(await world.Records(records => records.Suspend(world.Colleague, record, "No.")));
        NotAllowed(await world.Records(records => records.Suspend(world.Trainer, record, "No.")));
        NotFound(await world.Records(records => records.Look(world.Colleague, record)));
        NotFound(await world.Records(records => records.Of(world.Colleague, world.Technician.Person)));
        NotFound(await world.Records(records => records.Suspend(world.Owner, new(Guid.NewGuid()), "No.")));
    }

    [Fact]
    public async Task A_confirmation_keeps_a_record_and_is_taken_only_where_it_is_asked_for()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        Refused(await world.Records(records => records.Confirm(world.Owner, record, "Works.")), "This competency asks for no confirmation.");
        await world.PassedPaper(world.Technician, TrayTheory);
        var theory = Ok(await world.Records(records => records.Of(world.Owner, world.Technician.Person))).Single(line => line.Competency == TrayTheory).Id;
        world.Clock.Set(new(2026, 5, 2, 9, 0, 0, TimeSpan.Zero));
        Assert.Equal(new(2026, 7, 2), Ok(await world.Records(records => records.Confirm(world.Owner, theory, "Works daily."))).Record.Standing!.ConfirmBy);
        world.Clock.Set(new(2026, 7, 3, 9, 0, 0, TimeSpan.Zero));
        Assert.Equal(RecordState.Expired, (await world.Look(theory)).Record.Standing!.State);
        Refused(await world.Records(records => records.Confirm(world.Owner, theory, "Late.")), "The record was not confirmed in time and has lapsed; it can only be earned again.");
    }

    [Fact]
    public async Task A_second_confirmation_on_the_same_day_adds_nothing_and_the_log_still_holds()
    {
        await using var world = await Create();
        var theory = await Theory(world, world.Technician);
        world.Clock.Advance(TimeSpan.FromDays(10));
        Ok(await world.Records(records => records.Confirm(world.Owner, theory, "Relay tray of K26-0131.")));
        world.Clock.Advance(TimeSpan.FromHours(2));
        Ok(await world.Records(records => records.Confirm(world.Administrator, theory, "Seen, too.")));
        var confirmed = Assert.Single((await world.Look(theory)).Confirmations);
        Assert.Equal(("Hollis Penrose", "Relay tray of K26-0131."), (confirmed.By, confirmed.Reason));
        world.Clock.Advance(TimeSpan.FromDays(1));
        Ok(await world.Records(records => records.Confirm(world.Owner, theory, "And another.")));
        Assert.Equal(2, (await world.Look(theory)).Confirmations.Count());
        Assert.Null((await world.With<LogAudit, LogFinding>(audit => audit.Look())).Fault);
    }

    [Fact]
    public async Task The_day_that_is_promised_before_a_confirmation_is_the_one_that_it_brings()
    {
        await using var world = await Create();
        var theory = await Theory(world, world.Technician);
        world.Clock.Set(new(2026, 4, 20, 9, 0, 0, TimeSpan.Zero));
        var before = (await world.Look(theory)).Record.Standing!;
        Assert.Equal((new(2026, 5, 2), new(2026, 7, 2)), (before.Until, before.UntilIfConfirmed!.Value));
        Assert.Equal(before.UntilIfConfirmed, Ok(await world.Records(records => records.Confirm(world.Owner, theory, "Works daily."))).Record.Standing!.Until);
        // A confirmation does not lengthen the record itself, which ends on 2 September.
        world.Clock.Set(new(2026, 6, 20, 9, 0, 0, TimeSpan.Zero));
        Ok(await world.Records(records => records.Confirm(world.Owner, theory, "Works daily.")));
        world.Clock.Set(new(2026, 8, 20, 9, 0, 0, TimeSpan.Zero));
        Assert.Equal(new(2026, 9, 2), Ok(await world.Records(records => records.Confirm(world.Owner, theory, "Works daily."))).Record.Standing!.Until);
        // As of a day before it, nothing is known of it.
        Assert.Equal(new(2026, 5, 2), Ok(await world.Records(records => records.Look(world.Owner, theory, new(2026, 4, 19)))).Record.Standing!.Until);
    }

    [Fact]
    public async Task The_shops_owner_and_the_providers_examiner_and_administrator_confirm_and_nobody_else()
    {
        await using var world = await Create();
        var theory = await Theory(world, world.Technician);
        foreach (var actor in new[] { world.Technician, world.Colleague, world.Trainer, world.ShopExaminer })
            NotAllowed(await world.Records(records => records.Confirm(actor, theory, "Seen.")));
        NotFound(await world.Records(records => records.Confirm(world.ForeignOwner, theory, "Seen.")));
        NotFound(await world.Records(records => records.Confirm(world.Owner, new(Guid.NewGuid()), "Seen.")));
        Refused(await world.Records(records => records.Confirm(world.Owner, theory, " ")), "Say in up to 500 characters which work was seen.");
        foreach (var actor in new[] { world.Owner, world.Examiner, world.Administrator })
        {
            world.Clock.Advance(TimeSpan.FromDays(1));
            Ok(await world.Records(records => records.Confirm(actor, theory, "Seen.")));
        }
    }

    [Fact]
    public async Task A_record_that_is_suspended_or_withdrawn_is_not_confirmed()
    {
        await using var world = await Create();
        var theory = await Theory(world, world.Technician);
        Ok(await world.Records(records => records.Suspend(world.Owner, theory, "Sick leave.")));
        Refused(await world.Records(records => records.Confirm(world.Owner, theory, "Seen.")), "The record is suspended; reinstate it before you confirm it.");
        Ok(await world.Records(records => records.Withdraw(world.Administrator, theory, "Copied.")));
        Refused(await world.Records(records => records.Confirm(world.Owner, theory, "Seen.")), "The record is withdrawn for good.");
    }

    [Fact]
    public async Task A_higher_revision_makes_the_record_due_and_a_mended_spelling_does_not()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        world.Clock.Advance(TimeSpan.FromDays(10));
        await world.Republish("procedures/stow-tray.yaml", "Wipe the tray", "Wipe the tray well");
        Assert.Equal(RecordState.Current, (await world.Look(record)).Record.Standing!.State);
        world.Clock.Advance(TimeSpan.FromDays(10));
        await world.Republish("procedures/stow-tray.yaml", "revision: 1", "revision: 2");
        var standing = (await world.Look(record)).Record.Standing!;
        Assert.Equal((RecordState.Due, new(2026, 5, 21)), (standing.State, standing.Until));
        await world.Republish("procedures/stow-tray.yaml", "revision: 1", "revision: 3");
        Assert.Equal(standing, (await world.Look(record)).Record.Standing);
    }

    private static async Task<RecordId> Theory(TestWorld world, Actor technician)
    {
        await world.PassedPaper(technician, TrayTheory);
        return Ok(await world.Records(records => records.Of(world.Owner, technician.Person))).Single(line => line.Competency == TrayTheory).Id;
    }
}
