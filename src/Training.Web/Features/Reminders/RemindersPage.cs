using Training.Records.Certifying;
using Training.Records.Reminding;

namespace Training.Web.Features.Reminders;

/// <summary>What to look after soon.</summary>
/// <param name="Shop">The shop's reminders; null for who is no owner.</param>
/// <param name="Own">The own records' reminders; null for who is no technician.</param>
/// <param name="Zone">The time zone that times are told in.</param>
/// <param name="Secret">The secret of a calendar address that was just made; null otherwise.</param>
public sealed record RemindersPage(OwnersReminders? Shop, IReadOnlyList<Reminder>? Own, string Zone, string? Secret)
{
    /// <summary>Where an owner sees to a reminder.</summary>
    /// <param name="reminder">The reminder.</param>
    public static string AddressFor(Reminder reminder) => reminder switch
    {
        Reminder.CrewLapses lapses => $"/jobs/{lapses.Job}",
        Reminder.TooFew => "/coverage",
        Reminder.Confirm confirm => $"/records/{confirm.Record.Id}#confirm-{confirm.Record.Id}",
        _ => $"/people/{RecordOf(reminder)!.Person}",
    };

    /// <summary>The record that a reminder is about; null where it is about none.</summary>
    /// <param name="reminder">The reminder.</param>
    public static RecordLine? RecordOf(Reminder reminder) => reminder switch
    {
        Reminder.Renew renew => renew.Record,
        Reminder.Confirm confirm => confirm.Record,
        Reminder.Ended ended => ended.Record,
        _ => null,
    };
}
