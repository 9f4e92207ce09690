using NodaTime;
using Training.Content.Competencies;
using Training.Records.Reminding;
using Training.Sequencing;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Reminding;

public sealed class RemindersTests
{
    [Fact]
    public async Task A_record_that_ends_within_ninety_days_is_on_the_owners_list_and_the_technicians_own()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        // Issued on 2 March 2026 for two years.
        world.Clock.Set(new(2027, 12, 2, 9, 0, 0, TimeSpan.Zero));
        Assert.Empty((await OfShop(world)).Reminders);
        world.Clock.Set(new(2027, 12, 3, 9, 0, 0, TimeSpan.Zero));
        var renew = Assert.IsType<Reminder.Renew>(Assert.Single((await OfShop(world)).Reminders));
        Assert.Equal((record, new LocalDate(2028, 3, 2)), (renew.Record.Id, renew.Day));
        Assert.Equal(renew.Key, Assert.Single(Ok(await world.With<Reminders, Outcome<IReadOnlyList<Reminder>, Refusal>>(reminders => reminders.Mine(world.Technician)))).Key);
        Assert.Empty(Ok(await world.With<Reminders, Outcome<IReadOnlyList<Reminder>, Refusal>>(reminders => reminders.Mine(world.Colleague))));
    }

    [Fact]
    public async Task A_record_that_ended_is_told_for_thirty_days_more()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        world.Clock.Set(new(2028, 4, 1, 9, 0, 0, TimeSpan.Zero));
        Assert.IsType<Reminder.Ended>(Assert.Single((await OfShop(world)).Reminders));
        world.Clock.Set(new(2028, 4, 2, 9, 0, 0, TimeSpan.Zero));
        Assert.Empty((await OfShop(world)).Reminders);
    }

    [Fact]
    public async Task Where_a_confirmation_keeps_a_record_that_is_what_is_asked_for()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician, TrayTheory);
        var confirm = Assert.IsType<Reminder.Confirm>(Assert.Single((await OfShop(world)).Reminders));
        Assert.Equal(new LocalDate(2026, 5, 2), confirm.Day);
    }

    [Fact]
    public async Task Coverage_that_falls_below_the_need_is_told_with_its_first_day()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        Ok(await world.Coverage(coverage => coverage.SetNeeds(world.Owner, new Dictionary<CompetencyId, int> { [RelayTrays] = 1 })));
        world.Clock.Set(new(2028, 2, 1, 9, 0, 0, TimeSpan.Zero));
        var few = Assert.Single((await OfShop(world)).Reminders.OfType<Reminder.TooFew>());
        Assert.Equal((new LocalDate(2028, 3, 3), 0, 1), (few.Day, few.People, few.Need));
    }

    [Fact]
    public async Task A_crew_of_which_somebody_may_no_longer_do_the_work_is_told_with_the_day()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var job = Ok(await world.Jobs(jobs => jobs.Make(world.Owner, new(
            "Larkfield Haulage", "L18-0427", Crane, new(2026, 3, 20), new(2026, 3, 24), "A crane on it.",
            new Dictionary<CompetencyId, int> { [RelayTrays] = 1 }, SeparatePeople: false))));
        Ok(await world.Jobs(jobs => jobs.Confirm(world.Owner, job, [(RelayTrays, world.Technician.Person)])));
        Assert.Empty((await OfShop(world)).Reminders);
        Ok(await world.Records(records => records.Suspend(world.Owner, record, "Sick leave.")));
        var lapses = Assert.Single((await OfShop(world)).Reminders.OfType<Reminder.CrewLapses>());
        Assert.Equal((job, new LocalDate(2026, 3, 20), "Amara Okafor"), (lapses.Job, lapses.Day, lapses.Name));
        world.Clock.Set(new(2026, 3, 25, 9, 0, 0, TimeSpan.Zero));
        Assert.Empty((await OfShop(world)).Reminders);
    }

    [Fact]
    public async Task Another_shops_owner_is_reminded_of_nothing_here_and_a_technician_of_no_shop()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician, TrayTheory);
        Assert.Empty(Ok(await world.With<Reminders, Outcome<OwnersReminders, Refusal>>(reminders => reminders.OfShop(world.ForeignOwner))).Reminders);
        NotAllowed(await world.With<Reminders, Outcome<OwnersReminders, Refusal>>(reminders => reminders.OfShop(world.Technician)));
        NotAllowed(await world.With<Reminders, Outcome<IReadOnlyList<Reminder>, Refusal>>(reminders => reminders.Mine(world.Examiner)));
    }

    [Fact]
    public async Task A_calendar_address_is_good_until_it_is_ended_or_made_anew_and_is_kept_as_a_hash_alone()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician, TrayTheory);
        var first = Ok(await Calendars(world, calendars => calendars.Make(world.Owner)));
        var read = Ok(await Calendars(world, calendars => calendars.Read(first)));
        Assert.Equal(("Quillmoor Coachworks", "en"), (read.Shop, read.Language));
        Assert.Single(read.Reminders.OfType<Reminder.Confirm>());
        var second = Ok(await Calendars(world, calendars => calendars.Make(world.Owner)));
        NotFound(await Calendars(world, calendars => calendars.Read(first)));
        Assert.True((await Calendars(world, calendars => calendars.Read(second))).IsOk);
        Ok(await Calendars(world, calendars => calendars.End(world.Owner)));
        NotFound(await Calendars(world, calendars => calendars.Read(second)));
        NotAllowed(await world.With<Calendars, Outcome<string, Refusal>>(calendars => calendars.Make(world.Technician)));
        var held = await File.ReadAllBytesAsync(world.DatabaseFile, TestContext.Current.CancellationToken);
        Assert.True(held.AsSpan().IndexOf(System.Text.Encoding.UTF8.GetBytes(second)) < 0, "The secret stands in the database.");
    }

    [Fact]
    public async Task A_weekly_mail_keeps_its_name_until_it_is_sent_and_comes_once_a_week()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician, TrayTheory);
        Assert.Empty(await Due(world));
        Ok(await world.With<WeeklyMails, Outcome<PersonId, Refusal>>(mails => mails.SendTo(world.Owner, "hollis@quillmoor.example")));
        var mail = Assert.Single(await Due(world));
        // 2 March 2026 is a Monday.
        Assert.Equal((new LocalDate(2026, 3, 2), "hollis@quillmoor.example"), (mail.Week, mail.Address));
        await world.Restart();
        world.Clock.Advance(TimeSpan.FromDays(1));
        var again = Assert.Single(await Due(world));
        Assert.Equal((mail.MessageId, mail.Week), (again.MessageId, again.Week));
        await world.With<WeeklyMails, bool>(async mails => { await mails.Sent(again); return true; });
        world.Clock.Set(new(2026, 3, 8, 23, 0, 0, TimeSpan.Zero));
        Assert.Empty(await Due(world));
        // Before six on Monday nobody is written to.
        world.Clock.Set(new(2026, 3, 9, 5, 59, 0, TimeSpan.Zero));
        Assert.Empty(await Due(world));
        world.Clock.Set(new(2026, 3, 9, 6, 0, 0, TimeSpan.Zero));
        Assert.NotEqual(mail.MessageId, Assert.Single(await Due(world)).MessageId);
    }

    [Fact]
    public async Task Nothing_to_say_is_no_mail()
    {
        await using var world = await Create();
        Ok(await world.With<WeeklyMails, Outcome<PersonId, Refusal>>(mails => mails.SendTo(world.Owner, "hollis@quillmoor.example")));
        Assert.Empty(await Due(world));
        await world.PassedPaper(world.Technician, TrayTheory);
        Assert.Single(await Due(world));
    }

    [Theory]
    [InlineData("hollis")]
    [InlineData("Hollis <hollis@quillmoor.example>")]
    [InlineData("hollis@quillmoor.example\r\nBcc: all@quillmoor.example")]
    [InlineData("hollis@quillmoor")]
    public async Task What_is_no_bare_mail_address_is_refused(string address)
    {
        await using var world = await Create();
        Assert.False((await world.With<WeeklyMails, Outcome<PersonId, Refusal>>(mails => mails.SendTo(world.Owner, address))).IsOk);
    }

    private static Task<IReadOnlyList<WeeklyMail>> Due(TestWorld world) => world.With<WeeklyMails, IReadOnlyList<WeeklyMail>>(mails => mails.Due("eastvale.example"));

    private static Task<T> Calendars<T>(TestWorld world, Func<Calendars, Task<T>> ask) => world.With(ask);

    private static async Task<OwnersReminders> OfShop(TestWorld world) =>
        Ok(await world.With<Reminders, Outcome<OwnersReminders, Refusal>>(reminders => reminders.OfShop(world.Owner)));
}
