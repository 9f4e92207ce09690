using System.Text;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Reminding;
using Training.Web.Features.Shared;
using Training.Web.Reminding;

namespace Training.Web.Features.CalendarFeeds;

/// <summary>What an owner's calendar program fetches; it cannot sign in, so the address is the secret.</summary>
[AllowAnonymous]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
public sealed class CalendarFeedsController(Calendars calendars, ReminderCalendar calendar) : Controller
{
    /// <summary>The reminders as iCalendar (RFC 5545).</summary>
    /// <param name="token">The secret of the address.</param>
    [HttpGet("/calendar/{token}.ics")]
    public async Task<IActionResult> Show(string token)
    {
        Response.Headers["X-Robots-Tag"] = "noindex, nofollow, noarchive";
        var read = await calendars.Read(token);
        return read.IsOk ? File(Encoding.UTF8.GetBytes(calendar.Write(read.Value)), "text/calendar; charset=utf-8") : this.NotShown(read.Fault);
    }
}
