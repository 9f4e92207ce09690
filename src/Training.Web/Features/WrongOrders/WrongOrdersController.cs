using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Accounts;
using Training.Records.Results;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.WrongOrders;

/// <summary>A common wrong order with its replay.</summary>
[Authorize(Roles = $"{Roles.Trainer},{Roles.Examiner},{Roles.Administrator}")]
[ShutDuringPaper]
public sealed class WrongOrdersController(RuleResults results, CurrentActor current, CurrentReader reader) : Controller
{
    /// <summary>An example of the orders that got the same things wrong, nobody's name beside it.</summary>
    /// <param name="procedure">The procedure.</param>
    /// <param name="order">Names the orders.</param>
    /// <param name="source">Where they were given.</param>
    [HttpGet("/results/{procedure}/orders/{order}")]
    public async Task<IActionResult> Show(string procedure, string order, string? source)
    {
        var asked = ResultWords.ReadSource(source);
        var outcome = await results.Look(await current.Get(), new(procedure), asked, order, await reader.Language());
        return outcome.IsOk ? View(new WrongOrderPage(outcome.Value, asked)) : this.NotShown(outcome.Fault);
    }
}
