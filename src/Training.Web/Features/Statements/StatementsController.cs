using System.Text;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Training.Records;
using Training.Records.Accounts;
using Training.Sequencing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Statements;

/// <summary>Attempts as statements of IEEE 9274.1.1 for other programs.</summary>
[Authorize(Roles = Roles.Administrator + "," + Roles.Trainer)]
[ShutDuringPaper]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
public sealed class StatementsController(
    Training.Records.Interchange.Statements statements, Training.Records.Accounts.People people, CurrentActor current) : Controller
{
    /// <summary>The choice of shop and days.</summary>
    [HttpGet("/statements")]
    public async Task<IActionResult> Index() => View(await people.Shops(await current.Get()));

    /// <summary>The statements as one list, written as they are read.</summary>
    /// <param name="shop">One shop alone; empty for all.</param>
    /// <param name="first">The first day in universal time, as <c>2026-11-25</c>; empty for the beginning.</param>
    /// <param name="last">The last day; empty for today.</param>
    [HttpGet("/statements.json")]
    public async Task<IActionResult> Show(string? shop, string? first, string? last)
    {
        ShopId chosen = default;
        if (!string.IsNullOrEmpty(shop) && !ShopId.TryParse(shop, null, out chosen))
            return this.NotDone(new Refusal("There is no such shop. Choose one of the list."), "/statements", nameof(shop));
        if (!DayAsked.TryRead(first, out var from)) return this.NotDone(new Refusal("Write a day as 2026-03-14."), "/statements", nameof(first));
        if (!DayAsked.TryRead(last, out var until)) return this.NotDone(new Refusal("Write a day as 2026-03-14."), "/statements", nameof(last));

        var found = await statements.Of(
            await current.Get(), string.IsNullOrEmpty(shop) ? null : chosen,
            from is { } day ? day.AtStartOfDayInZone(DateTimeZone.Utc).ToInstant() : Instant.MinValue,
            until is { } end ? end.PlusDays(1).AtStartOfDayInZone(DateTimeZone.Utc).ToInstant() : Instant.MaxValue);
        if (!found.IsOk) return this.NotDone(found.Fault, "/statements");
        Response.ContentType = "application/json; charset=utf-8";
        Response.Headers.ContentDisposition = "attachment; filename=\"statements.json\"";
        var between = "[\n";
        await foreach (var statement in found.Value.All)
        {
            await Response.Body.WriteAsync(Encoding.UTF8.GetBytes(between + statement.ToJsonString()), HttpContext.RequestAborted);
            between = ",\n";
        }

        await Response.Body.WriteAsync(Encoding.UTF8.GetBytes(between == "[\n" ? "[]\n" : "\n]\n"), HttpContext.RequestAborted);
        return new EmptyResult();
    }
}
