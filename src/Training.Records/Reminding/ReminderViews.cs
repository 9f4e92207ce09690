using NodaTime;
using Training.Content.Competencies;
using Training.Records.Certifying;

namespace Training.Records.Reminding;

/// <summary>Something that somebody should be reminded of.</summary>
/// <param name="Key">What it is about, the same for as long as that lasts, whatever day it moves to.</param>
/// <param name="Day">The day that counts.</param>
public abstract record Reminder(string Key, LocalDate Day)
{
    /// <summary>A record holds until a day, and renewing it keeps it.</summary>
    /// <param name="Key">What it is about.</param>
    /// <param name="Record">The record.</param>
    public sealed record Renew(string Key, RecordLine Record) : Reminder(Key, Record.Standing!.Until);

    /// <summary>A record holds until a day, and a confirmation keeps it.</summary>
    /// <param name="Key">What it is about.</param>
    /// <param name="Record">The record.</param>
    public sealed record Confirm(string Key, RecordLine Record) : Reminder(Key, Record.Standing!.Until);

    /// <summary>A record ended not long ago and was not renewed.</summary>
    /// <param name="Key">What it is about.</param>
    /// <param name="Record">The record.</param>
    public sealed record Ended(string Key, RecordLine Record) : Reminder(Key, Record.Standing!.Until);

    /// <summary>From a day on fewer people hold a competency than the shop needs.</summary>
    /// <param name="Key">What it is about.</param>
    /// <param name="Day">The day.</param>
    /// <param name="Competency">The competency.</param>
    /// <param name="Title">What it is called.</param>
    /// <param name="People">How many hold it then.</param>
    /// <param name="Need">How many are needed.</param>
    public sealed record TooFew(string Key, LocalDate Day, CompetencyId Competency, string Title, int People, int Need) : Reminder(Key, Day);

    /// <summary>Somebody of a job's crew may not do their work there from a day on.</summary>
    /// <param name="Key">What it is about.</param>
    /// <param name="Day">The day, one of the job's.</param>
    /// <param name="Job">The job.</param>
    /// <param name="Customer">For whom the job is.</param>
    /// <param name="Chassis">Which vehicle.</param>
    /// <param name="Name">The person.</param>
    /// <param name="Title">What they stand for.</param>
    public sealed record CrewLapses(string Key, LocalDate Day, JobId Job, string Customer, string Chassis, string Name, string Title) : Reminder(Key, Day);
}

/// <summary>What a shop's owner is reminded of, and how else it reaches them.</summary>
/// <param name="Today">Today in the shop.</param>
/// <param name="Reminders">The reminders, the first day first.</param>
/// <param name="CalendarSince">Since when the present calendar address is good; null where there is none.</param>
/// <param name="MailTo">Where the weekly mail goes; null where none is wished.</param>
public sealed record OwnersReminders(LocalDate Today, IReadOnlyList<Reminder> Reminders, Instant? CalendarSince, string? MailTo);

/// <summary>What a calendar that subscribed to a shop's reminders is given.</summary>
/// <param name="Shop">The shop.</param>
/// <param name="Language">The language of its owner.</param>
/// <param name="Today">Today in the shop.</param>
/// <param name="Reminders">The reminders of the year to come.</param>
public sealed record CalendarContents(string Shop, string Language, LocalDate Today, IReadOnlyList<Reminder> Reminders);

/// <summary>A weekly mail that is to be sent.</summary>
/// <param name="Owner">To whom.</param>
/// <param name="Name">What they are called.</param>
/// <param name="Address">Their address.</param>
/// <param name="Language">Their language.</param>
/// <param name="Shop">Their shop.</param>
/// <param name="Week">The Monday of the week.</param>
/// <param name="MessageId">The mail's own name (RFC 5322 §3.6.4), the same however often it has to be sent.</param>
/// <param name="Reminders">What it says, at least one.</param>
public sealed record WeeklyMail(
    PersonId Owner, string Name, string Address, string Language, string Shop, LocalDate Week, string MessageId, IReadOnlyList<Reminder> Reminders);
