using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records.Accounts;
using Training.Records.Reminding;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.ReminderCalendars;

/// <summary>The address by which an owner's calendar fetches the reminders.</summary>
[Route("/reminders/calendar")]
[Authorize(Roles = Roles.Owner)]
public sealed class ReminderCalendarsController(Calendars calendars, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Makes an address; the page of the reminders shows it once.</summary>
    [HttpPost]
    public async Task<IActionResult> Create()
    {
        var made = await calendars.Make(await current.Get());
        if (!made.IsOk) return this.NotDone(made.Fault, "/reminders");
        TempData["calendar-secret"] = made.Value;
        return Redirect("/reminders#calendar");
    }

    /// <summary>Ends it.</summary>
    [HttpPost("ending")]
    public async Task<IActionResult> End()
    {
        var ended = await calendars.End(await current.Get());
        return ended.IsOk ? this.Done(words["The address is good no more."], "/reminders") : this.NotDone(ended.Fault, "/reminders");
    }
}
