using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records.Accounts;
using Training.Records.Reminding;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.ReminderMails;

/// <summary>Where an owner's weekly mail goes.</summary>
[Authorize(Roles = Roles.Owner)]
public sealed class ReminderMailsController(WeeklyMails mails, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Keeps the address; an empty one ends the mails.</summary>
    /// <param name="address">The address.</param>
    [HttpPost("/reminders/mail")]
    public async Task<IActionResult> Create(string? address)
    {
        var kept = await mails.SendTo(await current.Get(), address);
        if (!kept.IsOk) return this.NotDone(kept.Fault, "/reminders");
        return this.Done(
            string.IsNullOrWhiteSpace(address) ? words["No mail is sent any more."] : words["The weekly mail goes to {0}.", address.Trim()], "/reminders");
    }
}
