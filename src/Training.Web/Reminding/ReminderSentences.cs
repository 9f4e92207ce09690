using Microsoft.Extensions.Localization;
using Training.Records.Reminding;
using Training.Web.Features.Shared;

namespace Training.Web.Reminding;

/// <summary>Says reminders in the reader's language.</summary>
/// <param name="words">The sentences.</param>
/// <param name="taught">The names of competencies.</param>
public sealed class ReminderSentences(IStringLocalizer<Words> words, Lessons taught)
{
    /// <summary>The whole sentence.</summary>
    /// <param name="reminder">The reminder.</param>
    public string Whole(Reminder reminder)
    {
        ArgumentNullException.ThrowIfNull(reminder);
        var day = Dates.Day(reminder.Day);
        return reminder switch
        {
            Reminder.Renew renew => words["{0}: the record for “{1}” ends on {2} unless it is renewed.", renew.Record.Name, taught.Titled(renew.Record.CompetencyTitle), day],
            Reminder.Confirm confirm => words["{0}: confirm by {1} that the work is still done, or the record for “{2}” ends.", confirm.Record.Name, day, taught.Titled(confirm.Record.CompetencyTitle)],
            Reminder.Ended ended => words["{0}: the record for “{1}” ended on {2}.", ended.Record.Name, taught.Titled(ended.Record.CompetencyTitle), day],
            Reminder.TooFew few => words["{0}: from {1} on {2} of the {3} people that you need.", taught.Titled(few.Title), day, few.People, few.Need],
            Reminder.CrewLapses lapses => words["Job for {0}, {1}: {2} may not do “{3}” from {4} on.", lapses.Customer, lapses.Chassis, lapses.Name, taught.Titled(lapses.Title), day],
            _ => throw new ArgumentException($"There is no sentence for a {reminder.GetType().Name}.", nameof(reminder)),
        };
    }

    /// <summary>A line for a calendar, where the day stands beside it: people and competencies alone, no customer.</summary>
    /// <param name="reminder">The reminder.</param>
    public string Brief(Reminder reminder) => reminder switch
    {
        Reminder.Renew renew => words["{0}: last day of the record, {1}", renew.Record.Name, taught.Titled(renew.Record.CompetencyTitle)],
        Reminder.Confirm confirm => words["{0}: last day to confirm, {1}", confirm.Record.Name, taught.Titled(confirm.Record.CompetencyTitle)],
        Reminder.Ended ended => words["{0}: last day of the record, {1}", ended.Record.Name, taught.Titled(ended.Record.CompetencyTitle)],
        Reminder.TooFew few => words["Too few people from today on: {0}", taught.Titled(few.Title)],
        Reminder.CrewLapses lapses => words["{0}: may not do the work on a job, {1}", lapses.Name, taught.Titled(lapses.Title)],
        _ => throw new ArgumentException("There is no line for such a reminder.", nameof(reminder)),
    };
}
