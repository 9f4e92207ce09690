using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using NodaTime;
using Training.Records.Reminding;
using Training.Web.Features.Shared;

namespace Training.Web.Reminding;

/// <summary>Reminders as an iCalendar object (RFC 5545): an event of one whole day each, by the calendar of the shop.</summary>
/// <param name="sentences">Says them.</param>
/// <param name="rooms">Names the provider.</param>
/// <param name="time">When the object is made.</param>
public sealed class ReminderCalendar(ReminderSentences sentences, Rooms rooms, TimeProvider time)
{
    /// <summary>The calendar in the owner's language.</summary>
    /// <param name="contents">What stands in it.</param>
    public string Write(CalendarContents contents)
    {
        ArgumentNullException.ThrowIfNull(contents);
        return Tongues.In(contents.Language, () =>
        {
            var calendar = new Calendar { ProductId = $"-//{rooms.Provider}//Reminders//EN" };
            // Of several reminders with one key (RFC 5545 §3.8.4.7: a UID is unique) there is none: each key names one thing.
            foreach (var reminder in contents.Reminders) calendar.Events.Add(Event(reminder));
            // RFC 7986 §5.1, and the older name that many calendars read.
            calendar.AddProperty("NAME", contents.Shop);
            calendar.AddProperty("X-WR-CALNAME", contents.Shop);
            return new CalendarSerializer(calendar).SerializeToString()!;
        });
    }

    private CalendarEvent Event(Reminder reminder) => new()
    {
        Uid = $"{reminder.Key}@training",
        DtStamp = new CalDateTime(time.GetUtcNow().UtcDateTime, "UTC"),
        DtStart = Day(reminder.Day),
        // The end of an event of whole days is the day after (RFC 5545 §3.6.1).
        DtEnd = Day(reminder.Day.PlusDays(1)),
        Summary = sentences.Brief(reminder),
        Transparency = TransparencyType.Transparent,
    };

    private static CalDateTime Day(LocalDate day) => new(day.Year, day.Month, day.Day);
}
