using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Accounts;
using Training.Records.Reminding;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Reminders;

/// <summary>What to look after soon: the own shop's for its owner, the own records' for a technician.</summary>
[Authorize(Roles = Roles.Owner + "," + Roles.Technician)]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
public sealed class RemindersController(Training.Records.Reminding.Reminders reminders, CurrentActor current, CurrentReader reader) : Controller
{
    /// <summary>The reminders, the first day first.</summary>
    [HttpGet("/reminders")]
    public async Task<IActionResult> Index()
    {
        var actor = await current.Get();
        OwnersReminders? shop = null;
        if (actor.Is(Roles.Owner))
        {
            var found = await reminders.OfShop(actor);
            if (!found.IsOk) return this.NotShown(found.Fault);
            shop = found.Value;
        }

        var own = actor.Is(Roles.Technician) ? await reminders.Mine(actor) : default;
        return View(new RemindersPage(shop, own.IsOk ? own.Value : null, await reader.Zone(), TempData["calendar-secret"] as string));
    }
}
