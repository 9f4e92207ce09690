using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Shops;

/// <summary>The shops that the provider serves.</summary>
[Route("/shops")]
[Authorize(Roles = Roles.Administrator)]
public sealed class ShopsController(Training.Records.Accounts.People people, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>The shops and the form that adds one.</summary>
    [HttpGet]
    public async Task<IActionResult> Index() => View(new ShopsPage(await people.Shops(await current.Get()), new()));

    /// <summary>Adds a shop.</summary>
    /// <param name="form">What was typed.</param>
    [HttpPost]
    public async Task<IActionResult> Create(AddShopForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        var actor = await current.Get();
        var outcome = await people.AddShop(actor, form.Name ?? "", form.TimeZone ?? "");
        if (outcome.IsOk) return this.Done(words["{0} is added. Now add its owner.", form.Name ?? ""], "/people");
        this.Reject(outcome.Fault);
        return View(nameof(Index), new ShopsPage(await people.Shops(actor), form));
    }
}
