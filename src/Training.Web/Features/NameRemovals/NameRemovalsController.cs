using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Sequencing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.NameRemovals;

/// <summary>Taking the name of somebody who leaves the trade out of everything.</summary>
[Route("/people/{person}/name-removal")]
[Authorize(Roles = Roles.Administrator)]
public sealed class NameRemovalsController(
    Training.Records.Accounts.People people, Training.Records.Accounts.NameRemovals removals, CurrentActor current, IStringLocalizer<Words> words)
    : Controller
{
    /// <summary>What will happen, before it does.</summary>
    /// <param name="person">Whose name.</param>
    [HttpGet]
    public async Task<IActionResult> Index(PersonId person)
    {
        var outcome = await people.Look(await current.Get(), person);
        return outcome.IsOk ? View(outcome.Value) : this.NotShown(outcome.Fault);
    }

    /// <summary>Removes the name, if the box was ticked.</summary>
    /// <param name="person">Whose name.</param>
    /// <param name="sure">The box.</param>
    [HttpPost]
    public async Task<IActionResult> Create(PersonId person, string? sure)
    {
        if (sure != "yes")
            return this.NotDone(new Refusal(words["Nothing was changed. Tick the box if the name is to be removed for good."]), $"/people/{person}/name-removal", nameof(sure));
        var outcome = await removals.Remove(await current.Get(), person);
        return outcome.IsOk
            ? this.Done(words["The name is removed. Copies of the data from before still hold it: delete them when you can."], $"/people/{person}")
            : this.NotDone(outcome.Fault, $"/people/{person}");
    }
}
